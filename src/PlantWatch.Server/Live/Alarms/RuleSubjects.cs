using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Server.Live;

/// <summary>What a rule can be about in a circuit: what a person may pick when a rule is taken out of service.</summary>
internal static class RuleSubjects
{
    private static readonly string[] OfPools = [RuleBook.OutOfBalance.Number, RuleBook.CheckOverdue.Number, RuleBook.LaboratorySampleOverdue.Number, RuleBook.ResampleOverdue.Number];

    private static readonly string[] OfPumps =
    [
        RuleBook.PumpFault.Number, RuleBook.TankLow.Number, RuleBook.PumpsFollowWrongValue.Number, RuleBook.DosesWithoutFlow.Number,
        RuleBook.NothingArrives.Number, RuleBook.ComesUnasked.Number, RuleBook.DosesTooMuch.Number, RuleBook.DoesTooLittle.Number, RuleBook.TankFilledByNobody.Number,
    ];

    private static readonly string[] OfTests = [RuleBook.TestOutsideLimit.Number, RuleBook.RepeatTest.Number, RuleBook.TestWanted.Number, RuleBook.ExceptionOverdue.Number];

    private static readonly string[] OfValues = [RuleBook.BelowLimit.Number, RuleBook.AboveLimit.Number, RuleBook.ChangesTooFast.Number, RuleBook.HeadsForLimit.Number];

    private static readonly string[] OfProbes = [RuleBook.Silent.Number, RuleBook.ProbeNotTrusted.Number, RuleBook.ClockDoubted.Number];

    /// <summary>Keys of what the rule can be about, in the order of the plan.</summary>
    public static IEnumerable<string> Of(CircuitPlan plan, Rule rule) => Candidates(plan, rule).Where(s => Watched.Is(plan, rule.Number, s));

    private static IEnumerable<string> Candidates(CircuitPlan plan, Rule rule) => rule.Number switch
    {
        var n when OfPools.Contains(n) => plan.Pools.Select(p => p.Id),
        var n when OfPumps.Contains(n) => plan.Pumps.Select(p => p.Id),
        var n when OfTests.Contains(n) => plan.Pools.SelectMany(p => Tested(p).Select(m => $"{p.Id}/{m.Key()}")),
        var n when OfValues.Contains(n) => plan.Probes.Where(p => IsWater(p.Measurand)).Select(p => p.Id),
        var n when OfProbes.Contains(n) => plan.Probes.Select(p => p.Id),
        var n when n == RuleBook.NoSampleFlow.Number => Measuring(plan, Measurand.SampleFlow),
        var n when n == RuleBook.CirculationLow.Number || n == RuleBook.TurnoverShort.Number => Measuring(plan, Measurand.CirculationFlow),
        var n when n == RuleBook.CombinedPart.Number => plan.Pools.SelectMany(p => new[] { $"{p.Id}/combined_per_free", $"{p.Id}/combined_per_total" }),
        var n when n == RuleBook.LaboratoryOutside.Number => plan.Pools.SelectMany(p => Enum.GetValues<Organism>().Where(o => o != default).Select(o => $"{p.Id}/{o.Key()}")),
        var n when n == RuleBook.FilterPressureRisen.Number || n == RuleBook.BackwashOverdue.Number => plan.Filters.Select(f => f.Id),
        var n when n == RuleBook.ReagentOutOfDate.Number => plan.Reagents.Select(r => r.Id),
        var n when n == RuleBook.StockRunsOut.Number => plan.Products.Select(p => p.Id),
        var n when n == RuleBook.ChannelFails.Number => plan.Telling.Channels.Select(c => c.Id),
        _ => [],
    };

    private static IEnumerable<string> Measuring(CircuitPlan plan, Measurand what) => plan.Probes.Where(p => p.Measurand == what).Select(p => p.Id);

    private static bool IsWater(Measurand measurand) => measurand is not (Measurand.SampleFlow or Measurand.CirculationFlow or Measurand.FilterPressure);

    // What has a limit or a duty, and what a doubt may ask for.
    private static IEnumerable<Measurand> Tested(PoolPlan pool) =>
        pool.Limits.Select(l => l.Measurand).Concat(pool.Duties.SelectMany(d => d.What)).Concat([Measurand.Ph, Measurand.FreeChlorine]).Distinct().Order();
}
