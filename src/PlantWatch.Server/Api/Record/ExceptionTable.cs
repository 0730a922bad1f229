using System.Globalization;
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

    public static byte[] Write(IEnumerable<ExceptionView> lines, TimeZoneInfo zone) => CsvText.Write(Header, lines.Select(line => Fields(line, zone)));

    private static string?[] Fields(ExceptionView line, TimeZoneInfo zone) =>
    [
        line.Id.ToString(), line.Place, line.Name, Wording.Key(line.Grade), line.Rule, line.Reading.Text, CsvText.Local(line.ReadAt, zone), line.ReadBy,
        Said(line.Action), CsvText.Local(line.Action?.At, zone), line.Action?.By, Minutes(line.Action?.Minutes),
        line.Retest?.What?.Text, line.Retest is { } retest ? Wording.Key(retest.Word) : null, CsvText.Local(line.Retest?.At, zone), line.Retest?.By, Minutes(line.Retest?.Minutes),
        Wording.Key(line.Closing), CsvText.Local(line.ClosedAt, zone), line.ClosedBy, line.ClosedWhy, Minutes(line.MinutesToClosing),
        line.Owed is { } owed ? Wording.Key(owed.Act) : null, CsvText.Local(line.Owed?.By, zone), line.Owed?.Who,
    ];

    private static string? Said(ExceptionStepView? step) => step is null ? null : string.Join(": ", new[] { Wording.Key(step.Kind), step.What?.Text, step.Text }.Where(part => !string.IsNullOrEmpty(part)));

    private static string? Minutes(double? minutes) => minutes is { } known ? Math.Round(known).ToString(CultureInfo.InvariantCulture) : null;
}
