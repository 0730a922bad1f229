using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>How good a day of a probe's record is. The default is not rated.</summary>
public enum RecordRating
{
    /// <summary>Nothing is known of its error: no test, no service, or no reading.</summary>
    NotRated = 0,
    /// <summary>As good as such a probe can be.</summary>
    Excellent,
    /// <summary>Good.</summary>
    Good,
    /// <summary>Fair.</summary>
    Fair,
    /// <summary>Poor: for orientation only.</summary>
    Poor,
}

/// <summary>What is known of one day of a probe. The default knows nothing.</summary>
/// <param name="Expected">Readings that a whole day would hold.</param>
/// <param name="Good">Good readings that it holds.</param>
/// <param name="Worst">The worst standing of the probe on that day.</param>
/// <param name="Error">The most the shown value is off by on that day, with its standard uncertainty; unknown when no test told it.</param>
/// <param name="Corrected">The most that a correction of the record added on that day, its parts taken without sign; 0 for none.</param>
/// <param name="CorrectionU">Standard uncertainty of that correction.</param>
public readonly record struct DayEvidence(double Expected, double Good, Standing Worst, Estimate Error, double Corrected, double CorrectionU);

/// <summary>The rating of one day with its figures.</summary>
/// <param name="Rating">The rating.</param>
/// <param name="Completeness">Good readings of those expected, 0 to 1.</param>
/// <param name="Error">Combined error in the measurand's unit; null when nothing is known of it.</param>
/// <param name="Why">What decided, most important first.</param>
public sealed record DayQuality(RecordRating Rating, double Completeness, double? Error, ImmutableArray<Reason> Why);

/// <summary>Rates a day of the record in the four classes of USGS TM 1-D3, by the size of its combined error, and lower where much is missing or the probe stood badly.</summary>
public static class DayRating
{
    // Least completeness of an excellent, good and fair day (common practice: TM 1-D3 rates errors alone).
    private static readonly double[] Completeness = [0.95, 0.80, 0.50];

    /// <summary>Rates.</summary>
    /// <param name="measurand">The quantity.</param>
    /// <param name="day">What is known of the day.</param>
    public static DayQuality Of(Measurand measurand, DayEvidence day)
    {
        var complete = day.Expected > 0 ? Math.Clamp(day.Good / day.Expected, 0, 1) : 0;
        if (!(day.Good > 0)) return new(RecordRating.NotRated, complete, null, [Reason.Of("quality.no_good_readings")]);
        if (LimitsOf(measurand) is not { } limits) return new(RecordRating.NotRated, complete, null, [Reason.Of("quality.no_limits")]);
        if (ErrorOf(day) is not { } error) return new(RecordRating.NotRated, complete, null, [Reason.Of("quality.error_not_known")]);
        var (byError, byGaps, byStanding) = (ClassOf(error, limits), ClassOf(complete), ClassOf(day.Worst));
        var rating = (RecordRating)Math.Max((int)byError, Math.Max((int)byGaps, (int)byStanding));
        var why = ImmutableArray.CreateBuilder<Reason>();
        if (byStanding == rating && byStanding > RecordRating.Excellent) why.Add(Reason.Of("quality.standing"));
        if (byGaps == rating && byGaps > RecordRating.Excellent) why.Add(Reason.Of("quality.incomplete", 100 * complete));
        why.Add(day.Corrected > 0
            ? Reason.Of("quality.error_with_correction", error, measurand.Unit(), day.Corrected)
            : Reason.Of("quality.error", error, measurand.Unit()));
        return new(rating, complete, error, why.ToImmutable());
    }

    /// <summary>The largest combined error of an excellent, good and fair day; null where the trade has none. pH and temperature after USGS TM 1-D3 (from memory), the others by analogy (common practice).</summary>
    public static (double Excellent, double Good, double Fair)? LimitsOf(Measurand measurand) => measurand switch
    {
        Measurand.Ph or Measurand.Temperature => (0.2, 0.5, 0.8),
        Measurand.FreeChlorine => (0.3, 0.5, 0.8),
        Measurand.Orp => (20, 50, 80),
        _ => null,
    };

    /// <summary>What a probe is off by some days after something told it: the value stays, its uncertainty grows by what the probe may have strayed; unknown after <see cref="StillTells"/>.</summary>
    public static Estimate ErrorAfter(Measurand measurand, Estimate told, TimeSpan since) =>
        !told.IsKnown || since > StillTells ? default
        : new(told.Value, Math.Sqrt((told.StandardUncertainty * told.StandardUncertainty) + (CorrectionOffers.WanderPerDay(measurand) * Math.Max(0, since.TotalDays))));

    /// <summary>What a probe is off by just after a service: nothing, as surely as buffers or tests can tell.</summary>
    public static Estimate ErrorAfterService(Measurand measurand, bool byStandard) =>
        CorrectionModel.Of(measurand) is { } model ? new(0, byStandard ? model.UByBuffers : model.UByTests) : default;

    /// <summary>How long a test or a service tells of a probe's error (common practice: a monthly service and a few days' grace).</summary>
    public static TimeSpan StillTells { get; } = TimeSpan.FromDays(35);

    // TM 1-D3 adds the corrections up without their signs. Where none was made, what the tests say the probe is off by stands for them. Their uncertainty (k = 2) counts like error: it is not known to be less.
    private static double? ErrorOf(DayEvidence day) =>
        day.Corrected > 0 ? day.Corrected + (2 * day.CorrectionU)
        : day.Error.IsKnown ? Math.Abs(day.Error.Value) + day.Error.Expanded : null;

    private static RecordRating ClassOf(double error, (double Excellent, double Good, double Fair) limits) =>
        error <= limits.Excellent ? RecordRating.Excellent : error <= limits.Good ? RecordRating.Good : error <= limits.Fair ? RecordRating.Fair : RecordRating.Poor;

    private static RecordRating ClassOf(double complete)
    {
        for (var i = 0; i < Completeness.Length; i++)
            if (complete >= Completeness[i]) return RecordRating.Excellent + i;
        return RecordRating.Poor;
    }

    private static RecordRating ClassOf(Standing worst) => worst switch
    {
        Standing.Failure => RecordRating.Poor,
        Standing.OutOfSpecification => RecordRating.Fair,
        Standing.MaintenanceRequired => RecordRating.Good,
        // No flow and work on the probe show in the readings that are missing.
        _ => RecordRating.Excellent,
    };
}
