using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>What the look of the cell and the rest of the water say against a result.</summary>
internal sealed partial class UnlikelyChecks
{
    private void Seen(TestResult result, int i)
    {
        if (result.Look == CellLook.Cloudy) Remark($"results[{i}].look", Reason.Of("check.cloudy_cell"));
        switch (result.Measurand)
        {
            case Measurand.FreeChlorine or Measurand.TotalChlorine when MethodRange.UsesDpd(result.Method): ByDpd(result, i); break;
            case Measurand.Ph when MethodRange.UsesPhenolRed(result.Method): ByPhenolRed(result, i); break;
            default: break;
        }
    }

    private void ByDpd(TestResult result, int i)
    {
        if (result.Look == CellLook.PinkFlash) Doubt(result, i, Reason.Of("check.flash_of_pink"));
        if (result.Measurand == Measurand.FreeChlorine && CombinedOfCheck.TryOf(check, out var combined)
            && combined.IsKnown && combined.Value.MilligramsPerLitre >= Dpd.MuchMonochloramine)
            Remark($"results[{i}].value", Reason.Of("check.monochloramine_reads_as_free", Dpd.MonochloramineAsFree * combined.Value.MilligramsPerLitre));
    }

    // Purple is read as a high pH; the chlorine that makes it may itself be bleached, so the look counts as much as the number.
    private void ByPhenolRed(TestResult result, int i)
    {
        if (result.Look == CellLook.Purple) Doubt(result, i, Reason.Of("check.phenol_red_purple", PhenolRed.PurpleFromChlorine));
        else if (Chlorine() is { } chlorine && chlorine > PhenolRed.PurpleFromChlorine)
            Doubt(result, i, Reason.Of("check.phenol_red_at_high_chlorine", chlorine, PhenolRed.PurpleFromChlorine));
        if (Level(Measurand.TotalAlkalinity) is { } alkalinity && alkalinity < PhenolRed.LeastAlkalinity)
            Remark($"results[{i}].value", Reason.Of("check.phenol_red_at_low_alkalinity", alkalinity, PhenolRed.LeastAlkalinity));
        if (Level(Measurand.DissolvedSolids) is { } solids && solids >= PhenolRed.SaltFrom)
            Remark($"results[{i}].value", Reason.Of("check.phenol_red_in_salt_water", PhenolRed.SaltError.Low, PhenolRed.SaltError.High));
    }

    // Chlorine of the same water: an hour later it may be another.
    private double? Chlorine() => (check.Result(Measurand.FreeChlorine)?.Value, check.Result(Measurand.TotalChlorine)?.Value) switch
    {
        ({ } free, { } total) => Math.Max(free, total),
        var (free, total) => free ?? total,
    };

    private double? Level(Measurand measurand) =>
        check.Result(measurand)?.Value ?? (pool.Manual.TryGetValue(measurand, out var last) && !last.Suspect ? last.Result.Value : null);
}
