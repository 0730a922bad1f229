using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Tries in turn: products alone; products after the smallest dilution; products for what they can reach.</summary>
internal sealed class PlanMaker(PlanQuestion question, DosingPlan plain)
{
    // Dearer than any dose, cheaper than missing a band.
    private const double DilutionPrice = 1e5;

    private int _calls;

    public DosingPlan Make()
    {
        var now = plain.Now!;
        var full = Search(now, plain.Aims);
        if (full.Find is { Missed.Count: 0 }) return Steps(PlanOutcome.Planned, now, plain.Aims, full, []);
        var missed = full.Find?.Missed ?? [];
        var why = missed.Select(m => PlanReasons.Missed(m.Aim, m.IsLow, Helps(full.Means, m.Aim, m.IsLow))).Distinct().ToImmutableArray();
        if (missed.Count == 0) why = [Reason.Of("plan.no_answer")];
        return AfterDilution(now, why) ?? InPart(now, missed, full.Means, why)
            ?? plain with { Outcome = PlanOutcome.NoPlan, OutOfReach = Figures(missed), Says = [.. why, .. Dilutable(missed), .. plain.Says], SolverCalls = _calls };
    }

    private DosingPlan? AfterDilution(Speciation now, ImmutableArray<Reason> why)
    {
        if (question.Fill is null || Equilibrium.Speciate(question.Fill) is not { IsKnown: true } fill) return null;
        var thinner = new Means(MeansKind.Dilute, null, fill.Value.Composition - now.Composition, 1, DilutionPrice);
        if (Search(now, plain.Aims, thinner) is not { Find: { Missed.Count: 0 } find }) return null;
        var part = Math.Min(0.9, Math.Ceiling((100 * find.Units[^1]) + 0.01) / 100);
        if (Equilibrium.After(now, now.Composition.Mixed(part, fill.Value.Composition)) is not { IsKnown: true } mixed) return null;
        ImmutableArray<Aim> aims = [.. plain.Aims.Select(a => Diluted(a, mixed.Value))];
        var dilution = Dilution.Of(part, question.CubicMetres, mixed.Value);
        ImmutableArray<Reason> says = [.. why, .. DilutionSays(dilution)];
        if (!aims.Any(a => a.AsksForDose))
            return plain with { Outcome = PlanOutcome.PlannedAfterDilution, Dilution = dilution, End = mixed.Value, Cost = 0, Says = [.. says, .. plain.Says], SolverCalls = _calls };
        var then = Search(mixed.Value, aims);
        return then.Find is { Missed.Count: 0 }
            ? Steps(PlanOutcome.PlannedAfterDilution, mixed.Value, aims, then, says) with { Dilution = dilution }
            : null;
    }

    // A figure that was inside may not be diluted out of its band on the plea that a test could not tell.
    private static Aim Diluted(Aim aim, Speciation mixed) => aim.Now is not { } was ? aim
        : Aim.Of(aim.Band, new Tested(PlannedFigures.Of(mixed, aim.Figure), aim.Standing == BandStanding.WithinUncertainty ? was.U : 0)) with { Margin = aim.Margin };

    // What nothing at hand moves is given up, and the rest is planned.
    private DosingPlan? InPart(Speciation now, IReadOnlyList<(Aim Aim, bool IsLow)> missed, Means[] means, ImmutableArray<Reason> why)
    {
        var without = missed.Where(m => !Helps(means, m.Aim, m.IsLow)).Select(m => m.Aim.Figure).ToHashSet();
        if (without.Count == 0) return null;
        // Saturation may be out of reach only because hardness is.
        without.UnionWith(missed.Where(m => m.Aim.Figure == PlannedFigure.SaturationIndex).Select(m => m.Aim.Figure));
        // What is put right before a drain goes out with it: until then pH and disinfectant only.
        var drainFirst = missed.Any(m => !m.IsLow && IsLoweredByWaterOnly(m.Aim.Figure));
        if (drainFirst) without.UnionWith(plain.Aims.Select(a => a.Figure).Where(f => f is not (PlannedFigure.Ph or PlannedFigure.FreeChlorine)));
        ImmutableArray<Aim> aims = [.. plain.Aims.Select(a => without.Contains(a.Figure) ? a with { IsGivenUp = true } : a)];
        ImmutableArray<Reason> says = [.. why, .. drainFirst ? [Reason.Of("plan.rest_after_dilution")] : ImmutableArray<Reason>.Empty, .. Dilutable(missed)];
        if (Search(now, aims) is not { Find: { Missed.Count: 0 } find } rest || !find.Units.Any(u => u > 1e-6)) return null;
        return Steps(PlanOutcome.PlannedInPart, now, aims, rest, says) with { OutOfReach = [.. without.Where(f => plain.Aims.Any(a => a.Figure == f && a.AsksForDose)).Order()] };
    }

    private Searched Search(Speciation from, ImmutableArray<Aim> aims, Means? also = null)
    {
        var (means, byMass) = MeansAtHand.Of(question.Products, aims);
        if (also is not null) means = [.. means, also];
        var model = new WaterModel(from);
        var find = new PlanSearch(model, from.Composition, means, aims).Find();
        _calls += model.Calls;
        return new(find, means, byMass);
    }

