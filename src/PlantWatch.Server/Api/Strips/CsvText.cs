using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>A table as comma-separated values (RFC 4180), in UTF-8 with its mark, so that a spreadsheet reads names aright.</summary>
internal static class CsvText
{
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture) { NewLine = "\r\n" };

    /// <summary>The bytes of a table.</summary>
    public static byte[] Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string?>> rows)
    {
        using var bytes = new MemoryStream();
        using (var writer = new CsvWriter(new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true), Format))
        {
            Row(writer, header);
            foreach (var row in rows) Row(writer, row);
        }

        return bytes.ToArray();
    }

    /// <summary>A time on the clock of a zone with its offset (RFC 3339); null for none.</summary>
    public static string? Local(Instant? at, TimeZoneInfo zone, bool fine = false) =>
        at is { } known ? TimeZoneInfo.ConvertTime(known.ToDateTimeOffset(), zone).ToString(fine ? "yyyy-MM-ddTHH:mm:ss.fffzzz" : "yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture) : null;

    /// <summary>A number as it is, without what a language would do to it; empty for none.</summary>
    public static string? Number(double? value) => value is { } known && double.IsFinite(known) ? known.ToString("0.######", CultureInfo.InvariantCulture) : null;

    private static void Row(CsvWriter writer, IReadOnlyList<string?> fields)
    {
        foreach (var field in fields) writer.WriteField(Harmless(field));
        writer.NextRecord();
    }

    // Words of people stand in it: what a spreadsheet would take for a formula is made text. A number below zero stays one.
    private static string? Harmless(string? field) =>
        field is null || double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? field : SafeText.Of(field);
}
