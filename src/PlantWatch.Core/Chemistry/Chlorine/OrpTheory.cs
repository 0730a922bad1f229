using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What theory says of ORP in chlorine water: HOCl + H+ + 2 e- = Cl- + H2O. For understanding a trend, never for a concentration.</summary>
/// <remarks>
/// A real platinum electrode reads a mixed potential 150 to 350 mV lower, follows the logarithm, flattens above about 1 to 3 mg/L of hypochlorous acid, drifts with its oxide and with
/// chloride, and falls with cyanurate and reductants. So no mg/L is computed from mV here, and no function goes that way; and the ORP of two pools is not compared.
/// </remarks>
public static class OrpTheory
{
    /// <summary>Standard potential in mV against the standard hydrogen electrode (CRC Handbook, from memory).</summary>
    public const double Standard = 1482;

    /// <summary>How far below theory platinum reads in pools, mV (common practice).</summary>
    public static ValueRange RealElectrodeReadsLowerBy { get; } = new(150, 350);

    private const int Electrons = 2;

    /// <summary>mV for a pH more: -29.58 at 25 degC.</summary>
    public static double PerPh(Celsius water) => -Nernst.Slope(water.Degrees) / Electrons;

    /// <summary>mV for twice the hypochlorous acid: +8.90 at 25 degC.</summary>
    public static double PerDoubling(Celsius water) => Math.Log(2) * Nernst.Natural(water.Degrees) / Electrons;

    /// <summary>The theoretical potential in mV against the standard hydrogen electrode, activities taken as concentrations.</summary>
    /// <param name="hypochlorousAcid">mg/L as Cl2, 0.001 to 200.</param>
    /// <param name="chloride">mg/L, 1 to 30 000.</param>
    /// <param name="ph">pH.</param>
    /// <param name="water">Temperature.</param>
    public static Figure Potential(double hypochlorousAcid, double chloride, Ph ph, Celsius water) => new InputCheck()
        .Within("hypochlorous_acid", hypochlorousAcid, new(0.001, 200), "mg/L").Within("chloride", chloride, new(1, 30_000), "mg/L")
        .Then(() => Standard + (PerPh(water) * ph.Value) + (Nernst.Natural(water.Degrees) / Electrons
            * Math.Log(Masses.Moles(hypochlorousAcid, Masses.Chlorine) / Masses.Moles(chloride, Masses.Chloride))));

    /// <summary>What has to stand beside any theoretical figure.</summary>
    public static Reason Caution => Reason.Of("orp.theory_is_no_reading", RealElectrodeReadsLowerBy.Low, RealElectrodeReadsLowerBy.High);
}
