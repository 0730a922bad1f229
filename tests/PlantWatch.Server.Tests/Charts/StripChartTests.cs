using System.Text.RegularExpressions;
using System.Xml.Linq;
using PlantWatch.Server.Charts;
using SkiaSharp;

namespace PlantWatch.Server.Tests.Charts;

public sealed partial class StripChartTests
{
    [Theory]
    [InlineData(390, false)]
    [InlineData(390, true)]
    [InlineData(1200, false)]
    [InlineData(1200, true)]
    public void A_png_has_the_width_asked_for_and_text_on_it(int width, bool dark)
    {
        using var picture = SKBitmap.Decode(StripChart.Png(Pictures.Day(width, dark)));
        Assert.Equal(width, picture.Width);
        // Without a font nothing would stand in the head or beside the axes.
        Assert.True(InkIn(picture, new(12, 4, 120, 26)) > 100, "no title");
        Assert.True(InkIn(picture, new(2, 60, 46, 200)) > 50, "no labels on the value axis");
    }

    [Fact]
    public void The_title_is_what_makes_the_ink_of_the_head()
    {
        using var picture = SKBitmap.Decode(StripChart.Png(Pictures.Day() with { Title = "" }));
        Assert.Equal(0, InkIn(picture, new(12, 4, 120, 24)));
    }

