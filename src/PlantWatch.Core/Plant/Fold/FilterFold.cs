using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Filters: a wash that somebody notes, the pressure that builds up, the time that goes by.</summary>
internal static class FilterFold
{
    // A bed settles for minutes after its wash; half an hour of readings is its clean pressure (common practice).
    private static readonly TimeSpan Settles = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan Taken = TimeSpan.FromMinutes(40);

    // Part of the rise by which the pressure must have come back before the alarm may clear.
    private const double Back = 0.2;

    public static Outcome Wash(Draft draft, FilterWashed said)
    {
        var index = IndexOf(draft, said.FilterId);
        if (index < 0) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "filterId", Reason.Of("filter.unknown", said.FilterId));
        if (string.IsNullOrWhiteSpace(said.By)) return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (said.CubicMetres is not (null or (>= 0 and <= FilterWashed.MostCubicMetres)))
            return Outcome.TurnedDown.Because(TurnedDownKind.Invalid, "cubicMetres", Reason.Of("filter.wash_water_impossible", FilterWashed.MostCubicMetres));
        var filter = draft.Filters[index];
        if (filter.WashId == said.Id) return Outcome.AlreadyDone.Instance;
        BackwashFold.Finish(draft, index, BackwashChange.Washed, said.By, said.At);
        filter = draft.Filters[index];
        var drained = said.CubicMetres ?? draft.Plan.Filters[index].WashCubicMetres;
        draft.Filters = draft.Filters.SetItem(index, filter with { WashId = said.Id, WashedAt = said.At, WashedBy = said.By.Trim(), Sum = 0, FlowSum = 0, FlowCount = 0, Count = 0, WashCubicMetres = drained });
        draft.Write(said.At, said.At, said.FilterId, new FilterEntry(said.Id, said.FilterId, said.By.Trim()) { CubicMetres = drained, IsUsual = said.CubicMetres is null && drained is not null });
        return Outcome.Done.Instance;
    }

    /// <summary>A pressure came in.</summary>
    public static void Look(Draft draft, ProbePlan probe, Instant at, double value)
    {
        var index = IndexOf(draft, probe.FilterId);
        // Without circulation, and while water goes backwards, there is no pressure to speak of: it is neither clean nor dirty.
        if (index < 0 || BackwashFold.IsUnderWay(draft, at) || (draft.Index.Circulation is >= 0 and var flow && CirculationFold.IsLost(draft, flow))) return;
        var plan = draft.Plan.Filters.First(f => f.Id == probe.FilterId);
        Learn(draft, index, plan, at, value);
        if ((draft.Filters[index].CleanKilopascals ?? plan.CleanKilopascals) is not { } clean) return;
        var key = RuleBook.FilterPressureRisen.KeyFor(plan.Id);
        var holds = value - clean >= plan.BackwashRise * (draft.Alarms.IsActive(key) ? 1 - Back : 1);
        if (holds || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.FilterPressureRisen, key, plan.Id, holds, at, () => Reason.Of(plan.Kind == FilterKind.Strainer ? "strainer.pressure_risen" : "filter.pressure_risen", plan.Name, value, value - clean, plan.BackwashRise, Measurand.FilterPressure.Unit()));
    }

    public static void Tick(Draft draft, Instant now)
    {
        BackwashFold.Tick(draft, now);
        foreach (var filter in draft.Filters)
        {
            var plan = draft.Plan.Filters.FirstOrDefault(f => f.Id == filter.Id);
            if (plan?.BackwashEvery is not { } every) continue;
            var (key, since) = (RuleBook.BackwashOverdue.KeyFor(filter.Id), filter.WashedAt.IsSet ? filter.WashedAt : filter.Since);
            var holds = now - since > every;
            if (holds || draft.Alarms.Knows(key))
                draft.Alarms.Look(RuleBook.BackwashOverdue, key, filter.Id, holds, now, () => Reason.Of(Overdue(plan.Kind, filter.WashedAt.IsSet), plan.Name, (now - since).TotalDays, every.TotalDays));
        }
    }

    private static string Overdue(FilterKind kind, bool washed) => kind == FilterKind.Strainer
        ? washed ? "strainer.cleaning_overdue" : "strainer.never_cleaned" : washed ? "filter.wash_overdue" : "filter.never_washed";

    internal static int IndexOf(Draft draft, string? id)
    {
        for (var i = 0; i < draft.Filters.Length; i++)
            if (draft.Filters[i].Id == id) return i;
        return -1;
    }

    // A wash that left half the rise behind has cleaned nothing: what was clean before stays the measure.
    private static void Learn(Draft draft, int index, FilterPlan plan, Instant at, double value)
    {
        var filter = draft.Filters[index];
        if (!filter.WashedAt.IsSet || at - filter.WashedAt < Settles) return;
        if (at - filter.WashedAt < Taken) draft.Filters = draft.Filters.SetItem(index, Beside(filter with { Sum = filter.Sum + value, Count = filter.Count + 1 }, FlowNow(draft, at)));
        else if (filter.Count > 0)
        {
            var (found, before) = (filter.Sum / filter.Count, filter.CleanKilopascals ?? plan.CleanKilopascals);
            var next = filter with { Sum = 0, FlowSum = 0, FlowCount = 0, Count = 0 };
            draft.Filters = draft.Filters.SetItem(index, before is { } known && found > known + (plan.BackwashRise / 2)
                ? next with { CleanKilopascals = before } : next with { CleanKilopascals = found, CleanFlow = filter.FlowCount > 0 ? filter.FlowSum / filter.FlowCount : null });
        }
    }

    private static FilterState Beside(FilterState filter, double? flow) => flow is { } known ? filter with { FlowSum = filter.FlowSum + known, FlowCount = filter.FlowCount + 1 } : filter;

    // What a meter said before it fell silent is no flow of now.
    private static double? FlowNow(Draft draft, Instant at) =>
        draft.Index.Circulation is >= 0 and var flow && draft.Probes[flow].Last is { Quality: not Quality.NotReceived } last && at - last.MeasuredAt <= draft.Index.SilentAfter[flow] ? last.Value : null;
}
