using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>The strip of what a message is about.</summary>
internal interface IStripPictures
{
    /// <summary>As PNG; null where the alarm is about nothing that is measured.</summary>
    Task<byte[]?> OfAsync(CircuitWorker circuit, Message message, Wording words, CancellationToken cancellation);
}
