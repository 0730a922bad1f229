using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>How much a signal changes within 10, 20, 40, 80 and 160 minutes, now and usually: a probe that has become slow loses the short changes and keeps the long ones. The default has seen nothing.</summary>
public sealed record SignalPace
{
    /// <summary>A signal never seen.</summary>
    public static SignalPace New { get; } = new();

    /// <summary>Sums of the quarter day under way.</summary>
    public LagSums Quarter { get; init; }

    /// <summary>Blocks passed in it.</summary>
    public int Blocks { get; init; }

    /// <summary>The last four quarter days, newest first.</summary>
    public ImmutableArray<LagSums> Past { get; init; } = [];

    /// <summary>What it usually is: running means.</summary>
    public LagSums Usual { get; init; }

    /// <summary>Quarter days these rest on, counted up to what is enough.</summary>
    public int Quarters { get; init; }

    /// <summary>How lively the shortest changes usually are.</summary>
    public SignalCalm Brisk { get; init; }

    /// <summary>Sums since it was found slow.</summary>
    public LagSums Slow { get; init; }

    /// <summary>Quarter days in a row in which it was found slow.</summary>
    public int SlowFor { get; init; }

    /// <summary>True while the probe follows the water slowly.</summary>
    public bool IsSlow => SlowFor > 0;

    /// <summary>Apparent time constant in minutes; unknown while it is not slow.</summary>
    public Estimate Response { get; init; }
}
