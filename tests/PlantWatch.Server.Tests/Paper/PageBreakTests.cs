using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Paper.Render.Html;
using PlantWatch.Server.Paper.Render.Pdf;
using PlantWatch.Server.Words;
using UglyToad.PdfPig;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>How sheets break over pages.</summary>
public sealed class PageBreakTests
{
    [Fact]
    public void A_table_of_300_rows_has_its_heads_on_every_page_and_no_row_is_cut()
    {
        var pages = Pages(SheetOf(Rows(300)));
        Assert.InRange(pages.Length, 6, 40);
        Assert.All(pages[..^1], page => Assert.Contains("What was written", page, StringComparison.Ordinal));
        for (var i = 0; i < 300; i++)
        {
            // Both lines of a row stand on one page, and on one only.
            var on = pages.Where(p => p.Contains($"row {i:000}.", StringComparison.Ordinal)).ToArray();
            Assert.Single(on);
            Assert.Contains($"end {i:000}.", on[0], StringComparison.Ordinal);
        }

        Assert.Equal(Enumerable.Range(1, pages.Length).Select(i => $"Page {i} of {pages.Length}"), pages.Select(p => p[p.IndexOf("Page ", StringComparison.Ordinal)..].Split('\n')[0].Trim()));
    }

    [Fact]
    public void A_row_longer_than_a_page_goes_on_under_its_heads_and_loses_nothing()
    {
        var words = Enumerable.Range(0, 900).Select(i => $"word{i:0000}.").ToArray();
        var pages = Pages(SheetOf([[new Text("long"), new Text(string.Join(' ', words.Select(w => w + " and so on and on"))), new Number(1, "")]]));
        Assert.True(pages.Length > 2);
        var all = string.Concat(pages);
        Assert.All(words, w => Assert.Contains(w, all, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Heads_as_long_as_a_page_end_all_the_same()
    {
        var sheet = SheetOf([]) with
        {
            Sections = [new("Rows", [new Table("All rows", [new(string.Join(' ', Enumerable.Repeat("head", 4000))), new("Two")], [[new Text("x"), new Text(string.Join(' ', Enumerable.Repeat("word", 200)))]], "none")])],
        };
        Assert.NotEmpty(await Task.Run(() => SheetPdf.Write(sheet)).WaitAsync(TimeSpan.FromMinutes(1)));
    }

    [Fact]
    public void Nothing_is_drawn_beyond_the_edges_of_the_paper()
    {
        var pdf = SheetPdf.Write(SheetOf([.. Rows(40), [new Text(new string('W', 400)), new Text("x"), new Number(123456.78, "mg/L")]]));
        using var document = PdfDocument.Open(pdf);
        foreach (var page in document.GetPages())
            Assert.All(page.Letters, l => Assert.True(l.BoundingBox.Left >= 30 && l.BoundingBox.Right <= page.Width - 30 && l.BoundingBox.Bottom >= 15, $"{l.Value} at {l.BoundingBox}"));
    }

    [Fact]
    public void On_the_page_for_reading_every_table_has_a_caption_and_heads_with_a_scope()
    {
        var html = SheetHtml.Write(SheetOf(Rows(3)));
        Assert.Equal(1, DayLogTests.Count(html, "<h1>"));
        Assert.Equal(1, DayLogTests.Count(html, "<caption>"));
        Assert.Equal((3, 3), (DayLogTests.Count(html, "<th scope=\"col\""), DayLogTests.Count(html, "<th scope=\"row\">")));
        Assert.Contains("counter(page)", html, StringComparison.Ordinal);
        Assert.Contains("counter(pages)", html, StringComparison.Ordinal);
        Assert.StartsWith("<!doctype html>\n<html lang=\"en\">", html, StringComparison.Ordinal);
    }

    internal static IReadOnlyList<Cell>[] Rows(int count) =>
        [.. Enumerable.Range(0, count).Select(i => (IReadOnlyList<Cell>)[new Text($"row {i:000}."), new Text($"Something that takes a line of its own {i}") { Note = $"end {i:000}." }, new Number(i / 10.0, "mg/L")])];

    internal static Sheet SheetOf(IReadOnlyList<IReadOnlyList<Cell>> rows) => new()
    {
        Kind = SheetKind.DayLog, Title = "Day log sheet", Site = "Bramble Street Baths", Pools = ["Main pool"], Words = Wording.English,
        Span = SheetSpan.Of(new(2026, 5, 4), new(2026, 5, 4), TimeZoneInfo.Utc),
        Stamp = new(Instant.FromUtc(2026, 5, 4, 20), "I. Spector", new(new string('a', 64), [new("hall", 7, rows.Count, Instant.FromUtc(2026, 5, 4, 19))])),
        Sections = [new("Rows", [new Table("All rows", [new("Row"), new("What was written", Wide: true), new("Figure", ColumnKind.Number, "mg/L")], rows, "none")])],
    };

    private static string[] Pages(Sheet sheet) => PaperPlant.PagesOf(SheetPdf.Write(sheet));
}
