using ScottPlot;
using SkiaSharp;

namespace PlantWatch.Server.Charts;

/// <summary>The font of the pictures, brought along: on a machine without fonts every text would vanish without a word.</summary>
internal sealed class ChartFont : IFontResolver
{
    /// <summary>Family name, also written into SVG.</summary>
    public const string Name = "DejaVu Sans";

    private static readonly Lazy<SKTypeface> Loaded = new(Load);

    private ChartFont()
    {
    }

    /// <summary>The typeface; the first use also hands it to the plotting library.</summary>
    public static SKTypeface Face => Loaded.Value;

    // The library looks for missing glyphs and other weights on the machine: whatever it asks for, it gets this face.
    SKTypeface? IFontResolver.CreateTypeface(string fontName, FontWeight weight, FontSlant slant, FontSpacing spacing) => fontName == Name ? Face : null;

    SKTypeface? IFontResolver.CreateTypeface(string fontName, bool bold, bool italic) => fontName == Name ? Face : null;

    private static SKTypeface Load()
    {
        using var file = typeof(ChartFont).Assembly.GetManifestResourceStream("DejaVuSans.ttf")
            ?? throw new InvalidOperationException("the font of the charts was not built into the program");
        var face = SKTypeface.FromStream(file) ?? throw new InvalidOperationException("the font of the charts cannot be read");
        Fonts.FontResolvers.Insert(0, new ChartFont());
        Fonts.Default = Name;
        return face;
    }
}
