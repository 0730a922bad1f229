using System.IO.Compression;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Inflates a body in memory, to a bound: it reads nothing of the outside world.</summary>
internal static class SparkplugInflater
{
    // So small a body may be of any ratio: it cannot hurt.
    private const int AlwaysAllowed = 4096;

    /// <summary>Inflates; the algorithm is DEFLATE (with the wrapping of zlib, RFC 1950, as the wild writes it) where none is said.</summary>
    public static SparkplugFault Inflate(ReadOnlySpan<byte> body, string? algorithm, out ReadOnlyMemory<byte> plain)
    {
        plain = default;
        if (algorithm is not (null or "DEFLATE" or "GZIP")) return SparkplugFault.UnknownAlgorithm;
        try
        {
            using var packed = new MemoryStream(body.ToArray());
            using Stream stream = algorithm == "GZIP" ? new GZipStream(packed, CompressionMode.Decompress) : new ZLibStream(packed, CompressionMode.Decompress);
            return Drain(stream, Bound(body.Length), out plain) ? SparkplugFault.None : SparkplugFault.InflatesTooFar;
        }
        catch (Exception e) when (e is InvalidDataException or IOException)
        {
            // The platform's words for a wrong checksum, a cut or a dictionary that is not there.
            return SparkplugFault.BrokenCompression;
        }
    }

    private static int Bound(int length) => (int)Math.Min(SparkplugPayload.Largest, Math.Max(AlwaysAllowed, (long)length * SparkplugPayload.LargestRatio));

    private static bool Drain(Stream stream, int most, out ReadOnlyMemory<byte> plain)
    {
        var (bytes, length) = (new byte[AlwaysAllowed + 1], 0);
        while (stream.Read(bytes, length, bytes.Length - length) is var read and > 0)
        {
            length += read;
            if (length > most) break;
            if (length == bytes.Length) Array.Resize(ref bytes, Math.Min(length * 2, most + 1));
        }

        plain = bytes.AsMemory(0, Math.Min(length, most));
        return length <= most;
    }
}
