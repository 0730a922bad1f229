using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>How a probe is looked after, and what its electrode may do. The default is common practice.</summary>
public sealed record CarePlan
{
    /// <summary>Common practice.</summary>
    public static CarePlan Usual { get; } = new();

    /// <summary>Time between two calibrations: 30 days (common practice).</summary>
    public TimeSpan Every { get; init; } = TimeSpan.FromDays(30);

    /// <summary>Slope a pH electrode may have, in per cent of the ideal one: 85 to 105 (common practice; new ones 95 to 102).</summary>
    public ValueRange SlopePercent { get; init; } = new(85, 105);

    /// <summary>How far a pH electrode may be off at pH 7, mV on either side: 30 (common practice).</summary>
    public double OffsetMillivolts { get; init; } = 30;

    /// <summary>How far an ORP probe may be off in a check solution, mV on either side: 15 (published, a laboratory meter's manual).</summary>
    public double OrpMillivolts { get; init; } = 15;

    /// <summary>Whether somebody else than who did it has to review a calibration. A plant with one person says false.</summary>
    public bool SecondPerson { get; init; } = true;
}
