using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Live;

/// <summary>From when to when a picture shows, and how large it is.</summary>
internal sealed record StripFrame(Instant From, Instant To, int Width, int Height, ChartTheme Theme)
{
    /// <summary>Which lines.</summary>
    public StripLook Look { get; init; }

    /// <summary>Which other day lies under it.</summary>
    public ComparedDay Compared { get; init; }
}

/// <summary>Another day whose lines lie under those that are shown.</summary>
internal enum ComparedDay
{
    /// <summary>None.</summary>
    None = 0,
    /// <summary>The day before.</summary>
    Yesterday,
    /// <summary>The same day of the week before.</summary>
    LastWeek,
}

/// <summary>Which lines of a probe are drawn where its readings were corrected.</summary>
internal enum StripLook
{
    /// <summary>Corrected, and raw beside it.</summary>
    Both = 0,
    /// <summary>As received.</summary>
    Raw,
    /// <summary>As corrected alone.</summary>
    Corrected,
}

/// <summary>The strips of a pool as they lie in the record, ready to be drawn.</summary>
internal static class PoolStrips
{
    /// <summary>Gathers what a picture of a pool needs.</summary>
    /// <param name="worker">The circuit.</param>
    /// <param name="pool">One of its pools.</param>
    /// <param name="frame">From when to when, and how large.</param>
    /// <param name="series">The readings.</param>
    /// <param name="record">The tests.</param>
    /// <param name="words">What the strips are called in, and what stands beside them.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <param name="only">The one quantity to draw; null for all.</param>
    public static async Task<StripChartInput> InputAsync(
        CircuitWorker worker, PoolPlan pool, StripFrame frame, ISeriesStore series, IRecordStore record, Wording words, CancellationToken cancellation, Measurand? only = null)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["check"], pool.Id, frame.From, frame.To, 2000), cancellation);
        ManualCheck[] checks = [.. rows.Select(r => r.Body).OfType<CheckEntry>().Select(c => c.Check)];
        var limits = worker.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
        var strips = new List<Strip>();
        foreach (var group in worker.State.Plan.Probes.Where(p => (p.PoolId is null || p.PoolId == pool.Id) && p.Measurand != Measurand.SampleFlow && (only is null || p.Measurand == only)).GroupBy(p => p.Measurand))
        {
            var lines = new List<StripLine>();
            foreach (var probe in group) lines.Add(await WithOtherDayAsync(worker, probe, frame, series, cancellation));
            var (low, high) = limits.Ends(group.Key);
            strips.Add(new Strip(words.Find($"name.{Wording.Key(group.Key)}"), group.Key, lines, low, high, [.. Marks(checks, group.Key)]));
        }

        if (only is null) strips.AddRange(OfTests(pool, checks, limits, words).Where(t => strips.All(s => s.Measurand != t.Measurand)));
        return new StripChartInput
        {
            Title = pool.Name,
            TimeZone = worker.State.Plan.TimeZone,
            From = frame.From,
            To = frame.To,
            Width = frame.Width,
            Height = frame.Height,
            Theme = frame.Theme,
            Strips = strips,
            OtherDay = frame.Compared == ComparedDay.None ? null : words.Find($"chart.compared.{Wording.Key(frame.Compared)}"),
            Words = ChartWords.From(words.Find),
        };
    }

    // A month and more of another day beside its own says nothing.
    private static readonly TimeSpan LongestCompared = TimeSpan.FromDays(32);

    private static async Task<StripLine> WithOtherDayAsync(CircuitWorker worker, ProbePlan probe, StripFrame frame, ISeriesStore series, CancellationToken cancellation)
    {
        var line = await LineAsync(worker, probe, frame, series, cancellation);
        if (frame.Compared == ComparedDay.None || frame.To - frame.From > LongestCompared) return line;
        var other = new OtherDay(TimeZoneInfo.FindSystemTimeZoneById(worker.State.Plan.TimeZone), frame.Compared == ComparedDay.LastWeek ? 7 : 1);
        // It is shown as one believes it, as on the page.
        var past = await LineAsync(worker, probe, frame with { From = other.Earlier(frame.From), To = other.Earlier(frame.To), Look = StripLook.Corrected }, series, cancellation);
        return line with { OtherDay = past with { Series = past.Series with { Points = other.Laid(past.Series.Points) } } };
    }

    private static async Task<StripLine> LineAsync(CircuitWorker worker, ProbePlan probe, StripFrame frame, ISeriesStore series, CancellationToken cancellation)
    {
        var answer = await SeriesApi.QueryAsync(worker, series, probe.Id, frame.From, frame.To, Math.Clamp(frame.Width, 1, 4000), cancellation);
        var correct = SeriesApi.Correction(worker.State, probe.Id);
        if (correct is null || frame.Look == StripLook.Raw) return new StripLine(probe.Name, answer, null);
        return frame.Look == StripLook.Corrected
            ? new StripLine(probe.Name, answer with { Points = [.. answer.Points.Select(p => p.IsGap ? p : Alone(p, correct(p.At, p.Mean)))] }, null)
            : new StripLine(probe.Name, answer, [.. answer.Points.Select(p => p.IsGap ? (double?)null : correct(p.At, p.Mean))]);
    }

    private static SeriesPoint Alone(SeriesPoint point, double value) => point with { Min = value, Mean = value, Max = value, Last = value };

    // What no probe measures and people test every day.
    private static IEnumerable<Strip> OfTests(PoolPlan pool, ManualCheck[] checks, LimitsInForce limits, Wording words)
    {
        Measurand[] tested = pool.Disinfectant == Disinfectant.Bromine ? [Measurand.Bromine] : [Measurand.FreeChlorine, Measurand.CombinedChlorine];
        foreach (var measurand in tested)
        {
            var (low, high) = limits.Ends(measurand);
            yield return new Strip(words.Find($"name.{Wording.Key(measurand)}"), measurand, [], low, high, [.. measurand == Measurand.CombinedChlorine ? Combined(checks, words) : Marks(checks, measurand)]);
        }
    }

    private static IEnumerable<CheckMark> Combined(ManualCheck[] checks, Wording words) =>
        from check in checks
        let combined = CombinedViews.Of(check, words)
        where combined?.Value is not null
        select new CheckMark(check.SampledAt, combined.Value!.Value, combined.U, Censoring.None, combined.Remark is not null);

    private static IEnumerable<CheckMark> Marks(ManualCheck[] checks, Measurand measurand) =>
        from check in checks
        let result = check.Result(measurand)
        where result is not null
        select new CheckMark(check.SampledAt, result.Value, MethodUncertainty.Of(result).OrNull()?.U ?? 0, result.Censoring, false);
}
