using System.Runtime.InteropServices;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Keeps the four tiers in step with the raw readings: what is newer is joined; where something late came in, the bucket is computed anew.</summary>
internal sealed class RollUps
{
    private readonly SiteCalendar _calendar;
    private readonly RollUpTable _minutes;
    private readonly RollUpTable _quarters;
    private readonly RollUpTable _hours;
    private readonly RollUpTable _days;
    private readonly Statement _raw;
    private readonly Func<long, long> _dayOf;

    private readonly List<Bucket> _newMinutes = [];
    private readonly List<Bucket> _newQuarters = [];
    private readonly List<Bucket> _coarse = [];
    private readonly SortedSet<long> _dirty = [];

    public RollUps(Session session, SiteCalendar calendar)
    {
        _calendar = calendar;
        _dayOf = t => calendar.DayOf(t).Start;
        _minutes = new RollUpTable(session, "rollup_minute");
        _quarters = new RollUpTable(session, "rollup_quarter");
        _hours = new RollUpTable(session, "rollup_hour");
        _days = new RollUpTable(session, "rollup_day");
        _raw = session.Prepare("SELECT t, value, quality FROM reading WHERE series = ?1 AND t >= ?2 AND t < ?3 ORDER BY t");
    }

    /// <summary>Takes a reading that is newer than all of its series.</summary>
    public void Newer(long t, double value, Quality quality) =>
        Join(_newMinutes, Bucket.Of(Tiers.Floor(t, Tiers.Minute), value, quality.IsGood()));

    /// <summary>Takes note of a reading inserted before the newest.</summary>
    public void Late(long t) => _dirty.Add(Tiers.Floor(t, Tiers.Minute));

    /// <summary>Starts of the minutes that got late readings since the last write.</summary>
    public IReadOnlyCollection<long> LateMinutes => _dirty;

    /// <summary>Writes what was taken since the last call to the tiers of a series. Each tier is made from the finer one, so the order counts.</summary>
    public void Write(long series)
    {
        if (_dirty.Count == 0) Join(series);
        else JoinAndRepair(series);
        Forget();
    }

    /// <summary>Drops what was taken and not written.</summary>
    public void Forget()
    {
        _newMinutes.Clear();
        _dirty.Clear();
    }

    /// <summary>Cuts all days anew, from the quarter hours: after the site's time zone was changed.</summary>
    public void RebuildDays(Session session)
    {
        session.Script("DELETE FROM rollup_day");
        foreach (var series in AllSeries(session))
        {
            _newQuarters.Clear();
            var rows = session.Prepare(RollUpTable.Select("rollup_quarter")).Bind(1, series).Bind(2, long.MinValue).Bind(3, long.MaxValue);
            while (rows.Next()) _newQuarters.Add(RollUpTable.BucketOf(rows));
            Add(_days, series, Gather(_coarse, _newQuarters, _dayOf));
        }
    }

    private static List<long> AllSeries(Session session)
    {
        var found = new List<long>();
        var rows = session.Prepare("SELECT id FROM series");
        while (rows.Next()) found.Add(rows.Int64(0));
        return found;
    }

    private void Join(long series)
    {
        Add(_minutes, series, _newMinutes);
        Add(_quarters, series, Gather(_newQuarters, _newMinutes, QuarterOf));
        Add(_hours, series, Gather(_coarse, _newQuarters, HourOf));
        // A site's day begins on a quarter of an hour, but not everywhere on a whole hour.
        Add(_days, series, Gather(_coarse, _newQuarters, _dayOf));
    }

    private static void Add(RollUpTable table, long series, List<Bucket> fresh)
    {
        foreach (ref var bucket in CollectionsMarshal.AsSpan(fresh)) table.Add(series, bucket);
    }

    private void JoinAndRepair(long series)
    {
        Repair(_minutes, series, _newMinutes, MinuteOf, start => RawSum(series, start));
        Repair(_quarters, series, Gather(_newQuarters, _newMinutes, QuarterOf), QuarterOf, start => _minutes.Sum(series, start, start + Tiers.Quarter));
        Repair(_hours, series, Gather(_coarse, _newQuarters, HourOf), HourOf, start => _quarters.Sum(series, start, start + Tiers.Hour));
        Repair(_days, series, Gather(_coarse, _newQuarters, _dayOf), _dayOf, start => _quarters.Sum(series, start, _calendar.DayOf(start).End));
    }

    private void Repair(RollUpTable table, long series, List<Bucket> fresh, Func<long, long> bucketOf, Func<long, Bucket> anew)
    {
        var starts = new SortedSet<long>();
        foreach (var minute in _dirty) starts.Add(bucketOf(minute));
        foreach (ref var bucket in CollectionsMarshal.AsSpan(fresh))
            if (!starts.Contains(bucket.Start)) table.Add(series, bucket);
        foreach (var start in starts) table.Put(series, anew(start));
    }

    private Bucket RawSum(long series, long start)
    {
        var sum = default(Bucket);
        _raw.Bind(1, series).Bind(2, start).Bind(3, start + Tiers.Minute);
        while (_raw.Next()) sum.Append(Bucket.Of(start, _raw.Double(1), ((Quality)_raw.Int64(2)).IsGood()));
        return sum;
    }

    private static List<Bucket> Gather(List<Bucket> into, List<Bucket> finer, Func<long, long> bucketOf)
    {
        into.Clear();
        foreach (ref var bucket in CollectionsMarshal.AsSpan(finer)) Join(into, bucket with { Start = bucketOf(bucket.Start) });
        return into;
    }

    private static void Join(List<Bucket> buckets, Bucket next)
    {
        var span = CollectionsMarshal.AsSpan(buckets);
        if (span.Length > 0 && span[^1].Start == next.Start) span[^1].Append(next);
        else buckets.Add(next);
    }

    private static long MinuteOf(long t) => Tiers.Floor(t, Tiers.Minute);

    private static long QuarterOf(long t) => Tiers.Floor(t, Tiers.Quarter);

    private static long HourOf(long t) => Tiers.Floor(t, Tiers.Hour);}
