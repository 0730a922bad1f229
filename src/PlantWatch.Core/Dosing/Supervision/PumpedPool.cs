namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>A dosing pump as the plant knows it.</summary>
/// <param name="MillilitresPerStroke">What a stroke delivers when all is well, in mL.</param>
/// <param name="Strength">Of the product: eq/L of acid, or g/L of chlorine as Cl2.</param>
public sealed record DosingPump(double MillilitresPerStroke, double Strength);

/// <summary>A pool under closed-loop dosing of acid and chlorine.</summary>
/// <param name="VolumeCubicMetres">Water in the pool and its pipes, in m3.</param>
/// <param name="Alkalinity">Total alkalinity in mg/L as CaCO3.</param>
/// <param name="TurnoverHours">Volume over circulation flow, in h.</param>
/// <param name="Acid">The acid pump.</param>
/// <param name="Chlorine">The chlorine pump.</param>
public sealed record PumpedPool(double VolumeCubicMetres, double Alkalinity, double TurnoverHours, DosingPump Acid, DosingPump Chlorine)
{
    // Milligrams of CaCO3 a milliequivalent.
    private const double CarbonateEquivalent = 50.043;

    // Of carbonic acid near 28 degC in fresh water; Plummer and Busenberg 1982 give 6.33.
    private const double CarbonicAcid = 6.33;

    /// <summary>By how much a stroke of acid lowers pH in closed water: buffer capacity of the carbonate system at pH 7.4, in pH units. Carbon dioxide that leaves the water makes it less.</summary>
    public double PhPerStroke
    {
        get
        {
            var ratio = Math.Pow(10, CarbonicAcid - 7.4);
            var capacity = Math.Log(10) * Alkalinity / CarbonateEquivalent * ratio / (1 + ratio);
            return Acid.MillilitresPerStroke * Acid.Strength / 1000 / VolumeCubicMetres / capacity;
        }
    }

    /// <summary>By how much a stroke of chlorine raises free chlorine, in mg/L.</summary>
    public double ChlorinePerStroke => Chlorine.MillilitresPerStroke * Chlorine.Strength / 1000 / VolumeCubicMetres;

    /// <summary>The caustic of hypochlorite in equivalents a gram of chlorine: one proton bound for each Cl2 of 70.9 g.</summary>
    public const double CausticPerGram = 1 / 70.906;

    /// <summary>Strokes of acid that undo the caustic of one stroke of chlorine.</summary>
    public double AcidPerChlorineStroke => Chlorine.MillilitresPerStroke * Chlorine.Strength * CausticPerGram / (Acid.MillilitresPerStroke * Acid.Strength);
}
