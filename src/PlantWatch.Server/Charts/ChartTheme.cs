using ScottPlot;

namespace PlantWatch.Server.Charts;

/// <summary>The colours of a picture. Text has a contrast of 4.5 to 1 or more, every line that carries meaning 3 to 1 or more (WCAG 2.2, 1.4.3 and 1.4.11);
/// shapes and dashes say the same as the colours do.</summary>
internal sealed record ChartTheme
{
    /// <summary>Behind everything.</summary>
    public required Color Paper { get; init; }

    /// <summary>Behind the data, outside the limits.</summary>
    public required Color Panel { get; init; }

    /// <summary>Between the limits.</summary>
    public required Color Band { get; init; }

    /// <summary>Edges of the limits.</summary>
    public required Color Limit { get; init; }

    /// <summary>Grid lines; decoration only.</summary>
    public required Color Grid { get; init; }

    /// <summary>Text and axes.</summary>
    public required Color Ink { get; init; }

    /// <summary>Raw values beside corrected ones.</summary>
    public required Color Raw { get; init; }

    /// <summary>From the lowest to the highest value of a point.</summary>
    public required Color Envelope { get; init; }

    /// <summary>The value to believe: one for each probe of a panel, in turn.</summary>
    public required IReadOnlyList<Color> Value { get; init; }

    /// <summary>A check.</summary>
    public required Color Check { get; init; }

    /// <summary>A suspect check: abnormal, so it has a colour.</summary>
    public required Color Suspect { get; init; }

    /// <summary>On paper and on light screens.</summary>
    public static ChartTheme Light { get; } = new()
    {
        Paper = Color.FromHex("#F3F4F5"), Panel = Color.FromHex("#FFFFFF"), Band = Color.FromHex("#EAF0EE"), Limit = Color.FromHex("#4E6B63"),
        Grid = Color.FromHex("#DFE3E6"), Ink = Color.FromHex("#22282D"), Raw = Color.FromHex("#767F87"), Envelope = Color.FromHex("#2F6594").WithAlpha(0.22),
        Value = [Color.FromHex("#1C5A91"), Color.FromHex("#6A3D8C"), Color.FromHex("#1E6E66")],
        Check = Color.FromHex("#14181B"), Suspect = Color.FromHex("#A84B00"),
    };

    /// <summary>On paper, where a printer may have no colours: ink and greys, told apart by dashes and shapes.</summary>
    public static ChartTheme Print { get; } = new()
    {
        Paper = Color.FromHex("#FFFFFF"), Panel = Color.FromHex("#FFFFFF"), Band = Color.FromHex("#EFEFEF"), Limit = Color.FromHex("#555555"),
        Grid = Color.FromHex("#DDDDDD"), Ink = Color.FromHex("#111111"), Raw = Color.FromHex("#767676"), Envelope = Color.FromHex("#000000").WithAlpha(0.16),
        Value = [Color.FromHex("#1A1A1A"), Color.FromHex("#4D4D4D"), Color.FromHex("#6B6B6B")],
        Check = Color.FromHex("#000000"), Suspect = Color.FromHex("#3A3A3A"),
    };

    /// <summary>On dark screens.</summary>
    public static ChartTheme Dark { get; } = new()
    {
        Paper = Color.FromHex("#1B1F23"), Panel = Color.FromHex("#23282D"), Band = Color.FromHex("#2B3535"), Limit = Color.FromHex("#8FA8A1"),
        Grid = Color.FromHex("#343B42"), Ink = Color.FromHex("#E3E7EA"), Raw = Color.FromHex("#8C969E"), Envelope = Color.FromHex("#7FB2DE").WithAlpha(0.25),
        Value = [Color.FromHex("#8ABDE8"), Color.FromHex("#C6A3E0"), Color.FromHex("#76C7BC")],
        Check = Color.FromHex("#F2F4F5"), Suspect = Color.FromHex("#F0A35E"),
    };
}
