using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>The most that one go may change before the water is mixed and tested again (common practice; product labels and local rules go before it).</summary>
/// <param name="Ph">pH.</param>
/// <param name="Alkalinity">mg/L as CaCO3.</param>
/// <param name="Calcium">mg/L as CaCO3.</param>
/// <param name="FreeChlorine">mg/L as Cl2.</param>
/// <param name="Cyanurate">mg/L.</param>
/// <param name="Saturation">Saturation index: soda ash clouds a water long before its pH is off.</param>
public sealed record StepCaps(double Ph, double Alkalinity, double Calcium, double FreeChlorine, double Cyanurate, double Saturation)
{
    /// <summary>The usual ones.</summary>
    public static StepCaps Usual { get; } = new(DoseLimits.MostPhStep, Step(Measurand.TotalAlkalinity), Step(Measurand.CalciumHardness), Step(Measurand.FreeChlorine), Step(Measurand.CyanuricAcid), 0.4);

    internal bool Allow(Speciation before, Speciation after) =>
        Within(before.Ph, after.Ph, Ph) && Within(before.TotalAlkalinity, after.TotalAlkalinity, Alkalinity) && Within(before.CalciumHardness, after.CalciumHardness, Calcium)
        && Within(before.FreeChlorine, after.FreeChlorine, FreeChlorine) && Within(before.Cyanurate, after.Cyanurate, Cyanurate)
        && (!double.IsFinite(before.SaturationIndex) || Within(before.SaturationIndex, after.SaturationIndex, Saturation));

    private static double Step(Measurand measurand) => DoseLimits.MostStep(measurand)!.Value;

    private static bool Within(double before, double after, double cap) => Math.Abs(after - before) <= cap * (1 + 1e-9);
}
