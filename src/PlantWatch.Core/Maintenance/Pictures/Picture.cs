using System.Buffers;
using System.Security.Cryptography;

namespace PlantWatch.Core.Maintenance.Pictures;

/// <summary>What a picture is by its content; its name says nothing.</summary>
public enum PictureKind
{
    /// <summary>None that is taken.</summary>
    Unknown = 0,
    /// <summary>JPEG (ITU-T T.81).</summary>
    Jpeg,
    /// <summary>PNG (ISO/IEC 15948).</summary>
    Png,
    /// <summary>WebP (RFC 9649).</summary>
    WebP,
}

/// <summary>Why a picture is not taken.</summary>
public enum PictureFault
{
    /// <summary>It is taken.</summary>
    None = 0,
    /// <summary>More bytes than <see cref="Picture.MostBytes"/>.</summary>
    TooLarge,
    /// <summary>By its content it is no JPEG, PNG or WebP.</summary>
    NoPicture,
    /// <summary>It begins as one and does not hold to its form.</summary>
    Broken,
    /// <summary>It would unfold to more than <see cref="Picture.MostPixels"/>.</summary>
    TooManyPixels,
    /// <summary>It moves.</summary>
    Animated,
}

/// <summary>A picture as it is kept: the image alone, without what a phone writes beside it, where it was taken above all.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Width">Its width in pixels.</param>
/// <param name="Height">Its height in pixels.</param>
/// <param name="Bytes">What is kept.</param>
public sealed record Picture(PictureKind Kind, int Width, int Height, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>Most bytes that are taken: a page sends some hundred thousand.</summary>
    public const int MostBytes = 2 * 1024 * 1024;

    /// <summary>Most pixels that are taken: what unfolds to more is a trap for the browser that shows it.</summary>
    public const long MostPixels = 40_000_000;

    private static readonly SearchValues<char> Digits = SearchValues.Create("0123456789abcdef");

    /// <summary>The name that it is kept and shown by: SHA-256 of its bytes in lower-case hexadecimal.</summary>
    public string Hash { get; } = HashOf(Bytes.Span);

    /// <summary>The name of some bytes.</summary>
    public static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    /// <summary>True for what can be such a name.</summary>
    public static bool IsHash(string? text) => text is { Length: 64 } && !text.AsSpan().ContainsAnyExcept(Digits);

    /// <summary>Takes what was sent: by its content, and only the image of it. What stands behind its end, beside it or hidden in it is left.</summary>
    /// <param name="sent">The bytes.</param>
    /// <param name="picture">The picture; null when it is not taken.</param>
    public static PictureFault Take(ReadOnlySpan<byte> sent, out Picture? picture)
    {
        picture = null;
        if (sent.Length > MostBytes) return PictureFault.TooLarge;
        var fault = KindOf(sent) switch
        {
            PictureKind.Jpeg => JpegImage.Take(sent, out picture),
            PictureKind.Png => PngImage.Take(sent, out picture),
            PictureKind.WebP => WebPImage.Take(sent, out picture),
            _ => PictureFault.NoPicture,
        };
        if (fault == PictureFault.None && (picture!.Width < 1 || picture.Height < 1)) fault = PictureFault.Broken;
        if (fault == PictureFault.None && (long)picture!.Width * picture.Height > MostPixels) fault = PictureFault.TooManyPixels;
        if (fault != PictureFault.None) picture = null;
        return fault;
    }

    private static PictureKind KindOf(ReadOnlySpan<byte> sent)
    {
        if (sent.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])) return PictureKind.Jpeg;
        if (sent.StartsWith(PngImage.Signature)) return PictureKind.Png;
        return sent.Length >= 12 && sent.StartsWith("RIFF"u8) && sent[8..12].SequenceEqual("WEBP"u8) ? PictureKind.WebP : PictureKind.Unknown;
    }
}