    private DosingPlan Steps(PlanOutcome outcome, Speciation from, ImmutableArray<Aim> aims, Searched searched, ImmutableArray<Reason> says)
    {
        var choice = new PlanChoice(from, aims, question).Among(searched);
        _calls += choice.Calls;
        var (find, means) = (choice.Found.Find!, choice.Found.Means);
        var cost = means.Select((m, j) => find.Units[j] * m.KilogramsPerUnit * 1000 * question.CubicMetres * (searched.ByMass ? 1 : m.Product?.CostPerKilogram ?? 0)).Sum();
        var plan = plain with
        {
            Outcome = outcome, End = find.Water, Cost = cost, CostIsMass = searched.ByMass, SolverCalls = _calls,
            Says = [.. says, .. choice.Says, .. Margins(aims, find.Water), .. plain.Says],
        };
        return choice.Cut is null
            ? plan with { Outcome = PlanOutcome.NoSafeOrder, Says = [Reason.Of("plan.no_safe_order"), .. plan.Says] }
            : IsOnlyTheStart(choice.Cut, means, find.Units)
                ? plan with { IsOnlyTheStart = true, Steps = [.. choice.Cut.Select((step, i) => Step(choice.Cut, i))], Says = [Reason.Of("plan.only_the_start", choice.Cut.Count), .. plan.Says] }
                : plan with { Steps = [.. choice.Cut.Select((step, i) => Step(choice.Cut, i))] };
    }

    private static bool IsOnlyTheStart(IReadOnlyList<CutStep> cut, Means[] means, double[] units) =>
        cut.Count >= StepCutter.MostSteps && means.Where((m, j) => cut.Where(s => s.Means == m).Sum(s => s.Units) < units[j] - StepCutter.Least).Any();

    private PlanStep Step(IReadOnlyList<CutStep> cut, int at)
    {
        var step = cut[at];
        return new(
            step.Means.Kind, step.Means.Product, step.Units * step.Means.KilogramsPerUnit * 1000 * question.CubicMetres,
            cut.Take(at + 1).Count(s => s.Means == step.Means), cut.Count(s => s.Means == step.Means), step.Before, step.After,
            step.Means.Kind == MeansKind.Dose && question.TurnoverHours is { } hours ? MixingTime.ToRetest(hours).OrNull : null, [.. PlanReasons.OfStep(step)]);
    }

    private static List<Reason> Margins(ImmutableArray<Aim> aims, Speciation end)
    {
        var all = new List<Reason>();
        foreach (var aim in aims.Where(a => a is { AsksForDose: true, IsGivenUp: false, Now.U: > 0 }))
        {
            var value = PlannedFigures.Of(end, aim.Figure);
            var margin = Math.Min(value - (aim.Band.Low ?? double.NegativeInfinity), (aim.Band.High ?? double.PositiveInfinity) - value);
            if (margin < aim.Now!.Value.U - PlannedFigures.Tolerance(aim.Figure)) all.Add(Reason.Of("plan.margin_small", aim.Figure.Key(), PlanReasons.TwoDigits(Math.Max(0, margin)), PlanReasons.TwoDigits(aim.Now.Value.U)));
        }
        return all;
    }

    private List<Reason> Dilutable(IReadOnlyList<(Aim Aim, bool IsLow)> missed)
    {
        var all = new List<Reason>();
        if (question.Fill is null && missed.Any(m => !m.IsLow)) all.Add(Reason.Of("plan.fill_not_known"));
        else if (question.Fill is not null) all.Add(Reason.Of("plan.dilution_does_not_help"));
        // Tap water holds no cyanurate: that part is known whatever else is in it.
        foreach (var (aim, _) in missed.Where(m => m is { IsLow: false, Aim.Figure: PlannedFigure.CyanuricAcid }))
            if (WaterReplacement.BatchPart(aim.Now!.Value.Value, aim.Band.High!.Value, 0) is { IsKnown: true } part)
                all.Add(Reason.Of("plan.cyanurate_dilution", 100 * part.Value, part.Value * question.CubicMetres));
        return all;
    }

    private static List<Reason> DilutionSays(Dilution dilution)
    {
        var all = new List<Reason>();
        all.Add(Reason.Of("drain.caution"));
        if (dilution.Drains > 1) all.Add(Reason.Of("plan.drains", dilution.Drains));
        all.Add(Reason.Of("drain.retest_all"));
        return all;
    }

    private static bool Helps(Means[] means, Aim aim, bool isLow) => means.Any(m => aim.Figure switch
    {
        PlannedFigure.Ph => isLow ? m.PerUnit.StrongCharge - (m.PerUnit.Carbon / 2) > 1e-6 : m.PerUnit.Carbon - m.PerUnit.StrongCharge > 1e-6 && m.Turn == 2,
        PlannedFigure.SaturationIndex => isLow ? m.PerUnit.Calcium > 0 || m.PerUnit.StrongCharge > 1e-6 : m.PerUnit.StrongCharge < -1e-6 || m.PerUnit.Carbon > m.PerUnit.StrongCharge + 1e-6,
        _ => PlannedFigures.Of(m.PerUnit, aim.Figure) * (isLow ? 1 : -1) > 1e-6 * PlannedFigures.Step(aim.Figure),
    });

    private static bool IsLoweredByWaterOnly(PlannedFigure figure) => figure is PlannedFigure.CalciumHardness or PlannedFigure.CyanuricAcid or PlannedFigure.DissolvedSolids;

    private static ImmutableArray<PlannedFigure> Figures(IReadOnlyList<(Aim Aim, bool IsLow)> missed) => [.. missed.Select(m => m.Aim.Figure).Distinct()];
}
