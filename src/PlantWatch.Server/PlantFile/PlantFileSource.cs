using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Server.PlantFile;

/// <summary>The plant file as it lies on the disk at one moment: its bytes, or why there are none.</summary>
internal sealed class PlantFileSource
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private readonly byte[] _bytes;
    private readonly string? _trouble;

    private PlantFileSource(byte[] bytes, string? trouble)
    {
        _bytes = bytes;
        _trouble = trouble;
        Hash = trouble is null ? Convert.ToHexStringLower(SHA256.HashData(bytes)) : null;
    }

    /// <summary>SHA-256 of the bytes, lower-case hexadecimal; null when the file could not be read.</summary>
    public string? Hash { get; }

    /// <summary>Takes the bytes. A file that is missing or locked is told by <see cref="Understand"/>, not by an exception.</summary>
    public static PlantFileSource Read(string path)
    {
        try
        {
            return new(Bytes(path), null);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new([], $"the file cannot be read: {Text.Plain(error.Message)}");
        }
    }

    /// <summary>True when another look found the very same.</summary>
    public bool IsSame(PlantFileSource? other) => other is not null && Hash == other.Hash && _trouble == other._trouble;

    /// <summary>The plan, or everything that is wrong.</summary>
    public PlantFileResult Understand()
    {
        if (_trouble is not null) return Broken(1, _trouble);
        var text = _bytes.AsSpan();
        if (text.StartsWith(Encoding.UTF8.Preamble)) text = text[Encoding.UTF8.Preamble.Length..];
        try
        {
            return PlantFileReader.Read(Strict.GetString(text));
        }
        catch (DecoderFallbackException error)
        {
            var line = 1 + text[..Math.Max(0, error.Index)].Count((byte)'\n');
            return Broken(line, "expected text in UTF-8, found bytes that are none; save the file as UTF-8");
        }
    }

    // One byte more than allowed is enough to know that it is too large.
    private static byte[] Bytes(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var buffer = new byte[PlantFileReader.LargestBytes + 1];
        return buffer[..file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false)];
    }

    private static PlantFileResult Broken(int line, string message) => new(null, [new(line, "", message)]);
}
