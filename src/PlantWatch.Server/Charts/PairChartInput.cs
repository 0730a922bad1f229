using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Charts;

/// <summary>A probe beside a test by hand of the same water.</summary>
/// <param name="At">Sample time.</param>
/// <param name="Probe">What the probe said then, with its uncertainty.</param>
/// <param name="Test">What the test says it should have said, with its uncertainty.</param>
/// <param name="Doubted">The test stands alone against everything else: it is shown, and left out of every figure.</param>
internal readonly record struct ComparedPair(Instant At, Estimate Probe, Estimate Test, bool Doubted)
{
    /// <summary>Probe less test: above 0 the probe reads high.</summary>
    public double Difference => Probe.Value - Test.Value;

    /// <summary>Expanded uncertainty of the difference, k = 2.</summary>
    public double DifferenceU => 2 * Math.Sqrt((Probe.StandardUncertainty * Probe.StandardUncertainty) + (Test.StandardUncertainty * Test.StandardUncertainty));

    /// <summary>Mean of the two.</summary>
    public double Mean => (Probe.Value + Test.Value) / 2;
}

/// <summary>All that a picture of compared pairs needs. Nothing is looked up while drawing.</summary>
internal sealed record PairChartInput
{
    /// <summary>The probe's name.</summary>
    public required string Title { get; init; }

    /// <summary>Fixes unit and decimals.</summary>
    public required Measurand Measurand { get; init; }

    /// <summary>IANA time zone of the site, for the days under the title.</summary>
    public required string TimeZone { get; init; }

    /// <summary>The pairs, in any order.</summary>
    public required IReadOnlyList<ComparedPair> Pairs { get; init; }

    /// <summary>The language of the picture.</summary>
    public Wording Words { get; init; } = Wording.English;

    /// <summary>Width in pixels, 200 to 4000.</summary>
    public int Width { get; init; } = 800;

    /// <summary>Height in pixels; 0 lets the width decide.</summary>
    public int Height { get; init; }

    /// <summary>Light or dark.</summary>
    public ChartTheme Theme { get; init; } = ChartTheme.Light;

    /// <summary>The pairs that count.</summary>
    public IEnumerable<ComparedPair> Believed => Pairs.Where(p => !p.Doubted);
}

/// <summary>A drawn panel: what stands beside its axes and what its key says.</summary>
internal sealed record PairPanel(ScottPlot.Plot Plot, string Upwards, string Sideways, IReadOnlyList<Legend.Entry> Key);
