using System.Security.Cryptography;
using System.Text;

namespace PlantWatch.Server.PlantFile;

/// <summary>The bytes of a plant file, understood or not, with what tells one version from the next.</summary>
/// <param name="Hash">SHA-256 of the bytes, lower-case hexadecimal; null when the file could not be read.</param>
/// <param name="Result">Plan or errors.</param>
internal sealed record PlantFileSource(string? Hash, PlantFileResult Result)
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads and understands the file. A file that is missing, locked or no text is an error in words, not an exception.</summary>
    public static PlantFileSource Read(string path)
    {
        try
        {
            var bytes = Bytes(path);
            return new(Convert.ToHexStringLower(SHA256.HashData(bytes)), Understand(bytes));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new(null, Broken(1, $"the file cannot be read: {Text.Plain(error.Message)}"));
        }
    }

    // One byte more than allowed is enough to know that it is too large.
    private static byte[] Bytes(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var buffer = new byte[PlantFileReader.LargestBytes + 1];
        return buffer[..file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false)];
    }

    private static PlantFileResult Understand(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[Encoding.UTF8.Preamble.Length..];
        try
        {
            return PlantFileReader.Read(Strict.GetString(bytes));
        }
        catch (DecoderFallbackException error)
        {
            var line = 1 + bytes[..Math.Max(0, error.Index)].Count((byte)'\n');
            return Broken(line, "expected text in UTF-8, found bytes that are none; save the file as UTF-8");
        }
    }

    private static PlantFileResult Broken(int line, string message) => new(null, [new(line, "", message)]);
}
