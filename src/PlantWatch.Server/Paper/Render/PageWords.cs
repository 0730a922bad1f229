using PlantWatch.Server.Paper.Compose;
using PlantWatch.Server.Paper.Model;

namespace PlantWatch.Server.Paper.Render;

/// <summary>What stands at the head and the foot of every page.</summary>
internal static class PageWords
{
    private const int ShownOfHash = 16;

    /// <summary>Site, title and days.</summary>
    public static string Head(Sheet sheet) => $"{sheet.Site} \u00b7 {sheet.Title} \u00b7 {Days(sheet.Span)}";

    /// <summary>Who printed it when, on which clock, of which record.</summary>
    public static string Foot(Sheet sheet) => sheet.Words.Paper(
        "foot", sheet.Span.Iso(sheet.Stamp.PrintedAt), sheet.Stamp.By, sheet.Span.Zone.Id, sheet.Stamp.Digest.Hash[..ShownOfHash]);

    /// <summary>The page among all.</summary>
    public static string Page(Sheet sheet, int page, int pages) => sheet.Words.Paper("page_of", page, pages);

    /// <summary>A name for the file.</summary>
    public static string FileName(Sheet sheet, string ending) => $"{sheet.Kind.Key()}-{Days(sheet.Span).Replace(" \u2013 ", "-to-", StringComparison.Ordinal)}.{ending}";

    private static string Days(SheetSpan span) => span.IsOneDay ? Iso(span.First) : $"{Iso(span.First)} \u2013 {Iso(span.Last)}";

    private static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