    [Fact]
    public void An_svg_is_well_formed_and_holds_its_words_as_text()
    {
        var svg = XDocument.Parse(StripChart.Svg(Pictures.Day()));
        var texts = svg.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim()).ToList();
        foreach (var expected in (string[])["Harbour pool", "pH", "ORP, mV", "Free chlorine, mg/L", "Temperature, °C", "13 Mar", "08:00", "no data", "suspect check", "check above range", "limits", "corrected", "raw"])
            Assert.Contains(expected, texts);
        Assert.DoesNotContain("check below range", texts); // there is none in this picture
        Assert.StartsWith("Harbour pool, 2026-03-12 06:00", svg.Root!.Elements().First(e => e.Name.LocalName == "title").Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_title_with_signs_of_the_markup_stays_well_formed()
    {
        var svg = XDocument.Parse(StripChart.Svg(Pictures.Day() with { Title = "Pool <1> & \"spa\"" }));
        Assert.Contains(svg.Descendants(), e => e.Name.LocalName == "text" && e.Value.Trim() == "Pool <1> & \"spa\"");
    }

    [Fact]
    public void Without_data_the_picture_says_so_and_keeps_its_limits()
    {
        var texts = Texts(StripChart.Svg(Pictures.Nothing()));
        Assert.Equal(2, texts.Count(t => t == "no data"));
        Assert.Contains("limits", texts);
        Assert.DoesNotContain("raw", texts);
        Assert.Contains("no data", Texts(StripChart.Svg(Pictures.Nothing() with { Strips = [] })));
    }

    [Fact]
    public void Another_day_lies_under_this_one_in_a_broken_grey_and_has_its_name_in_the_key()
    {
        var day = Pictures.Day() with { Strips = [Pictures.Day().Strips[1]] };
        var line = day.Strips[0].Lines[0];
        // The same line fifty millivolts lower: nothing else of the picture is there.
        StripLine other = new(line.Name, line.Series with { Points = [.. line.Series.Points.Select(p => p.IsGap ? p : p with { Min = p.Mean - 50, Mean = p.Mean - 50, Max = p.Mean - 50 })] }, null);
        var compared = day with { OtherDay = "the day before", Strips = [day.Strips[0] with { Lines = [line with { OtherDay = other }] }] };
        Assert.Contains("the day before", Texts(StripChart.Svg(compared)));
        Assert.DoesNotContain("the day before", Texts(StripChart.Svg(day with { OtherDay = "the day before" })));
        using var with = SKBitmap.Decode(StripChart.Png(compared));
        using var without = SKBitmap.Decode(StripChart.Png(day));
        var panel = new SKRectI(60, 66, 1170, 190);
        Assert.True(Count(with, panel, day.Theme.Raw) > 100 + Count(without, panel, day.Theme.Raw), "no line of the other day");
    }

    [Fact]
    public void Notes_stand_over_the_strips_with_their_words_and_those_of_one_time_one_under_the_other()
    {
        var noted = Pictures.Day() with
        {
            Notes = [new(Pictures.Hour(2), Pictures.Hour(14), "Sand filter washed"), new(Pictures.Hour(3), Pictures.Hour(9), "Lane 4 <out>"), new(Pictures.Hour(-9), Pictures.Hour(-8), "long ago")],
        };
        var texts = Texts(StripChart.Svg(noted));
        Assert.Contains("Sand filter washed", texts);
        Assert.Contains("Lane 4 <out>", texts);
        Assert.DoesNotContain("long ago", texts);
        // Two rows of 18 and a little more.
        Assert.Equal(StripChart.SizeOf(Pictures.Day()).Height + 40, StripChart.SizeOf(noted).Height);
    }

    [Fact]
    public void A_gap_stays_empty()
    {
        var input = Pictures.Day() with { Strips = [Pictures.Day().Strips[1]] };
        using var picture = SKBitmap.Decode(StripChart.Png(input));
        var line = input.Theme.Value[0];
        // The gap lies between the eighth and the eleventh of 24 hours.
        int At(double hour) => (int)(52 + ((1200 - 52 - 24) * hour / 24));
        Assert.Equal(0, Count(picture, new(At(8.3), 70, At(10.8), 190), line));
        Assert.True(Count(picture, new(At(5), 70, At(7.5), 190), line) > 100);
    }

    [Fact]
    public void The_axis_shows_the_clock_of_the_site()
    {
        var texts = Texts(StripChart.Svg(Pictures.Day() with { TimeZone = "Asia/Tokyo" }));
        Assert.Contains("2026-03-12 15:00 – 2026-03-13 15:00 Asia/Tokyo", texts);
        Assert.Contains("16:00", texts);
    }

    [Fact]
    public void A_height_that_is_too_small_to_read_is_not_obeyed()
    {
        var (_, height) = StripChart.SizeOf(Pictures.Day() with { Height = 50 });
        Assert.InRange(height, 5 * 54, 600);
        Assert.Equal(1000, StripChart.SizeOf(Pictures.Day() with { Height = 1000 }).Height);
    }

    [Fact]
    public void A_time_range_that_ends_before_it_begins_is_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => StripChart.Png(Pictures.Day() with { From = Pictures.To, To = Pictures.From }));

    [Fact]
    public async Task Many_pictures_at_once_are_all_the_same()
    {
        var first = StripChart.Png(Pictures.Day());
        var others = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() => StripChart.Png(Pictures.Day()))));
        Assert.All(others, other => Assert.Equal(first, other));
    }

    private static List<string> Texts(string svg) => [.. XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => Spaces().Replace(e.Value, " ").Trim())];

    // Pixels that stand out from the corner's colour.
    private static int InkIn(SKBitmap picture, SKRectI area)
    {
        var paper = picture.GetPixel(0, 0);
        return Pixels(picture, area).Count(p => Math.Abs(p.Red - paper.Red) + Math.Abs(p.Green - paper.Green) + Math.Abs(p.Blue - paper.Blue) > 200);
    }

    private static int Count(SKBitmap picture, SKRectI area, ScottPlot.Color colour) =>
        Pixels(picture, area).Count(p => Math.Abs(p.Red - colour.R) + Math.Abs(p.Green - colour.G) + Math.Abs(p.Blue - colour.B) < 60);

    private static IEnumerable<SKColor> Pixels(SKBitmap picture, SKRectI area) =>
        from y in Enumerable.Range(area.Top, area.Height) from x in Enumerable.Range(area.Left, area.Width) select picture.GetPixel(x, y);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
