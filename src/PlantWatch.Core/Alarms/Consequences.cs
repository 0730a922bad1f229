using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms;

/// <summary>One row of the table: an alarm of the one rule has alarms of the other as its consequence, where their subjects hang together so.</summary>
/// <param name="Cause">Number of the rule of the cause.</param>
/// <param name="Consequence">Number of the rule of the consequence.</param>
/// <param name="Bond">How the subjects hang together.</param>
/// <param name="Only">Only where the code of the consequence's reason holds this word, such as <c>above</c>; null always.</param>
public sealed record CauseLink(string Cause, string Consequence, Bond Bond, string? Only = null)
{
    /// <summary>Only where the code of the cause's reason holds this word; null always.</summary>
    public string? When { get; init; }

    /// <summary>How long before its cause the consequence may have been raised, as delays differ; what stood longer is a fault of its own. Null where the order tells nothing.</summary>
    public TimeSpan? AtMostBefore { get; init; }

    /// <summary>Whether the figures of the cause account for those of the consequence; null where there is nothing to work out.</summary>
    public Func<Reason, Reason, bool>? Explains { get; init; }

    /// <summary>True when the row speaks of these two alarms, their subjects apart.</summary>
    public bool Fits(AlarmRecord cause, AlarmRecord consequence)
    {
        ArgumentNullException.ThrowIfNull(cause);
        ArgumentNullException.ThrowIfNull(consequence);
        return cause.Rule == Cause && consequence.Rule == Consequence && Holds(cause.Cause, When) && Holds(consequence.Cause, Only)
            && !(AtMostBefore is { } before && consequence.RaisedAt + before < cause.RaisedAt) && (Explains is not { } explains || explains(cause.Cause, consequence.Cause));
    }

    private static bool Holds(Reason reason, string? word) => word is null || reason.Code.Contains(word, StringComparison.Ordinal);
}

