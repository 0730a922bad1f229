using System.Globalization;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.People;

/// <summary>Bathers by hour of day and day of week, with a lucky or unlucky quarter of an hour.</summary>
internal sealed class Crowd(PoolSetup pool, int seed)
{
    // Share of the peak in each hour of the day: early swimmers, school and club sessions, the evening (assumption).
    private static readonly double[] ByHour =
        [0, 0, 0, 0, 0, 0, 0.3, 0.6, 0.5, 0.5, 0.7, 0.6, 0.45, 0.4, 0.5, 0.8, 1.0, 1.0, 0.9, 0.7, 0.5, 0.25, 0, 0];

    private readonly Chance _chance = new(seed, pool.Id + "/bathers");
    private readonly TimeOnly _opens = TimeOnly.ParseExact(pool.Bathers.Opens, "HH:mm", CultureInfo.InvariantCulture);
    private readonly TimeOnly _closes = TimeOnly.ParseExact(pool.Bathers.Closes, "HH:mm", CultureInfo.InvariantCulture);
    private long _quarter = -1;
    private int _count;

    /// <summary>Bathers at a local time.</summary>
    public int At(DateTime local)
    {
        var now = local.Ticks / TimeSpan.FromMinutes(15).Ticks;
        if (now == _quarter) return _count;
        _quarter = now;
        var luck = Math.Exp(0.3 * _chance.Normal());
        var day = local.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? pool.Bathers.WeekendFactor : 1;
        var time = TimeOnly.FromDateTime(local);
        _count = time >= _opens && time < _closes ? (int)Math.Round(pool.Bathers.Peak * ByHour[local.Hour] * day * luck) : 0;
        return _count;
    }
}
