using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What a pump was driven to deliver on a day of the site, by its strokes or by its running time and rate. The default is nothing on no day.</summary>
/// <param name="Day">The day.</param>
/// <param name="Litres">What it was driven to deliver so far.</param>
/// <param name="UpTo">Up to when it is counted.</param>
public readonly record struct DayDose(DateOnly Day, double Litres, Instant UpTo)
{
    /// <summary>So much more, up to a time of a day; with a new day the count begins anew.</summary>
    public DayDose And(double litres, DateOnly day, Instant at) => new(day, (day == Day ? Litres : 0) + litres, at);
}
