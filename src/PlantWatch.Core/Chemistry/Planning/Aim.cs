namespace PlantWatch.Core.Chemistry;

/// <summary>How a tested figure stands to its band.</summary>
public enum BandStanding
{
    /// <summary>Not judged.</summary>
    Unknown = 0,
    /// <summary>Not tested: the band is left out of the plan.</summary>
    NotTested,
    /// <summary>Inside.</summary>
    Inside,
    /// <summary>Outside by less than the test's own uncertainty: repeat the test before anything is dosed for it.</summary>
    WithinUncertainty,
    /// <summary>Below.</summary>
    Below,
    /// <summary>Above.</summary>
    Above,
}

/// <summary>A band with the figure as it is now, and where the plan aims.</summary>
/// <param name="Band">The band.</param>
/// <param name="Now">The figure now; null when it was not tested.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Margin">How far inside the band the plan aims where it can: the expanded uncertainty, but not more than a quarter of the band.</param>
public sealed record Aim(Band Band, Tested? Now, BandStanding Standing, double Margin)
{
    /// <summary>Judges a figure.</summary>
    /// <param name="band">Its band.</param>
    /// <param name="now">The figure; null when it was not tested.</param>
    public static Aim Of(Band band, Tested? now)
    {
        ArgumentNullException.ThrowIfNull(band);
        if (now is not { } tested) return new(band, null, BandStanding.NotTested, 0);
        var margin = band is { Low: { } low, High: { } high } ? Math.Min(tested.U, Math.Max(0, high - low) / 4) : tested.U;
        return new(band, now, StandingOf(band, tested), margin);
    }

    /// <summary>Which figure.</summary>
    public PlannedFigure Figure => Band.Figure;

    /// <summary>True when something has to be done for it.</summary>
    public bool AsksForDose => Standing is BandStanding.Below or BandStanding.Above;

    /// <summary>True for a band that nothing at hand can reach: the rest is planned, and this one is only left no worse where that can be.</summary>
    public bool IsGivenUp { get; init; }

    /// <summary>The lower end the plan must keep, and the one it aims at. Null for an open end.</summary>
    /// <remarks>
    /// A figure that is inside is not dosed for to gain a margin, and one that is outside by less than its test can tell is not dosed for at all: there the plan aims to leave it no worse, and must keep it
    /// within what the test can tell.
    /// </remarks>
    internal (double Must, double Wants)? Low => Band.Low is not { } end || Now is not { } now ? null
        : IsGivenUp && now.Value < end ? (double.NegativeInfinity, now.Value)
        : now.Value >= end ? (end, Math.Min(end + Margin, now.Value))
        : now.Value >= end - now.U ? (end - now.U, now.Value)
        : (end, end + Margin);

    /// <summary>The same for the upper end.</summary>
    internal (double Must, double Wants)? High => Band.High is not { } end || Now is not { } now ? null
        : IsGivenUp && now.Value > end ? (double.PositiveInfinity, now.Value)
        : now.Value <= end ? (end, Math.Max(end - Margin, now.Value))
        : now.Value <= end + now.U ? (end + now.U, now.Value)
        : (end, end - Margin);

    private static BandStanding StandingOf(Band band, Tested now) =>
        now.Value < band.Low ? (now.Value >= band.Low - now.U ? BandStanding.WithinUncertainty : BandStanding.Below)
        : now.Value > band.High ? (now.Value <= band.High + now.U ? BandStanding.WithinUncertainty : BandStanding.Above)
        : BandStanding.Inside;
}
