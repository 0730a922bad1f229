using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Charts;

/// <summary>All that a picture of a pool's strips needs. Nothing is looked up while drawing.</summary>
internal sealed record StripChartInput
{
    /// <summary>What the picture is of, such as the pool's name.</summary>
    public required string Title { get; init; }

    /// <summary>IANA time zone of the site: the axis shows its clock.</summary>
    public required string TimeZone { get; init; }

    /// <summary>Left edge.</summary>
    public required Instant From { get; init; }

    /// <summary>Right edge; later than <see cref="From"/>.</summary>
    public required Instant To { get; init; }

    /// <summary>One panel a measurand, drawn from top to bottom.</summary>
    public required IReadOnlyList<Strip> Strips { get; init; }

    /// <summary>The words of legend and gaps.</summary>
    public required ChartWords Words { get; init; }

    /// <summary>Notes, in any order.</summary>
    public IReadOnlyList<NoteMark> Notes { get; init; } = [];

    /// <summary>Which other day the broken line is, in words; null where no day is compared with.</summary>
    public string? OtherDay { get; init; }

    /// <summary>Width in pixels, 200 to 4000.</summary>
    public int Width { get; init; } = 1200;

    /// <summary>Height in pixels; 0 lets the number of strips decide.</summary>
    public int Height { get; init; }

    /// <summary>Light or dark.</summary>
    public ChartTheme Theme { get; init; } = ChartTheme.Light;
}

/// <summary>One panel: a measurand of the pool.</summary>
/// <param name="Name">What stands above it, without the unit.</param>
/// <param name="Measurand">Fixes unit and decimals.</param>
/// <param name="Lines">One for each probe.</param>
/// <param name="Low">Lowest acceptable value; null when no limit is in force.</param>
/// <param name="High">Highest acceptable value; null when no limit is in force.</param>
/// <param name="Checks">Manual checks, in any order.</param>
internal sealed record Strip(string Name, Measurand Measurand, IReadOnlyList<StripLine> Lines, double? Low, double? High, IReadOnlyList<CheckMark> Checks);

/// <summary>A probe's series.</summary>
/// <param name="Name">The probe; shown only when a panel holds several.</param>
/// <param name="Series">Raw, with gaps as gaps.</param>
/// <param name="Corrected">Corrected mean, one a point of the series; null when no calibration ever held.</param>
internal sealed record StripLine(string Name, SeriesAnswer Series, IReadOnlyList<double?>? Corrected)
{
    /// <summary>The same probe on another day, laid under the clock of this one; null where no day is compared with.</summary>
    public StripLine? OtherDay { get; init; }
}

/// <summary>A note about a span of time.</summary>
internal readonly record struct NoteMark(Instant From, Instant To, string Text);

/// <summary>A manual result.</summary>
/// <param name="At">Sample time.</param>
/// <param name="Value">Result in the strip's unit; the end of the method's range when censored.</param>
/// <param name="U">Expanded uncertainty, k = 2; 0 draws no bar.</param>
/// <param name="Censoring">Whether it is a number, or only below or above one.</param>
/// <param name="Suspect">It stands alone against everything else.</param>
internal readonly record struct CheckMark(Instant At, double Value, double U, Censoring Censoring, bool Suspect);

/// <summary>Words on the picture, from the words of the server.</summary>
internal sealed record ChartWords(string Raw, string Corrected, string Envelope, string Limits, string Check, string SuspectCheck, string Below, string Above, string NoData)
{
    /// <summary>Takes them from a lookup by the keys <c>chart.raw</c>, <c>chart.corrected</c>, <c>chart.envelope</c>, <c>chart.limits</c>, <c>chart.check</c>,
    /// <c>chart.suspect_check</c>, <c>chart.below</c>, <c>chart.above</c> and <c>chart.no_data</c>.</summary>
    public static ChartWords From(Func<string, string> word) => new(
        word("chart.raw"), word("chart.corrected"), word("chart.envelope"), word("chart.limits"), word("chart.check"),
        word("chart.suspect_check"), word("chart.below"), word("chart.above"), word("chart.no_data"));
}
