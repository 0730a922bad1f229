using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Laboratory results, their limits and what is due, in words.</summary>
internal static class LabViews
{
    public static IEnumerable<LabPoolView> Pools(CircuitState state, Wording words)
    {
        foreach (var (plan, pool) in state.Plan.Pools.Zip(state.Pools))
        {
            var limits = Organisms.All.Select(o => LabLimits.Of(plan, pool.Limits, o)).OfType<LabLimit>().Select(l => new LabLimitView(l.Organism, Name(l.Organism, words), l.High, l.Organism.BasisMillilitres(), l.Source));
            yield return new(
                plan.Id, plan.Name, [.. limits], plan.Laboratory.Every?.TotalDays,
                LabDue.Sample(plan.Laboratory, pool.SamplesExpectedSince, pool.LastLabSampleAt).OrNull(), LabDue.Resample(plan.Laboratory, pool.Laboratory).OrNull());
        }
    }

    public static IEnumerable<LabResultView> Results(CircuitState state, IReadOnlyList<RecordEntry> rows, IReadOnlyList<RecordEntry> closings, Wording words)
    {
        var closed = closings.Where(c => c.Body is LabClosedEntry).GroupBy(c => ((LabClosedEntry)c.Body).ResultId).ToDictionary(g => g.Key, g => g.First());
        var corrections = rows.Select(r => r.Body).OfType<LabResultEntry>().Where(e => e.Result.Corrects is not null).GroupBy(e => e.Result.Corrects!.Value).ToDictionary(g => g.Key, g => g.First().Result.Id);
        foreach (var entry in rows.Select(r => r.Body).OfType<LabResultEntry>())
        {
            var closing = closed.GetValueOrDefault(entry.Result.Id);
            yield return Of(state, entry, words) with
            {
                ClosedBy = (closing?.Body as LabClosedEntry)?.By, ClosedWhy = (closing?.Body as LabClosedEntry)?.Why, ClosedAt = closing?.At,
                CorrectedBy = corrections.TryGetValue(entry.Result.Id, out var by) ? by : null,
            };
        }
    }

    private static LabResultView Of(CircuitState state, LabResultEntry entry, Wording words)
    {
        var r = entry.Result;
        LabCountView[] counts = [.. r.Counts.Select(c => Count(state, r, c, words))];
        var water = entry.Water.Select(w => new LabWaterView(w.Measurand, words.Find($"name.{w.Measurand.Key()}"), w.Measurand.Unit(), w.Value, w.At, w.ProbeId));
        return new(r.Id, r.PoolId, r.Point, r.Place, r.SampledAt, r.ReportedAt, entry.ArrivedAt, r.Laboratory, r.SampleNumber, r.By, r.Note, counts, [.. water], counts.Any(c => c.Open), null, null, null, null);
    }

    // A pool that left the plant has no limits any more, and its results stay.
    private static LabCountView Count(CircuitState state, LabResult result, LabCount count, Wording words)
    {
        var (plan, pool) = state.Plan.Pools.Zip(state.Pools).FirstOrDefault(p => p.First.Id == result.PoolId);
        var limit = plan is null ? null : LabLimits.Of(plan, pool.Limits, count.Organism);
        var open = pool?.Laboratory.Any(s => s.Organism == count.Organism && s.Outside?.ResultId == result.Id) ?? false;
        return new(
            count.Organism, Name(count.Organism, words), count.Count, count.Sense, count.Millilitres, count.PerBasis, count.Organism.BasisMillilitres(), limit?.High,
            limit?.Of(count) ?? LabVerdict.NoLimit, open);
    }

    private static string Name(Organism organism, Wording words) => words.Find($"name.{organism.Key()}");
}
