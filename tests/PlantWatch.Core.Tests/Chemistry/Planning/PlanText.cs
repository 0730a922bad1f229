using System.Globalization;
using System.Text;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Chemistry.Planning;

/// <summary>A plan as text, so that a person of the trade can read what is expected.</summary>
internal static class PlanText
{
    public static string Of(DosingPlan plan)
    {
        var text = new StringBuilder();
        text.AppendLine(CultureInfo.InvariantCulture, $"{plan.Outcome}{(plan.Cost is { } cost ? string.Create(CultureInfo.InvariantCulture, $", {cost:0.00}{(plan.CostIsMass ? " kg" : "")}") : "")}");
        if (plan.Now is { } now) text.AppendLine("now    " + Water(now));
        if (plan.Dilution is { } d) text.AppendLine(CultureInfo.InvariantCulture, $"dilute {100 * d.Part:0} %, {d.CubicMetres:0} m3 or {d.OverflowCubicMetres:0} m3 by overflow, {d.Drains} drains\n    -> {Water(d.After!)}");
        foreach (var s in plan.Steps)
            text.AppendLine(CultureInfo.InvariantCulture, $"{(s.Product is { } p ? $"{p.Plan.Name} {s.Kilograms:0.00} kg" : s.Kind)} ({s.Part}/{s.Parts}), wait {s.WaitHours:0.#} h{Codes(s.Says)}\n    -> {Water(s.After)}");
        foreach (var reason in plan.Says) text.AppendLine("! " + reason.Code + " " + string.Join(", ", reason.Facts.Select(f => f.Text ?? f.Number?.ToString("0.##", CultureInfo.InvariantCulture))));
        return text.ToString().ReplaceLineEndings("\n");
    }

    private static string Water(Speciation w) => string.Create(CultureInfo.InvariantCulture,
        $"pH {w.Ph:0.00} TA {w.TotalAlkalinity:0} CH {w.CalciumHardness:0} FC {w.FreeChlorine:0.0} CYA {w.Cyanurate:0} TDS {w.DissolvedSolids:0} SI {w.SaturationIndex:+0.00;-0.00}");

    private static string Codes(IEnumerable<Reason> reasons) => string.Concat(reasons.Select(r => " [" + r.Code.Replace("plan.", "", StringComparison.Ordinal) + "]"));
}
