using PlantWatch.Server.Charts;
using ScottPlot;

namespace PlantWatch.Server.Tests.Charts;

/// <summary>Contrast as WCAG 2.2 defines it: (L1 + 0.05) / (L2 + 0.05) of the relative luminances.</summary>
public sealed class ThemeContrastTests
{
    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("print")]
    public void Text_and_meaningful_lines_stand_out_from_what_lies_behind_them(string name)
    {
        var theme = name switch { "dark" => ChartTheme.Dark, "print" => ChartTheme.Print, _ => ChartTheme.Light };
        Assert.All([theme.Paper, theme.Panel], b => Assert.True(Contrast(theme.Ink, b) >= 4.5));
        foreach (var behind in (Color[])[theme.Panel, theme.Band])
            Assert.All([theme.Limit, theme.Raw, theme.Check, theme.Suspect, .. theme.Value], c => Assert.True(Contrast(c, behind) >= 3, $"{c.ToHex()} on {behind.ToHex()}: {Contrast(c, behind):F2}"));
    }

    [Fact]
    public void What_is_printed_has_no_colour_to_lose()
    {
        var p = ChartTheme.Print;
        Assert.All([p.Paper, p.Panel, p.Band, p.Limit, p.Grid, p.Ink, p.Raw, p.Envelope, p.Check, p.Suspect, .. p.Value], c => Assert.True(c.R == c.G && c.G == c.B, c.ToHex()));
    }

    [Fact]
    public void Black_on_white_is_21_to_1() => Assert.Equal(21, Contrast(Colors.Black, Colors.White), 6);

    private static double Contrast(Color a, Color b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(Color c)
    {
        static double Linear(byte v) => v / 255.0 <= 0.04045 ? v / 255.0 / 12.92 : Math.Pow(((v / 255.0) + 0.055) / 1.055, 2.4);
        return (0.2126 * Linear(c.R)) + (0.7152 * Linear(c.G)) + (0.0722 * Linear(c.B));
    }
}
