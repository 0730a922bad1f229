using System.Buffers;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Server.Ingest;

/// <summary>The bytes of a message on their way in: ours, and never more than Core needs to see that there were too many.</summary>
internal static class IncomingPayload
{
    /// <summary>Copies a payload out of the packet's memory, cut to <see cref="PayloadText.WorthKeeping"/>.</summary>
    public static ReadOnlyMemory<byte> Copy(in ReadOnlySequence<byte> payload) =>
        payload.Length > PayloadText.WorthKeeping ? payload.Slice(0, PayloadText.WorthKeeping).ToArray() : payload.ToArray();
}
