using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Gathers what is known of each day of a probe, and has it rated by the core.</summary>
internal sealed class QualityReader(CircuitWorker worker, ProbePlan probe, ISeriesStore series, IRecordStore record, Wording words)
{
    private const int MostEntries = 20_000;

    private readonly CircuitState _state = worker.State;
    private readonly TimeZoneInfo _zone = TimeZoneInfo.FindSystemTimeZoneById(worker.State.Plan.TimeZone);

    private readonly record struct Told(Instant At, Estimate Error);

    /// <summary>The site's days that a range touches, as far as they have begun.</summary>
    public async Task<IReadOnlyList<DayQualityView>> DaysAsync(Instant from, Instant to, CancellationToken cancellation)
    {
        var first = DayOf(from);
        var (start, end) = (MidnightOf(first), Instant.Earlier(to, _state.Watermark));
        if (end <= start) return [];
        // By whole hours from midnight on: a point that reached over midnight would lend its readings to the day before.
        var hours = (int)Math.Ceiling((end - start).TotalHours);
        var points = (await SeriesApi.QueryAsync(worker, series, probe.Id, start, start + TimeSpan.FromHours(hours), hours, cancellation)).Points
            .Where(p => !p.IsGap).GroupBy(p => DayOf(p.At)).ToDictionary(g => g.Key, g => g.ToArray());
        var (standings, told) = (await StandingsAsync(start, to, cancellation), await ToldAsync(start, to, cancellation));
        var days = new List<DayQualityView>();
        for (var day = first; MidnightOf(day) is var begins && begins < end; day = day.AddDays(1))
        {
            var ends = MidnightOf(day.AddDays(1));
            var quality = DayRating.Of(probe.Measurand, Evidence(begins, ends, Instant.Earlier(ends, end), points.GetValueOrDefault(day) ?? [], standings, told));
            days.Add(new(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), quality.Rating, quality.Completeness, quality.Error, words.Say(quality.Why)));
        }

        return days;
    }

    // Today has had only part of its readings yet; what was told of it is told all the same.
    private DayEvidence Evidence(Instant begins, Instant ends, Instant soFar, SeriesPoint[] points, List<(Instant At, Standing Standing)> standings, List<Told> told)
    {
        var good = points.Sum(p => (double)p.Good);
        var mean = good > 0 ? points.Sum(p => p.Good * p.Mean) / good : 0;
        var value = CalibrationsInForce.Correct(_state.Calibrations, probe.Id, begins, mean);
        var (size, u) = (0.0, 0.0);
        foreach (var c in _state.Corrections)
        {
            if (c.ProbeId != probe.Id || !c.IsInForce || c.From >= ends || c.To <= begins) continue;
            var at = Instant.Earlier(c.To, ends);
            if (c.SizeAt(at, value) is var here && here > size) (size, u) = (here, c.UncertaintyAt(at));
        }

        var worst = Standing.Unknown;
        for (var i = 0; i < standings.Count; i++)
            if (standings[i].At < ends && (i == standings.Count - 1 || standings[i + 1].At > begins)) worst = Standings.Worse(worst, standings[i].Standing);
        return new((soFar - begins) / probe.Every, good, worst, WorstError(begins, ends, told), size, u);
    }

    // What was told last before the day holds into it; what is told within it holds to its end.
    private Estimate WorstError(Instant begins, Instant ends, List<Told> told)
    {
        var worst = default(Estimate);
        for (var i = 0; i < told.Count; i++)
        {
            if (told[i].At >= ends || (i < told.Count - 1 && told[i + 1].At <= begins)) continue;
            var until = i < told.Count - 1 ? Instant.Earlier(told[i + 1].At, ends) : ends;
            var error = DayRating.ErrorAfter(probe.Measurand, told[i].Error, until - told[i].At);
            if (error.IsKnown && (!worst.IsKnown || SizeOf(error) > SizeOf(worst))) worst = error;
        }

        return worst;

        static double SizeOf(Estimate e) => Math.Abs(e.Value) + e.Expanded;
    }

    private async Task<List<(Instant At, Standing Standing)>> StandingsAsync(Instant start, Instant end, CancellationToken cancellation)
    {
        string[] kinds = ["standing"];
        var before = await record.EntriesAsync(worker.Partition, new EntryQuery(kinds, probe.Id, default, start, 1), cancellation);
        var during = await record.EntriesAsync(worker.Partition, new EntryQuery(kinds, probe.Id, start, end, MostEntries), cancellation);
        return [.. before.Concat(during).OrderBy(e => e.HappenedAt).Select(e => (e.HappenedAt, ((StandingEntry)e.Body).Standing))];
    }

    private async Task<List<Told>> ToldAsync(Instant start, Instant end, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(worker.Partition, new EntryQuery(["judgement"], probe.Id, start - DayRating.StillTells, end, MostEntries), cancellation);
        var told = rows.Select(r => new Told(r.HappenedAt, ((JudgementEntry)r.Body).Judgement.Bias)).Where(t => t.Error.IsKnown);
        // A service that changed the number says more of it than any test before.
        var services = CalibrationsInForce.Changes(_state.Calibrations, probe.Id, end)
            .Where(c => c.HoldsFrom > start - DayRating.StillTells && (CalibrationsInForce.Corrects(c) || c.Kind == CalibrationKind.PanelAdjustment))
            .Select(c => new Told(c.HoldsFrom, DayRating.ErrorAfterService(probe.Measurand, c.ByBuffers || c.ByCheckSolution)));
        return [.. told.Concat(services).OrderBy(t => t.At)];
    }

    private DateOnly DayOf(Instant at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at.ToDateTimeOffset(), _zone).DateTime);

    private Instant MidnightOf(DateOnly day) => SiteMonth.Midnight(day, _zone);
}
