using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>The circulation as its mean over an hour: what one reading says of a turnover is noise of the meter. The default has heard nothing.</summary>
/// <param name="Since">First reading of the hour that is being taken.</param>
/// <param name="Newest">Its newest.</param>
/// <param name="Sum">Sum of its readings, m3/h.</param>
/// <param name="Count">How many they are.</param>
/// <param name="Mean">Mean of the hour before, m3/h; null while there was none.</param>
/// <param name="MeanAt">When that hour was over.</param>
public readonly record struct FlowHour(Instant Since, Instant Newest, double Sum, int Count, double? Mean, Instant MeanAt)
{
    private static readonly TimeSpan Whole = TimeSpan.FromHours(1);

    // An hour of which less than half was heard says nothing of it (our choice, because the half that is missing could turn it).
    private static readonly TimeSpan Heard = TimeSpan.FromMinutes(30);

    /// <summary>How long a mean is told of: the hour it began in, and the one after.</summary>
    public static readonly TimeSpan Tells = TimeSpan.FromHours(2);

    /// <summary>The mean while it still tells of now; else null.</summary>
    public double? MeanOf(Instant now) => Mean is not null && now - MeanAt <= Tells ? Mean : null;

    /// <summary>Takes a reading in.</summary>
    /// <param name="at">When it was taken.</param>
    /// <param name="flow">Circulation in m3/h.</param>
    public FlowHour With(Instant at, double flow)
    {
        if (Count == 0) return this with { Since = at, Newest = at, Sum = flow, Count = 1 };
        return at - Since < Whole ? this with { Newest = at, Sum = Sum + flow, Count = Count + 1 } : Closed(at) with { Since = at, Newest = at, Sum = flow, Count = 1 };
    }

    private FlowHour Closed(Instant at) => Newest - Since >= Heard ? this with { Mean = Sum / Count, MeanAt = at } : this;
}
