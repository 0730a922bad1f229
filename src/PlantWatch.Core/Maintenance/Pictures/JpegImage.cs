using System.Buffers;
using System.Buffers.Binary;

namespace PlantWatch.Core.Maintenance.Pictures;

/// <summary>A JPEG taken apart by its markers (ITU-T T.81, annex B) and put together again from those that make the image.</summary>
internal static class JpegImage
{
    private const byte Start = 0xD8, End = 0xD9, Scan = 0xDA, Restart0 = 0xD0, Restart7 = 0xD7;

    public static PictureFault Take(ReadOnlySpan<byte> sent, out Picture? picture)
    {
        picture = null;
        var kept = new ArrayBufferWriter<byte>(sent.Length);
        kept.Write((ReadOnlySpan<byte>)[0xFF, Start]);
        var (at, width, height, scanned) = (2, 0, 0, false);
        while (Marker(sent, ref at) is { } marker)
        {
            if (marker == End && scanned)
            {
                kept.Write((ReadOnlySpan<byte>)[0xFF, End]);
                picture = new(PictureKind.Jpeg, width, height, kept.WrittenSpan.ToArray());
                return PictureFault.None;
            }

            if (marker is Start or End or 0x01 or (>= Restart0 and <= Restart7) || !Segment(sent, at, out var segment)) return PictureFault.Broken;
            at += segment.Length;
            if (marker is 0xC0 or 0xC1 or 0xC2)
            {
                if (width > 0 || segment.Length < 8) return PictureFault.Broken;
                (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(segment[3..]), BinaryPrimitives.ReadUInt16BigEndian(segment[5..]));
            }

            if (!IsImage(marker, segment)) continue;
            kept.Write((ReadOnlySpan<byte>)[0xFF, marker]);
            kept.Write(segment);
            if (marker != Scan) continue;
            if (width == 0) return PictureFault.Broken;
            var length = Coded(sent[at..]);
            kept.Write(sent.Slice(at, length));
            (at, scanned) = (at + length, true);
        }

        return PictureFault.Broken;
    }

    // Any number of fill bytes may stand before a marker.
    private static byte? Marker(ReadOnlySpan<byte> sent, ref int at)
    {
        if (at >= sent.Length || sent[at] != 0xFF) return null;
        while (at < sent.Length && sent[at] == 0xFF) at++;
        return at < sent.Length && sent[at] != 0 ? sent[at++] : null;
    }

    private static bool Segment(ReadOnlySpan<byte> sent, int at, out ReadOnlySpan<byte> segment)
    {
        segment = default;
        if (at + 2 > sent.Length) return false;
        var length = BinaryPrimitives.ReadUInt16BigEndian(sent[at..]);
        if (length < 2 || at + length > sent.Length) return false;
        segment = sent.Slice(at, length);
        return true;
    }

    // Tables, frames, scans; of the application segments only those that say how colours are coded, and no thumbnail. EXIF, positions, comments and profiles are not the image.
    private static bool IsImage(byte marker, ReadOnlySpan<byte> segment) => marker switch
    {
        0xDB or 0xC4 or 0xDD or 0xC0 or 0xC1 or 0xC2 or Scan => true,
        0xE0 => segment.Length == 16 && segment[2..].StartsWith("JFIF\0"u8),
        0xEE => segment.Length == 14 && segment[2..].StartsWith("Adobe"u8),
        _ => false,
    };

    // Coded data: FF stands in it only before 0 or a restart.
    private static int Coded(ReadOnlySpan<byte> rest)
    {
        for (var i = 0; i + 1 < rest.Length; i++)
            if (rest[i] == 0xFF && rest[i + 1] is not (0 or (>= Restart0 and <= Restart7))) return i;
        return rest.Length;
    }
}
