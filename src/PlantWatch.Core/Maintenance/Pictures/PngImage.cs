using System.Buffers;
using System.Buffers.Binary;

namespace PlantWatch.Core.Maintenance.Pictures;

/// <summary>A PNG taken apart by its chunks (ISO/IEC 15948, clause 5) and put together again from those that make the image.</summary>
internal static class PngImage
{
    public static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n => Enumerable.Range(0, 8).Aggregate((uint)n, (c, _) => (c & 1) == 1 ? 0xEDB88320u ^ (c >> 1) : c >> 1))];

    public static PictureFault Take(ReadOnlySpan<byte> sent, out Picture? picture)
    {
        picture = null;
        var kept = new ArrayBufferWriter<byte>(sent.Length);
        kept.Write(Signature);
        var (at, width, height, data) = (Signature.Length, 0, 0, false);
        while (Chunk(sent, at, out var chunk))
        {
            at += chunk.Length;
            var type = chunk.Slice(4, 4);
            if (type.SequenceEqual("acTL"u8)) return PictureFault.Animated;
            if ((width == 0) != type.SequenceEqual("IHDR"u8)) return PictureFault.Broken;
            if (width == 0 && !Size(chunk, out width, out height)) return PictureFault.Broken;
            if (IsImage(type)) kept.Write(chunk);
            // A chunk in capitals that nobody knows cannot be left out without spoiling the image.
            else if (char.IsAsciiLetterUpper((char)type[0])) return PictureFault.Broken;
            data |= type.SequenceEqual("IDAT"u8);
            if (!type.SequenceEqual("IEND"u8)) continue;
            if (!data) return PictureFault.Broken;
            picture = new(PictureKind.Png, width, height, kept.WrittenSpan.ToArray());
            return PictureFault.None;
        }

        return PictureFault.Broken;
    }

    private static bool Chunk(ReadOnlySpan<byte> sent, int at, out ReadOnlySpan<byte> chunk)
    {
        chunk = default;
        if (at + 12 > sent.Length) return false;
        var length = BinaryPrimitives.ReadUInt32BigEndian(sent[at..]);
        if (length > sent.Length - at - 12) return false;
        chunk = sent.Slice(at, (int)length + 12);
        return Crc(chunk[4..^4]) == BinaryPrimitives.ReadUInt32BigEndian(chunk[^4..]);
    }

    private static bool Size(ReadOnlySpan<byte> chunk, out int width, out int height)
    {
        (width, height) = (0, 0);
        if (chunk.Length != 25) return false;
        (width, height) = (BinaryPrimitives.ReadInt32BigEndian(chunk[8..]), BinaryPrimitives.ReadInt32BigEndian(chunk[12..]));
        return width > 0 && height > 0;
    }

    private static bool IsImage(ReadOnlySpan<byte> type) =>
        type.SequenceEqual("IHDR"u8) || type.SequenceEqual("PLTE"u8) || type.SequenceEqual("tRNS"u8) || type.SequenceEqual("gAMA"u8) || type.SequenceEqual("sRGB"u8) || type.SequenceEqual("IDAT"u8) || type.SequenceEqual("IEND"u8);

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes) crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        return ~crc;
    }
}
