using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant;

/// <summary>Whether a way by which people are told delivers the messages of this circuit.</summary>
/// <param name="At">When it was said.</param>
/// <param name="Channel">Id of the channel.</param>
/// <param name="Delivers">False when messages wait because it does not take them, or were given up.</param>
/// <param name="Trouble">Why not, in the words of who was asked.</param>
public sealed record ChannelStateSaid(Instant At, string Channel, bool Delivers, string Trouble) : PlantEvent(At);
