using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>How the clock of a hold stands.</summary>
public enum HoldWord
{
    /// <summary>There is no countdown, and the reasons say why.</summary>
    Refused = 0,
    /// <summary>The residual was not yet measured through the pool.</summary>
    NotStarted,
    /// <summary>Time counts, up to the newest test.</summary>
    Running,
    /// <summary>A test is out of what the table holds for: nothing counts until a test is back in it.</summary>
    Paused,
    /// <summary>The next test is missing for too long: the clock stands where it was.</summary>
    TestMissing,
    /// <summary>The hold is reached. It opens nothing: a person decides.</summary>
    Reached,
}

/// <summary>The clock of a hold as the tests made so far support it. A pure function of figure, tests and time: it never runs ahead of a test.</summary>
public sealed record HoldClock
{
    /// <summary>How it stands.</summary>
    public HoldWord Word { get; init; }

    /// <summary>Why it stands so, and what to do next.</summary>
    public ImmutableArray<Reason> Why { get; init; } = [];

    /// <summary>The row it counts by; null when refused.</summary>
    public HoldFigure? Figure { get; init; }

    /// <summary>What the tests support, in the unit of the figure.</summary>
    public double Credited { get; init; }

    /// <summary>When the residual was measured through the pool; never before.</summary>
    public Instant StartedAt { get; init; }

    /// <summary>Newest counted test; never before there is one.</summary>
    public Instant LastCountedAt { get; init; }

    /// <summary>Residual of the newest counted test, mg/L.</summary>
    public double LastResidual { get; init; }

    /// <summary>The test that proved the hold.</summary>
    public Instant ReachedAt { get; init; }

    /// <summary>When a test can prove the hold at the earliest, should the residual stay where it was last measured. No promise.</summary>
    public Instant EarliestEnd { get; init; }

    /// <summary>When the next test is due so that the time before it counts; never when nothing runs.</summary>
    public Instant NextTestBy { get; init; }

    /// <summary>Every test since the incident, in the order of sampling.</summary>
    public ImmutableArray<JudgedTest> Tests { get; init; } = [];

    /// <summary>The part of the hold that is done, 0 to 1.</summary>
    public double Share => Figure is { Required: > 0 } figure ? Math.Min(1, Credited / figure.Required) : 0;

    /// <summary>The clock.</summary>
    /// <param name="figure">The row to count by.</param>
    /// <param name="tests">Tests since the incident, in any order.</param>
    /// <param name="now">The time it is looked at.</param>
    public static HoldClock Of(HoldFigure figure, IEnumerable<HoldTest> tests, Instant now)
    {
        var count = new HoldCount(figure);
        foreach (var test in tests.OrderBy(t => t.At).ThenBy(t => t.Id)) count.Take(test);
        return count.At(now);
    }

    /// <summary>No countdown: the tests are shown all the same.</summary>
    /// <param name="why">Why there is none.</param>
    /// <param name="tests">Tests since the incident, in any order.</param>
    public static HoldClock Refuse(Reason why, IEnumerable<HoldTest> tests) => new()
    {
        Word = HoldWord.Refused, Why = [why],
        Tests = [.. tests.OrderBy(t => t.At).ThenBy(t => t.Id).Select(t => new JudgedTest(t, false, 0, t.WhyNot))],
    };
}
