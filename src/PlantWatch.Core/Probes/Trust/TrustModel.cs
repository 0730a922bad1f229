using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>What is assumed of a kind of probe and of its tests before the first check. docs/decisions/0005 says where each figure comes from; none is fitted to a data set.</summary>
internal sealed record TrustModel
{
    /// <summary>Standard deviation of the bias after a calibration as it should be.</summary>
    public required double CalibratedSd { get; init; }

    /// <summary>Standard deviation of the bias of a probe that nobody has looked after.</summary>
    public required double UncheckedSd { get; init; }

    /// <summary>How many of the probes met for the first time are such.</summary>
    public double UncheckedShare { get; init; } = 0.15;

    /// <summary>How many services leave a probe no better than unchecked.</summary>
    public double BadServiceShare { get; init; } = 0.02;

    /// <summary>Variance a stable bias gains in a day.</summary>
    public required double BiasWalkPerDay { get; init; }

    /// <summary>Drifts that begin, a day.</summary>
    public double OnsetPerDay { get; init; } = 1.0 / 90;

    /// <summary>Standard deviation of the rate of a drift, in the measurand's unit a day.</summary>
    public required double RateSd { get; init; }

    /// <summary>Variance that the bias gains in a day while nobody tests: what the probe may do unseen.</summary>
    public required double UntestedPerDay { get; init; }

    /// <summary>Where drifts tend, in the measurand's unit a day.</summary>
    public double RateMean { get; init; }

    /// <summary>Of the drifts that begin, the share that is fouling or failing within days.</summary>
    public double FastShare { get; init; } = 0.1;

    /// <summary>How many times as fast these go.</summary>
    public double FastTimes { get; init; } = 8;

    /// <summary>Variance the rate gains in a day.</summary>
    public double RateWalkPerDay { get; init; }

    /// <summary>Where the gain is counted from: 7 for pH, the middle of the line for ORP.</summary>
    public double GainAt { get; init; }

    /// <summary>Gain before anything was learned of it: an error of sensitivity, or the millivolts a decade of an ORP line.</summary>
    public (double Mean, double Sd) Gain { get; init; } = (0, 1e-6);

    /// <summary>Level of an ORP line before it is learned; for other probes what all tests of one instrument and lot are off by.</summary>
    public (double Mean, double Sd) Level { get; init; }

    /// <summary>Variance the level of a line gains in a day without anybody's fault.</summary>
    public double LevelWalkPerDay { get; init; }

    /// <summary>Standard deviation of what all tests of one instrument and lot are off by.</summary>
    public double Shared => Learns ? 0 : Level.Sd;

    /// <summary>Days after which half a lot and all remembrance of it is used up: a time constant.</summary>
    public double SharedDays { get; init; } = 60;

    /// <summary>Standard deviation of the slow wander of a mixed potential.</summary>
    public double WanderSd { get; init; }

    /// <summary>Its time constant in days.</summary>
    public double WanderDays { get; init; } = 1;

    /// <summary>Bad lots of reagent, a day; 0 where tests use none.</summary>
    public double LotPerDay { get; init; }

    /// <summary>Standard deviation of what a bad lot is off by.</summary>
    public double LotSd { get; init; }

    /// <summary>Days until somebody notices.</summary>
    public double LotDays { get; init; } = 4;

    /// <summary>Slips, a test.</summary>
    public double Slip { get; init; } = 0.02;

    /// <summary>The same for a test already unlikely by itself.</summary>
    public double SlipIfUnlikely { get; init; } = 0.2;

    /// <summary>Standard deviation of a slip: in the measurand's unit, for ORP in decades of chlorine.</summary>
    public required double SlipSd { get; init; }

    /// <summary>Shifts of a watched probe that its signal did not show, a day.</summary>
    public double UnseenPerDay { get; init; } = 1.0 / 3650;

    /// <summary>Probability of a shift while nobody could watch.</summary>
    public double Unwatched { get; init; } = 0.001;

    /// <summary>Standard deviation of such a shift.</summary>
    public required double JumpSd { get; init; }

    /// <summary>How likely a leap of the signal was the water's after all.</summary>
    public double LeapOfWater { get; init; } = 0.1;

    /// <summary>How well the size of the leap is the change of the bias, as a share of it.</summary>
    public double LeapSpread { get; init; } = 0.1;

    /// <summary>Scatter between probe and water that neither uncertainty names: film on the electrode, streaks in the cell.</summary>
    public double OwnScatter { get; init; }

    /// <summary>A bias beyond this asks for maintenance.</summary>
    public required double MaintenanceAt { get; init; }

    /// <summary>A bias beyond this is out of specification.</summary>
    public required double OutAt { get; init; }

    /// <summary>How probable that has to be.</summary>
    public double FlagAt { get; init; } = 0.2;

    /// <summary>How improbable it has to become again.</summary>
    public double ClearAt { get; init; } = 0.1;

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

    private static TrustModel Ph { get; } = new()
    {
        CalibratedSd = 0.018, UncheckedSd = 0.15, BiasWalkPerDay = 0.002 * 0.002, RateSd = 0.01, RateWalkPerDay = 0.003 * 0.003,
        UntestedPerDay = 0.148 * 0.148 / AMonth.Days,
        GainAt = 7, Gain = (0, 0.02), Level = (0, 0.05), LotPerDay = 1.0 / 240, LotSd = 0.3, SlipSd = 0.4, JumpSd = 0.4,
        MaintenanceAt = 0.15, OutAt = 0.30, Resolution = 0.005, MovingAt = 0.06, Mixing = 0.03,
    };

    private static TrustModel Temperature { get; } = new()
    {
        CalibratedSd = 0.15, UncheckedSd = 0.8, BiasWalkPerDay = 0.01 * 0.01, RateSd = 0.01, RateWalkPerDay = 1e-6,
        UntestedPerDay = 0.1 * 0.1 / AMonth.Days, Level = (0, 0.15), SlipSd = 1.5, JumpSd = 2,
        MaintenanceAt = 0.5, OutAt = 1.0, Resolution = 0.05, MovingAt = 0.3, Mixing = 0.15,
    };

    private static TrustModel FreeChlorine { get; } = new()
    {
        CalibratedSd = 0.1, UncheckedSd = 0.3, BiasWalkPerDay = 0.01 * 0.01, RateSd = 0.02, RateWalkPerDay = 1e-5,
        UntestedPerDay = 0.2 * 0.2 / AMonth.Days, Gain = (0, 0.1), Level = (0, 0.03), SlipSd = 0.8, JumpSd = 0.8, OwnScatter = 0.05,
        MaintenanceAt = 0.3, OutAt = 0.6, Resolution = 0.01, MovingAt = 0.15, Mixing = 0.05,
    };

    private static TrustModel Orp { get; } = new()
    {
        CalibratedSd = 1, UncheckedSd = 5, UncheckedShare = 0.001, BadServiceShare = 0.001, BiasWalkPerDay = 0.2 * 0.2, RateMean = -1, RateSd = 1.5, RateWalkPerDay = 0.2 * 0.2,
        UntestedPerDay = 20.0 * 20.0 / AMonth.Days, GainAt = -0.3, Gain = (70, 25), Level = (700, 150), LevelWalkPerDay = 5.0 * 5.0 / AMonth.Days, WanderSd = 8, WanderDays = 1.5,
        SlipSd = 0.35, JumpSd = 60, OwnScatter = 2,
        MaintenanceAt = 25, OutAt = 50, Resolution = 1, MovingAt = 10, Mixing = 0,
        Learns = true, ChecksNeeded = 8, DaysNeeded = 2, FlagAt = 0.25,
    };
}