/// <summary>Which alarm is the consequence of which: one cause, one alarm, and what follows from it stands under it.</summary>
public static class Consequences
{
    private const string Lost = "lost";

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
        // Both ask for the same test.
        .. Of(RuleBook.TestWanted, Bond.Same, null, RuleBook.ExceptionOverdue),
        .. Of(RuleBook.PumpFault, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.PumpFault, Bond.Lowers, null, RuleBook.AboveLimit),
        .. Of(RuleBook.TankLow, Bond.Same, null, RuleBook.PumpFault),
        // What does not arrive is missed where it should be found, and what comes unasked is found there.
        .. Of(RuleBook.NothingArrives, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.NothingArrives, Bond.Lowers, null, RuleBook.AboveLimit),
        .. Of(RuleBook.NothingArrives, Bond.Raises, "heads_low", RuleBook.HeadsForLimit),
        .. Of(RuleBook.NothingArrives, Bond.Lowers, "heads_high", RuleBook.HeadsForLimit),
        .. Of(RuleBook.NothingArrives, Bond.Same, null, RuleBook.DoesTooLittle),
        .. Of(RuleBook.DoesTooLittle, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.DoesTooLittle, Bond.Lowers, null, RuleBook.AboveLimit),
        .. Of(RuleBook.ComesUnasked, Bond.Raises, null, RuleBook.AboveLimit),
        .. Of(RuleBook.ComesUnasked, Bond.Lowers, null, RuleBook.BelowLimit),
        .. Of(RuleBook.ComesUnasked, Bond.Raises, "heads_high", RuleBook.HeadsForLimit),
        .. Of(RuleBook.ComesUnasked, Bond.Lowers, "heads_low", RuleBook.HeadsForLimit),
        .. Of(RuleBook.DosesTooMuch, Bond.Raises, null, RuleBook.AboveLimit),
        .. Of(RuleBook.DosesTooMuch, Bond.Lowers, null, RuleBook.BelowLimit),
        // Acid that comes from the chlorine pump, and chlorine from that of acid: each alone looks like a pump that brings nothing, or too much.
        .. Of(RuleBook.ProductsSwapped, Bond.InCircuit, null, RuleBook.NothingArrives, RuleBook.ComesUnasked, RuleBook.DoesTooLittle),
        // A pump that says it is out of order or follows a number that is wrong has said it.
        .. Of(RuleBook.PumpFault, Bond.Same, null, RuleBook.NothingArrives, RuleBook.DoesTooLittle),
        .. Of(RuleBook.PumpsFollowWrongValue, Bond.Same, null, RuleBook.NothingArrives, RuleBook.ComesUnasked, RuleBook.DoesTooLittle),
        .. Of(RuleBook.TankLow, Bond.Raises, null, RuleBook.BelowLimit),
        .. Of(RuleBook.TankLow, Bond.Lowers, null, RuleBook.AboveLimit),
        // Sample lines are fed by the circulation. Its alarm takes 45 seconds longer than that of the cell; a cell that stood before is a fault of its own.
        new(RuleBook.CirculationLow.Number, RuleBook.NoSampleFlow.Number, Bond.InCircuit) { When = Lost, AtMostBefore = TimeSpan.FromMinutes(2) },
        // Without circulation no dosing reaches the pools: what it raises falls from then on, and what it lowers rises. What was outside before has another cause.
        new(RuleBook.CirculationLow.Number, RuleBook.BelowLimit.Number, Bond.RaisedByDosing) { When = Lost, AtMostBefore = TimeSpan.Zero },
        new(RuleBook.CirculationLow.Number, RuleBook.AboveLimit.Number, Bond.LoweredByDosing) { When = Lost, AtMostBefore = TimeSpan.Zero },
        new(RuleBook.CirculationLow.Number, RuleBook.HeadsForLimit.Number, Bond.RaisedByDosing, "heads_low") { When = Lost, AtMostBefore = TimeSpan.Zero },
        new(RuleBook.CirculationLow.Number, RuleBook.HeadsForLimit.Number, Bond.LoweredByDosing, "heads_high") { When = Lost, AtMostBefore = TimeSpan.Zero },
        // A full filter lets less water through. A failing pump would lower the pressure across it, and a full filter lets some water through.
        new(RuleBook.FilterPressureRisen.Number, RuleBook.CirculationLow.Number, Bond.InCircuit, "circulation.low"),
        new(RuleBook.FilterPressureRisen.Number, RuleBook.TurnoverShort.Number, Bond.InCircuit),
        // A unit of pH is a unit of the index: beyond a stop any water is out of balance on that side.
        new(RuleBook.TestOutsideStop.Number, RuleBook.OutOfBalance.Number, Bond.BalanceOf, "aggressive") { When = "below" },
        new(RuleBook.TestOutsideStop.Number, RuleBook.OutOfBalance.Number, Bond.BalanceOf, "scaling") { When = "above" },
        .. Of(RuleBook.TestOutsideStop, Bond.PartOf, null, RuleBook.CombinedPart).Concat(Of(RuleBook.TestOutsideClosure, Bond.PartOf, null, RuleBook.CombinedPart))
            .Concat(Of(RuleBook.TestOutsideLimit, Bond.PartOf, null, RuleBook.CombinedPart)).Select(link => link with { Explains = CombinedShare.IsExplained }),
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
            if (link.Fits(cause, alarm) && Bonds.Hold(plan, link.Bond, cause.Subject, alarm.Subject)) return true;
        return false;
    }

    private static bool ComesBefore(AlarmRecord a, AlarmRecord b) => a.Priority != b.Priority ? a.Priority > b.Priority : a.Order < b.Order;

    private static IEnumerable<CauseLink> Of(Rule cause, Bond bond, string? only, params Rule[] consequences) =>
        consequences.Select(c => new CauseLink(cause.Number, c.Number, bond, only));
}
