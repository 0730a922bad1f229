using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>The exceptions as a table of comma-separated values, a breach a row: for whoever files the month.</summary>
internal static class ExceptionTable
{
    private static readonly string[] Header =
    [
        "line", "place", "quantity", "grade", "rule", "reading", "read_at", "read_by", "action", "action_at", "action_by", "minutes_to_action",
        "retest", "retest_word", "retest_at", "retest_by", "minutes_to_retest", "closing", "closed_at", "closed_by", "closed_why", "minutes_to_closing", "owed", "owed_by", "owed_who",
    ];

    // Words of people stand in it: what a spreadsheet would take for a formula is made text.
    private static readonly CsvConfiguration Format = new(CultureInfo.InvariantCulture) { NewLine = "\r\n", InjectionOptions = InjectionOptions.Escape };

    public static byte[] Write(IEnumerable<ExceptionView> lines, TimeZoneInfo zone)
    {
        using var bytes = new MemoryStream();
        using (var writer = new CsvWriter(new StreamWriter(bytes, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true), leaveOpen: true), Format))
        {
            Row(writer, Header);
            foreach (var line in lines) Row(writer, Fields(line, zone));
        }

        return bytes.ToArray();
    }

    private static string?[] Fields(ExceptionView line, TimeZoneInfo zone) =>
    [
        line.Id.ToString(), line.Place, line.Name, Wording.Key(line.Grade), line.Rule, line.Reading.Text, At(line.ReadAt, zone), line.ReadBy,
        Said(line.Action), At(line.Action?.At, zone), line.Action?.By, Minutes(line.Action?.Minutes),
        line.Retest?.What?.Text, line.Retest is { } retest ? Wording.Key(retest.Word) : null, At(line.Retest?.At, zone), line.Retest?.By, Minutes(line.Retest?.Minutes),
        Wording.Key(line.Closing), At(line.ClosedAt, zone), line.ClosedBy, line.ClosedWhy, Minutes(line.MinutesToClosing),
        line.Owed is { } owed ? Wording.Key(owed.Act) : null, At(line.Owed?.By, zone), line.Owed?.Who,
    ];

    private static string? Said(ExceptionStepView? step) => step is null ? null : string.Join(": ", new[] { Wording.Key(step.Kind), step.What?.Text, step.Text }.Where(part => !string.IsNullOrEmpty(part)));

    private static string? At(Instant? at, TimeZoneInfo zone) => at is { } known ? TimeZoneInfo.ConvertTime(known.ToDateTimeOffset(), zone).ToString("yyyy-MM-ddTHH:mm:sszzz", CultureInfo.InvariantCulture) : null;

    private static string? Minutes(double? minutes) => minutes is { } known ? Math.Round(known).ToString(CultureInfo.InvariantCulture) : null;

    private static void Row(CsvWriter writer, IEnumerable<string?> fields)
    {
        foreach (var field in fields) writer.WriteField(field);
        writer.NextRecord();
    }
}
