using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>What is assumed of a kind of probe before its first check. Each figure is common practice unless a source is named; none is fitted to a data set.</summary>
internal sealed record TrustModel
{
    /// <summary>Standard deviation of the bias of a probe nobody has checked yet.</summary>
    public required double UncheckedSd { get; init; }

    /// <summary>Variance that the bias gains in a day by drifting.</summary>
    public required double DriftVariancePerDay { get; init; }

    /// <summary>Standard deviation of a sudden shift, once one is confirmed.</summary>
    public required double JumpSd { get; init; }

    /// <summary>Scatter between probe and water that neither uncertainty names: film on the electrode, streaks in the cell.</summary>
    public double OwnScatter { get; init; }

    /// <summary>A bias beyond this asks for maintenance.</summary>
    public required double MaintenanceAt { get; init; }

    /// <summary>A bias beyond this is out of specification.</summary>
    public required double OutAt { get; init; }

    /// <summary>The least uncertainty of a pairing: what the display resolves.</summary>
    public required double Resolution { get; init; }

    /// <summary>The most a pairing may be uncertain by movement of the water alone; beyond it the two cannot be compared.</summary>
    public required double MovingAt { get; init; }

    /// <summary>How far a sample from the pool may differ from the water in the cell, in the measurand's unit.</summary>
    public required double Mixing { get; init; }

    /// <summary>True when what the probe should read follows a line that has to be learned first.</summary>
    public bool Learns { get; init; }

    /// <summary>Checks needed before the probe is judged.</summary>
    public int ChecksNeeded { get; init; } = 1;

    /// <summary>Days they have to be spread over.</summary>
    public double DaysNeeded { get; init; }

    /// <summary>The model of a measurand; null for what no manual check can judge.</summary>
    public static TrustModel? Of(Measurand measurand) => measurand switch
    {
        Measurand.Ph => Ph,
        Measurand.Temperature => Temperature,
        Measurand.FreeChlorine => FreeChlorine,
        Measurand.Orp => Orp,
        _ => null,
    };

    // Drift: 44 deployments of a river pH probe (Logan River Observatory, Jones et al. 2022, doi 10.1016/j.envsoft.2022.105364) show a median
    // absolute drift of 0.10 pH a month; a random walk with that median has 0.10 / 0.6745 = 0.148 a month. Their end gaps (sd 0.13 after a
    // median of 21 days) say 0.028 a day, the same figure.
    private static TrustModel Ph { get; } = new()
    {
        UncheckedSd = 0.15, DriftVariancePerDay = 0.148 * 0.148 / 30.44, JumpSd = 0.4,
        MaintenanceAt = 0.15, OutAt = 0.30, Resolution = 0.005, MovingAt = 0.06, Mixing = 0.03,
    };

    private static TrustModel Temperature { get; } = new()
    {
        UncheckedSd = 0.4, DriftVariancePerDay = 0.1 * 0.1 / 30.44, JumpSd = 2,
        MaintenanceAt = 0.5, OutAt = 1.0, Resolution = 0.05, MovingAt = 0.3, Mixing = 0.15,
    };

    // Slope and offset of an amperometric cell are not told apart here: the bias is that at the pool's usual chlorine.
    private static TrustModel FreeChlorine { get; } = new()
    {
        UncheckedSd = 0.3, DriftVariancePerDay = 0.2 * 0.2 / 30.44, JumpSd = 0.8, OwnScatter = 0.05,
        MaintenanceAt = 0.3, OutAt = 0.6, Resolution = 0.01, MovingAt = 0.15, Mixing = 0.05,
    };

    // Drift 10 to 30 mV a month; a check solution is accepted within +-15 mV, and in the pool the line adds its own uncertainty.
    private static TrustModel Orp { get; } = new()
    {
        UncheckedSd = 5, DriftVariancePerDay = 20.0 * 20.0 / 30.44, JumpSd = 60, OwnScatter = 5,
        MaintenanceAt = 25, OutAt = 50, Resolution = 1, MovingAt = 10, Mixing = 0,
        Learns = true, ChecksNeeded = 8, DaysNeeded = 2,
    };
}
