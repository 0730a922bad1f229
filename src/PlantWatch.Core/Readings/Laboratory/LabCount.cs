using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>What a printed count is.</summary>
public enum CountSense
{
    /// <summary>The number of colonies.</summary>
    Counted = 0,
    /// <summary>Under the number printed, which was not reached.</summary>
    Below,
    /// <summary>Over the number printed: the plate was overgrown.</summary>
    Above,
    /// <summary>None grew out of the volume that was examined.</summary>
    NotDetected,
}

/// <summary>How a limit and a count go together.</summary>
public enum LabVerdict
{
    /// <summary>No limit is in force for the organism: nothing is said, and nothing is called normal.</summary>
    NoLimit = 0,
    /// <summary>Inside, whatever the true count is.</summary>
    Inside,
    /// <summary>The volume examined was too small to tell: neither inside nor outside.</summary>
    NotProven,
    /// <summary>Outside.</summary>
    Outside,
}

/// <summary>One count of a report, as it is printed. The default is zero of an organism not stated in no volume, and is refused.</summary>
/// <param name="Organism">What was counted.</param>
/// <param name="Count">The number printed, 0 or more; 0 where none was detected.</param>
/// <param name="Sense">What the number is.</param>
/// <param name="Millilitres">The volume it is printed for: 1, 100, 250 or 1000 mL, or another above 0.</param>
public readonly record struct LabCount(Organism Organism, double Count, CountSense Sense, double Millilitres)
{
    /// <summary>The largest count that can be meant; more is a slip of the pen.</summary>
    public const double Most = 1e9;

    /// <summary>True for a count that can stand in a report.</summary>
    public bool IsPossible =>
        Organism != Organism.Unknown && Enum.IsDefined(Organism) && Enum.IsDefined(Sense) && Count is >= 0 and <= Most && Millilitres is > 0 and <= 10_000
        && (Sense != CountSense.Below || Count > 0) && (Sense != CountSense.NotDetected || Count == 0);

    /// <summary>The count in the volume that limits speak of: per mL for colonies, per 100 mL for the others. Nought where none was detected.</summary>
    public double PerBasis => Count * Organism.BasisMillilitres() / Millilitres;

    /// <summary>The first count per basis that the report rules out: the truth lies under it. Infinite for a plate that was overgrown.</summary>
    private double RuledOutFrom => Sense switch
    {
        CountSense.Below => PerBasis,
        CountSense.NotDetected => Organism.BasisMillilitres() / Millilitres,
        CountSense.Above => double.PositiveInfinity,
        _ => PerBasis,
    };

    /// <summary>How it stands against a highest count per basis.</summary>
    /// <remarks>
    /// Colonies are whole: "under 1 in 100 mL" and "none in 100 mL" are nought in 100 mL, and inside a limit of nought. "None in 10 mL" says only that there were under 10 in 100 mL, and proves no limit below that.
    /// An overgrown plate is outside where its number has reached the limit, and proves nothing else.
    /// </remarks>
    public LabVerdict Against(double high) => Sense switch
    {
        CountSense.Counted => PerBasis > high ? LabVerdict.Outside : LabVerdict.Inside,
        CountSense.Above => PerBasis >= high ? LabVerdict.Outside : LabVerdict.NotProven,
        _ => RuledOutFrom <= Math.Max(high, NextWhole(high)) ? LabVerdict.Inside : LabVerdict.NotProven,
    };

    // Under the next whole number above the limit is at the limit or under it.
    private static double NextWhole(double high) => Math.Floor(high) + 1;
}
