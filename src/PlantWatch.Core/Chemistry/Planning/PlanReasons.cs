using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What has to be said of a plan, as reasons for people.</summary>
internal static class PlanReasons
{
    /// <summary>What is missing, and what that leaves out.</summary>
    public static IEnumerable<Reason> Missing(TestedWater water, IReadOnlyList<Aim> aims)
    {
        var all = new List<Reason>();
        if (water.Ph is null) all.Add(Reason.Of("plan.missing_for_all", PlannedFigure.Ph.Key()));
        if (water.Celsius is null) all.Add(Reason.Of("plan.missing_for_all", "temperature"));
        if (water.Alkalinity is null) all.Add(Reason.Of("plan.missing_for_all", PlannedFigure.TotalAlkalinity.Key()));
        foreach (var aim in aims)
            if (aim.Standing == BandStanding.NotTested && aim.Figure is not (PlannedFigure.Ph or PlannedFigure.TotalAlkalinity or PlannedFigure.SaturationIndex))
                all.Add(Reason.Of("plan.not_tested", aim.Figure.Key()));
        if (!water.HasIndex && aims.Any(a => a.Figure == PlannedFigure.SaturationIndex)) all.Add(Reason.Of("plan.no_index"));
        return all;
    }

    /// <summary>What the tests cannot tell.</summary>
    public static IEnumerable<Reason> InDoubt(IReadOnlyList<Aim> aims) => aims.Where(a => a.Standing == BandStanding.WithinUncertainty)
        .Select(a => Reason.Of("plan.within_uncertainty", a.Figure.Key(), a.Now!.Value.Value, TwoDigits(a.Now.Value.U)));

    /// <summary>An uncertainty as it is written: two digits, whatever its unit (GUM).</summary>
    public static double TwoDigits(double u)
    {
        if (u <= 0) return 0;
        var unit = Math.Pow(10, Math.Floor(Math.Log10(u)) - 1);
        return Math.Round(u / unit) * unit;
    }

    /// <summary>Why a band is missed.</summary>
    public static Reason Missed(Aim aim, bool isLow, bool hasMeans) => (hasMeans, isLow, aim.Figure) switch
    {
        (false, true, _) => Reason.Of("plan.nothing_raises", aim.Figure.Key()),
        (false, false, PlannedFigure.CalciumHardness or PlannedFigure.CyanuricAcid or PlannedFigure.DissolvedSolids) => Reason.Of("plan.only_water_lowers", aim.Figure.Key()),
        (false, false, _) => Reason.Of("plan.nothing_lowers", aim.Figure.Key()),
        (true, true, _) => Reason.Of("plan.not_together_low", aim.Figure.Key()),
        _ => Reason.Of("plan.not_together_high", aim.Figure.Key()),
    };

    /// <summary>What has to be said of one step.</summary>
    public static IEnumerable<Reason> OfStep(CutStep step)
    {
        var all = new List<Reason>();
        switch (step.Means.Kind)
        {
            case MeansKind.Aerate:
                all.Add(Reason.Of("plan.step_aerate", step.After.Ph));
                return all;
            case MeansKind.LetChlorineFall:
                all.Add(Reason.Of("plan.step_wait_for_chlorine", step.After.FreeChlorine));
                return all;
        }

        var adds = step.Means.PerUnit;
        if (step.Means.IsForPh) all.Add(Reason.Of("plan.step_closed_system"));
        if (step.Means.IsForPh && adds.StrongCharge < 0) all.Add(Reason.Of("plan.step_acid_apart"));
        if (adds.Chlorine > 0) all.Add(Reason.Of("plan.step_chlorine_apart"));
        if (adds.Chlorine < 0) all.Add(Reason.Of("plan.step_dechlorinate"));
        if (adds.Cyanurate > 0 && adds.Chlorine == 0) all.Add(Reason.Of("plan.step_stabiliser_slow"));
        if (adds is { Calcium: > 0, Chlorine: 0 }) all.Add(Reason.Of("plan.step_calcium_hot"));
        if (step.After.SaturationIndex - step.Before.SaturationIndex > 0.2) all.Add(Reason.Of("plan.step_may_cloud"));
        return all;
    }
}
