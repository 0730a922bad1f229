using System.Text.Json.Nodes;

namespace PlantWatch.Simulator.People;

/// <summary>What somebody writes into a book of the plant: a delivery, a refill, a count, how many bathed.</summary>
/// <param name="Id">Id of the row.</param>
/// <param name="Path">Which book, as the public interface has it.</param>
/// <param name="Body">The row.</param>
/// <param name="Text">The same for whoever watches.</param>
internal sealed record BookWord(Guid Id, string Path, JsonObject Body, string Text);
