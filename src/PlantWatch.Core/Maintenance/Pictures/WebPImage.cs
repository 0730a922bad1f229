using System.Buffers;
using System.Buffers.Binary;

namespace PlantWatch.Core.Maintenance.Pictures;

/// <summary>A WebP taken apart by its chunks (RFC 9649) and put together again from those that make the image.</summary>
internal static class WebPImage
{
    // Of the flags of the extended header only that of transparency stays: profile, EXIF, XMP are gone.
    private const byte Alpha = 0x10, Animation = 0x02;

    public static PictureFault Take(ReadOnlySpan<byte> sent, out Picture? picture)
    {
        picture = null;
        var riff = BinaryPrimitives.ReadUInt32LittleEndian(sent[4..]);
        if (riff < 4 || riff > sent.Length - 8) return PictureFault.Broken;
        var inside = sent[12..(int)(riff + 8)];
        var (kept, size) = (new ArrayBufferWriter<byte>(sent.Length), (Width: 0, Height: 0));
        var image = false;
        for (var at = 0; at < inside.Length;)
        {
            if (!Chunk(inside[at..], out var chunk)) return PictureFault.Broken;
            at += chunk.Length;
            var type = chunk[..4];
            if (type.SequenceEqual("ANIM"u8) || type.SequenceEqual("ANMF"u8)) return PictureFault.Animated;
            if (type.SequenceEqual("VP8X"u8))
            {
                if (chunk.Length != 18 || kept.WrittenCount > 0) return PictureFault.Broken;
                if ((chunk[8] & Animation) != 0) return PictureFault.Animated;
                var header = chunk.ToArray();
                header[8] &= Alpha;
                kept.Write(header);
                size = (1 + Small(chunk[12..]), 1 + Small(chunk[15..]));
            }
            else if (type.SequenceEqual("VP8 "u8) || type.SequenceEqual("VP8L"u8))
            {
                if (image || !Size(chunk, out var own)) return PictureFault.Broken;
                if (size.Width > 0 && size != own) return PictureFault.Broken;
                (image, size) = (true, own);
                kept.Write(chunk);
            }
            else if (type.SequenceEqual("ALPH"u8)) kept.Write(chunk);
        }

        if (!image) return PictureFault.Broken;
        picture = new(PictureKind.WebP, size.Width, size.Height, Whole(kept.WrittenSpan));
        return PictureFault.None;
    }

    // Chunks lie on even places.
    private static bool Chunk(ReadOnlySpan<byte> rest, out ReadOnlySpan<byte> chunk)
    {
        chunk = default;
        if (rest.Length < 8) return false;
        var length = BinaryPrimitives.ReadUInt32LittleEndian(rest[4..]);
        if (length > rest.Length - 8) return false;
        var padded = 8 + (int)length + (int)(length & 1);
        if (padded > rest.Length) return false;
        chunk = rest[..padded];
        return true;
    }

    private static bool Size(ReadOnlySpan<byte> chunk, out (int Width, int Height) size)
    {
        size = default;
        if (chunk[3] == (byte)'L')
        {
            if (chunk.Length < 13 || chunk[8] != 0x2F) return false;
            var bits = BinaryPrimitives.ReadUInt32LittleEndian(chunk[9..]);
            size = (1 + (int)(bits & 0x3FFF), 1 + (int)((bits >> 14) & 0x3FFF));
            return true;
        }

        if (chunk.Length < 18 || !chunk[11..].StartsWith((ReadOnlySpan<byte>)[0x9D, 0x01, 0x2A])) return false;
        size = (BinaryPrimitives.ReadUInt16LittleEndian(chunk[14..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(chunk[16..]) & 0x3FFF);
        return size is { Width: > 0, Height: > 0 };
    }

    private static int Small(ReadOnlySpan<byte> three) => three[0] | (three[1] << 8) | (three[2] << 16);

    private static byte[] Whole(ReadOnlySpan<byte> chunks)
    {
        var whole = new byte[12 + chunks.Length];
        "RIFF"u8.CopyTo(whole);
        BinaryPrimitives.WriteUInt32LittleEndian(whole.AsSpan(4), (uint)(4 + chunks.Length));
        "WEBP"u8.CopyTo(whole.AsSpan(8));
        chunks.CopyTo(whole.AsSpan(12));
        return whole;
    }
}
