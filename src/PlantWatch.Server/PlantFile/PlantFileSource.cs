using System.Security.Cryptography;
using System.Text;
using PlantWatch.Server.LimitPacks;

namespace PlantWatch.Server.PlantFile;

/// <summary>The plant file as it lies on the disk at one moment, with the limit packs beside it: the bytes, or why there are none.</summary>
internal sealed class PlantFileSource
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
    private readonly byte[] _bytes;
    private readonly OwnPackFiles? _packs;
    private readonly string? _trouble;

    private PlantFileSource(byte[] bytes, OwnPackFiles? packs, string? trouble)
    {
        _bytes = bytes;
        _packs = packs;
        _trouble = trouble;
        Hash = trouble is null ? HashOf(bytes, packs) : null;
    }

    /// <summary>SHA-256 of the bytes, those of the packs after those of the file, lower-case hexadecimal; null when the file could not be read.</summary>
    public string? Hash { get; }

    /// <summary>Takes the bytes. A file that is missing or locked is told by <see cref="Understand"/>, not by an exception.</summary>
    /// <param name="path">The plant file.</param>
    /// <param name="packs">Folder of the plant's own limit packs; null for <see cref="PacksBeside"/>.</param>
    public static PlantFileSource Read(string path, string? packs = null)
    {
        try
        {
            return new(Bytes(path), OwnPackFiles.Read(packs ?? PacksBeside(path)), null);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new([], null, $"the file cannot be read: {Text.Plain(error.Message)}");
        }
    }

    /// <summary>Bytes that do not lie on the disk yet, with the limit packs that lie beside where they will.</summary>
    public static PlantFileSource Of(byte[] bytes, string path)
    {
        try
        {
            return new(bytes, OwnPackFiles.Read(PacksBeside(path)), null);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new([], null, $"the limit packs beside the file cannot be read: {Text.Plain(error.Message)}");
        }
    }

    /// <summary>Where the limit packs of a plant lie: in the folder <c>packs</c> beside its file.</summary>
    public static string PacksBeside(string path) => Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path)) ?? "", "packs");

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
            return WithPacks(Strict.GetString(text));
        }
        catch (DecoderFallbackException error)
        {
            var line = 1 + text[..Math.Max(0, error.Index)].Count((byte)'\n');
            return Broken(line, "expected text in UTF-8, found bytes that are none; save the file as UTF-8");
        }
    }

    // What is wrong with the packs is told with what is wrong with the file, so that one reading tells it all.
    private PlantFileResult WithPacks(string text)
    {
        var (packs, errors) = _packs?.Understand() ?? ([], []);
        var result = PlantFileReader.Read(text, PackShelf.Shipped.With(packs));
        // A pack that is broken is not missing as well.
        return errors.Count == 0 ? result : new(null, [.. result.Errors.Where(e => e.Key != "limit_pack"), .. errors]);
    }

    private static string HashOf(byte[] bytes, OwnPackFiles? packs)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(bytes);
        packs?.AddTo(hash);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>The bytes of a file: one more than allowed is enough to know that it is too large.</summary>
    internal static byte[] Bytes(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var buffer = new byte[PlantFileReader.LargestBytes + 1];
        return buffer[..file.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false)];
    }

    private static PlantFileResult Broken(int line, string message) => new(null, [new(line, "", message)]);
}
