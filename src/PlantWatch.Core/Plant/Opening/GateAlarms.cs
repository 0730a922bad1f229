using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>The alarms that keep a pool closed: whether they are shown to anybody, shelved, suppressed or still waiting makes no difference.</summary>
internal static class GateAlarms
{
    private static readonly Rule[] Critical =
        [RuleBook.StopPh, RuleBook.StopFreeChlorine, RuleBook.StopTemperature, RuleBook.StopBottom, RuleBook.TestOutsideStop, RuleBook.OutsideClosure, RuleBook.TestOutsideClosure,
         RuleBook.DosesWithoutFlow, RuleBook.RestartedUnsafe];

    private static readonly Rule[] Holding = [.. Critical, RuleBook.BelowLimit, RuleBook.AboveLimit, RuleBook.TestOutsideLimit, RuleBook.CombinedPart];

    public static IEnumerable<GateLine> Lines(CircuitState state, string pool)
    {
        AlarmRecord[] holding = [.. On(state.Plan, state.Alarms.Values, pool, Holding)];
        return holding.Length == 0
            ? [new("alarms", GateWord.Passed, Reason.Of("gate.no_alarm"))]
            : holding.Select(alarm => new GateLine($"alarm.{alarm.Key}", GateWord.NotPassed, alarm.Cause));
    }

    public static IEnumerable<GateLine> Laboratory(CircuitState state, string pool)
    {
        AlarmRecord[] outside = [.. On(state.Plan, state.Alarms.Values, pool, [RuleBook.LaboratoryOutside])];
        return outside.Length == 0
            ? [new("laboratory", GateWord.Passed, Reason.Of("gate.laboratory_clear"))]
            : outside.Select(alarm => new GateLine($"alarm.{alarm.Key}", GateWord.NotPassed, alarm.Cause));
    }

    public static bool AnyCritical(CircuitPlan plan, IEnumerable<AlarmRecord> alarms, string pool) => On(plan, alarms, pool, Critical).Any();

    // Pending towards raise it may be an alarm in a moment, and a latch is held until a person has looked.
    private static IEnumerable<AlarmRecord> On(CircuitPlan plan, IEnumerable<AlarmRecord> alarms, string pool, Rule[] rules) =>
        alarms.Where(a => (a.Active || a.LatchHeld || a.PendingSince.IsSet) && rules.Any(r => r.Number == a.Rule) && Concerns(plan, a.Subject, pool));

    private static bool Concerns(CircuitPlan plan, string subject, string pool)
    {
        if (plan.Probes.FirstOrDefault(p => p.Id == subject) is { } probe) return probe.PoolId is null || probe.PoolId == pool;
        if (plan.Pumps.FirstOrDefault(p => p.Id == subject) is { } pump) return pump.PoolId is null || pump.PoolId == pool;
        return subject == pool || subject == plan.Id || subject.StartsWith(pool + "/", StringComparison.Ordinal);
    }
}
