using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>How much a pump runs, of late and usually: two running means in constant memory. The default was never heard.</summary>
/// <param name="From">When it was first heard.</param>
/// <param name="To">Up to when it is counted.</param>
/// <param name="Lately">Sum behind <see cref="Recent"/>.</param>
/// <param name="Mostly">Sum behind <see cref="Usual"/>.</param>
/// <param name="RanAt">When it last ran; never if it was never seen running.</param>
public readonly record struct PumpRun(Instant From, Instant To, double Lately, double Mostly, Instant RanAt)
{
    // Long enough to cover the pauses of a pulsing pump, short enough to show a change within a shift; a usual that knows days and nights.
    private const double RecentHours = 2;
    private const double UsualHours = 72;
    private const double EnoughHours = 24;

    /// <summary>A pump speaks when something changes and once in a while; beyond this its state is no longer known and the time is not counted.</summary>
    public static TimeSpan LongestSilence { get; } = TimeSpan.FromHours(1);

    /// <summary>True once a day and more of it is known: before that nobody can say what is usual.</summary>
    public bool IsKnown => From.IsSet && (To - From).TotalHours >= EnoughHours;

    /// <summary>Share of the last hours that it ran, 0 to 1.</summary>
    public double Recent => Share(Lately, RecentHours);

    /// <summary>Share of the last days that it ran, 0 to 1.</summary>
    public double Usual => Share(Mostly, UsualHours);

    /// <summary>Counts the time up to an instant as spent in an activity.</summary>
    /// <param name="activity">What it did since <see cref="To"/>.</param>
    /// <param name="at">Up to when; what is not later changes nothing.</param>
    public PumpRun Until(PumpActivity activity, Instant at)
    {
        if (!From.IsSet) return new(at, at, 0, 0, activity == PumpActivity.Running ? at : RanAt);
        if (at <= To) return this;
        var heard = Instant.Earlier(at, To + LongestSilence);
        var hours = (heard - To).TotalHours;
        var running = activity == PumpActivity.Running;
        // Time that nobody knows of is taken out of the count altogether.
        return new(From + (at - heard), at, Mean(Lately, running, hours, RecentHours), Mean(Mostly, running, hours, UsualHours), running ? heard : RanAt);
    }

    private double Share(double sum, double constant)
    {
        var known = 1 - Math.Exp(-(To - From).TotalHours / constant);
        return known > 0 ? Math.Clamp(sum / known, 0, 1) : 0;
    }

    private static double Mean(double before, bool running, double hours, double constant)
    {
        var kept = Math.Exp(-hours / constant);
        return (before * kept) + (running ? 1 - kept : 0);
    }
}
