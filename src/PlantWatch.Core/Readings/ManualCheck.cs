using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>How a manual test was made; decides its uncertainty.</summary>
public enum TestMethod
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Photometer.</summary>
    Photometer,
    /// <summary>Visual comparator, read to half a step.</summary>
    Comparator,
    /// <summary>Tablet count: the result moves in steps of one tablet.</summary>
    TabletCount,
    /// <summary>Hand-held meter or thermometer.</summary>
    Meter,
}

/// <summary>Whether a result is a number or only a bound.</summary>
public enum Censoring
{
    /// <summary>The number itself.</summary>
    None = 0,
    /// <summary>Below the method's range: the truth is under the number given.</summary>
    Below,
    /// <summary>Above the method's range: the truth is over the number given.</summary>
    Above,
}

/// <summary>Where the sample was taken; at the cell it tests the probe, in the pool it tests mixing too.</summary>
public enum SamplePoint
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>In the pool, away from inlets.</summary>
    Pool,
    /// <summary>At the outlet of the probes' sample cell.</summary>
    Cell,
    /// <summary>From the balance tank.</summary>
    BalanceTank,
    /// <summary>At the pool's lowest point or outlet.</summary>
    Outlet,
}

/// <summary>What the tester saw in the cell beside a colour that can be read.</summary>
public enum CellLook
{
    /// <summary>Nothing out of the way.</summary>
    None = 0,
    /// <summary>A flash of pink that went at once: chlorine high enough to bleach the dye.</summary>
    PinkFlash,
    /// <summary>Phenol red gone purple, a colour that is not on its scale.</summary>
    Purple,
    /// <summary>A cloudy cell: hard water or a salt that does not dissolve.</summary>
    Cloudy,
}

/// <summary>One tested quantity of a check.</summary>
/// <param name="Measurand">What was tested.</param>
/// <param name="Value">The result after dilution was accounted for, in the measurand's unit.</param>
/// <param name="Method">How.</param>
/// <param name="Censoring">A number, or only a bound.</param>
/// <param name="Dilution">Dilution factor of the sample: 1 undiluted, 10 for one part in ten. The value is already multiplied by it.</param>
/// <param name="Step">Step of the method as it was used, in the measurand's unit and before dilution: what one tablet stands for, or from one standard of a comparator to the next. Null for the usual one.</param>
/// <param name="Look">What was seen in the cell.</param>
public sealed record TestResult(
    [property: JsonRequired] Measurand Measurand, [property: JsonRequired] double Value, TestMethod Method, Censoring Censoring = Censoring.None, double Dilution = 1,
    double? Step = null, CellLook Look = CellLook.None)
{
    /// <summary>Standard uncertainty that the instrument adds to all tests made with it, in the measurand's unit; null while nothing is known against it. The fold works it out; whatever a phone sends is not taken.</summary>
    public double? InstrumentDoubt { get; init; }
}

/// <summary>What the plant's own panel showed for a probe when the sample was taken.</summary>
/// <param name="ProbeId">Which probe.</param>
/// <param name="Value">The number on the panel, in the measurand's unit.</param>
public sealed record PanelReading([property: JsonRequired] string ProbeId, [property: JsonRequired] double Value);

/// <summary>A manual check: evidence with a person, a place and three times. Corrections are new checks that name the old one.</summary>
public sealed record ManualCheck
{
    /// <summary>UUIDv7 made where it was entered, so that sending it twice is harmless.</summary>
    public required Guid Id { get; init; }

    /// <summary>The pool tested.</summary>
    public required string PoolId { get; init; }

    /// <summary>When the sample was taken.</summary>
    public required Instant SampledAt { get; init; }

    /// <summary>When it was typed in.</summary>
    public required Instant EnteredAt { get; init; }

    /// <summary>Who tested.</summary>
    public required string Who { get; init; }

    /// <summary>Kind of sample point.</summary>
    public SamplePoint Point { get; init; }

    /// <summary>The exact place in words.</summary>
    public string? Place { get; init; }

    /// <summary>As it was sent: without what the fold made of it.</summary>
    public ManualCheck AsSent() => this with { Results = [.. Results.Select(r => r with { InstrumentDoubt = null })] };

    /// <summary>The results, each measurand at most once.</summary>
    public ImmutableArray<TestResult> Results { get; init; } = [];

    /// <summary>What the panel showed beside the test.</summary>
    public ImmutableArray<PanelReading> Panel { get; init; } = [];

    /// <summary>Whether the bottom of the pool could be seen; null when not looked at.</summary>
    public bool? BottomVisible { get; init; }

    /// <summary>Bathers in the water; null when not counted.</summary>
    public int? Bathers { get; init; }

    /// <summary>A remark.</summary>
    public string? Note { get; init; }

    /// <summary>The check that this one corrects; null for a new one.</summary>
    public Guid? Corrects { get; init; }

    /// <summary>Why it was corrected; required with <see cref="Corrects"/>.</summary>
    public string? CorrectionReason { get; init; }

    /// <summary>The result for a measurand; null when it was not tested.</summary>
    public TestResult? Result(Measurand measurand)
    {
        foreach (var result in Results)
            if (result.Measurand == measurand) return result;
        return null;
    }
}
