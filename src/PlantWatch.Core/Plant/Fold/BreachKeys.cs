using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Which line an alarm belongs to: pool and quantity, as the subjects of tests are written.</summary>
internal static class BreachKeys
{
    /// <summary>The quantity of a pool whose bottom cannot be seen.</summary>
    public const string Bottom = "bottom";

    private static readonly string Orp = Measurand.Orp.Key();

    /// <summary>The key of an alarm's line; null for what is about no quantity of a pool.</summary>
    public static string? Of(Draft draft, AlarmRecord alarm)
    {
        if (alarm.Rule == RuleBook.StopBottom.Number) return $"{alarm.Subject}/{Bottom}";
        if (alarm.Subject.Contains('/', StringComparison.Ordinal)) return alarm.Subject;
        return (BreachRules.IsLiveLimit(alarm.Rule) || BreachRules.IsLiveStop(alarm.Rule)) && draft.Index.Probe(alarm.Subject) is >= 0 and var probe ? OfProbe(draft, probe) : null;
    }

    /// <summary>Its pool, or the circuit, is in the plan.</summary>
    public static bool IsHere(Draft draft, string key) => key[..key.LastIndexOf('/')] is var pool && (pool == draft.Plan.Id || draft.Index.Pool(pool) >= 0);

    /// <summary>An alarm stands that keeps a line open: all of its key, but for what a probe says of an operating limit where a test can outweigh it.</summary>
    public static bool IsHeldOpen(Draft draft, ExceptionLine line) => Stands(draft, line.Key, alarm => !BreachRules.IsLiveLimit(alarm.Rule) || line.Quantity == Orp);

    /// <summary>An alarm of the water stands for the key.</summary>
    public static bool Stands(Draft draft, string key, Func<AlarmRecord, bool> which)
    {
        foreach (var alarm in draft.Alarms.All)
            if (alarm.Active && BreachRules.GradeOf(alarm.Rule) != BreachGrade.Unknown && which(alarm) && Of(draft, alarm) == key) return true;
        return false;
    }

    /// <summary>The lines of others that a test answers too: the circuit's own for a probe that sees all its pools, and ORP, which nobody tests by hand, by free chlorine.</summary>
    public static string[] AnsweredBy(Draft draft, string key)
    {
        var slash = key.LastIndexOf('/');
        var (pool, quantity) = (key[..slash], key[(slash + 1)..]);
        return quantity == Measurand.FreeChlorine.Key() ? [$"{draft.Plan.Id}/{quantity}", $"{pool}/{Orp}", $"{draft.Plan.Id}/{Orp}"] : [$"{draft.Plan.Id}/{quantity}"];
    }

    private static string OfProbe(Draft draft, int probe)
    {
        var pool = draft.Index.PoolOf[probe];
        if (pool < 0 && draft.Plan.Pools.Length == 1) pool = 0;
        return $"{(pool < 0 ? draft.Plan.Id : draft.Plan.Pools[pool].Id)}/{draft.Plan.Probes[probe].Measurand.Key()}";
    }
}
