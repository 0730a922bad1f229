using PlantWatch.Core.Plans;

namespace PlantWatch.Server.Telling;

/// <summary>A file that a letter encloses.</summary>
/// <param name="Name">Its name.</param>
/// <param name="MediaType">What it is.</param>
/// <param name="Bytes">Its bytes.</param>
internal sealed record Enclosed(string Name, string MediaType, byte[] Bytes);

/// <summary>What letters enclose beside a strip.</summary>
internal interface IEnclosures
{
    /// <summary>The file; null when there is nothing that could be enclosed.</summary>
    Task<Enclosed?> OfAsync(PlantPlan plan, Message message, CancellationToken cancellation);
}
