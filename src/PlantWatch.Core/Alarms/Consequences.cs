using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms;

/// <summary>One row of the table: an alarm of the one rule has alarms of the other as its consequence, where their subjects hang together so.</summary>
/// <param name="Cause">Number of the rule of the cause.</param>
/// <param name="Consequence">Number of the rule of the consequence.</param>
/// <param name="Bond">How the subjects hang together.</param>
/// <param name="Only">Only where the code of the consequence's reason holds this word, such as <c>above</c>; null always.</param>
public sealed record CauseLink(string Cause, string Consequence, Bond Bond, string? Only = null);

/// <summary>Which alarm is the consequence of which: one cause, one alarm, and what follows from it stands under it.</summary>
public static class Consequences
{
    /// <summary>The table. No rule is, over any way through it, a cause of itself; a test holds that.</summary>
    public static ImmutableArray<CauseLink> Table { get; } =
    [
        // Too much disinfectant is what the treatment of an incident makes. Too little is a fault of its own.
        .. Of(RuleBook.IncidentOpen, Bond.InPool, "above", RuleBook.StopFreeChlorine, RuleBook.TestOutsideStop, RuleBook.OutsideClosure, RuleBook.TestOutsideClosure, RuleBook.AboveLimit, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.TestOutsideStop, Bond.Same, null, RuleBook.TestOutsideClosure, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.TestOutsideClosure, Bond.Same, null, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.TestOutsideClosure, Bond.TestedBy, null, RuleBook.BelowLimit, RuleBook.AboveLimit),
        .. Of(RuleBook.OutsideClosure, Bond.Same, null, RuleBook.BelowLimit, RuleBook.AboveLimit),
        .. Of(RuleBook.OutsideClosure, Bond.TestOf, null, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.TestOutsideStop, Bond.TestedBy, null, RuleBook.BelowLimit, RuleBook.AboveLimit),
        .. Of(RuleBook.StopPh, Bond.Same, null, RuleBook.OutsideClosure, RuleBook.BelowLimit, RuleBook.AboveLimit),
        .. Of(RuleBook.StopPh, Bond.TestOf, null, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.StopFreeChlorine, Bond.Same, null, RuleBook.OutsideClosure, RuleBook.BelowLimit, RuleBook.AboveLimit),
        .. Of(RuleBook.StopFreeChlorine, Bond.TestOf, null, RuleBook.TestOutsideLimit),
        .. Of(RuleBook.StopTemperature, Bond.Same, null, RuleBook.OutsideClosure, RuleBook.AboveLimit),
        // Where it went is said; that it is on its way there no longer helps anybody.
        .. Of(RuleBook.BelowLimit, Bond.Same, null, RuleBook.ChangesTooFast, RuleBook.HeadsForLimit),
        .. Of(RuleBook.AboveLimit, Bond.Same, null, RuleBook.ChangesTooFast, RuleBook.HeadsForLimit),
        .. Of(RuleBook.ChangesTooFast, Bond.Same, null, RuleBook.HeadsForLimit),
        .. Of(RuleBook.NoSampleFlow, Bond.InCell, null, RuleBook.Silent, RuleBook.ProbeNotTrusted, RuleBook.ClockDoubted, RuleBook.BelowLimit, RuleBook.AboveLimit, RuleBook.ChangesTooFast, RuleBook.HeadsForLimit),
        .. Of(RuleBook.NoSampleFlow, Bond.CellTestOf, null, RuleBook.TestWanted),
        .. Of(RuleBook.Silent, Bond.Same, null, RuleBook.ClockDoubted),
        .. Of(RuleBook.Silent, Bond.FollowedBy, null, RuleBook.PumpsFollowWrongValue),
        .. Of(RuleBook.Silent, Bond.TestOf, null, RuleBook.TestWanted),
        .. Of(RuleBook.ProbeNotTrusted, Bond.FollowedBy, null, RuleBook.PumpsFollowWrongValue),
        .. Of(RuleBook.ProbeNotTrusted, Bond.TestOf, null, RuleBook.TestWanted),
        .. Of(RuleBook.RepeatTest, Bond.Same, null, RuleBook.TestWanted),
        .. Of(RuleBook.PumpFault, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.PumpFault, Bond.Lowers, null, RuleBook.AboveLimit),
        .. Of(RuleBook.TankLow, Bond.Same, null, RuleBook.PumpFault),
        .. Of(RuleBook.TankLow, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.TankLow, Bond.Lowers, null, RuleBook.AboveLimit),
    ];

    /// <summary>Key of the alarm from which everything came that led to this one; null when it stands for itself.</summary>
    /// <remarks>Of several causes the more severe one counts, and of equals the one that came first.</remarks>
    public static string? RootOf(AlarmRecord alarm, IReadOnlyList<AlarmRecord> live, CircuitPlan plan)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        ArgumentNullException.ThrowIfNull(live);
        string? root = null;
        for (var cause = CauseOf(alarm, live, plan); cause is not null; cause = CauseOf(cause, live, plan)) root = cause.Key;
        return root;
    }

    private static AlarmRecord? CauseOf(AlarmRecord alarm, IReadOnlyList<AlarmRecord> live, CircuitPlan plan)
    {
        AlarmRecord? best = null;
        foreach (var other in live)
            if (other.Active && IsCause(other, alarm, plan) && (best is null || ComesBefore(other, best))) best = other;
        return best;
    }

    private static bool IsCause(AlarmRecord cause, AlarmRecord alarm, CircuitPlan plan)
    {
        foreach (var link in Table)
            if (link.Cause == cause.Rule && link.Consequence == alarm.Rule && Fits(link, alarm) && Bonds.Hold(plan, link.Bond, cause.Subject, alarm.Subject)) return true;
        return false;
    }

    private static bool Fits(CauseLink link, AlarmRecord alarm) => link.Only is not { } word || alarm.Cause.Code.Contains(word, StringComparison.Ordinal);

    private static bool ComesBefore(AlarmRecord a, AlarmRecord b) => a.Priority != b.Priority ? a.Priority > b.Priority : a.Order < b.Order;

    private static IEnumerable<CauseLink> Of(Rule cause, Bond bond, string? only, params Rule[] consequences) =>
        consequences.Select(c => new CauseLink(cause.Number, c.Number, bond, only));
}
