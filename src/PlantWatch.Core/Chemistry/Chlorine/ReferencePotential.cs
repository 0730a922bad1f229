using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>An ORP against another electrode, or why it cannot be given.</summary>
/// <param name="Reading">mV against the electrode asked for.</param>
/// <param name="StandardUncertainty">What the conversion adds, mV; 0 when nothing was converted.</param>
/// <param name="Says">What has to be said beside it.</param>
public sealed record OrpConversion(Figure Reading, double StandardUncertainty, ImmutableArray<Reason> Says);

/// <summary>Potentials of reference electrodes against the standard hydrogen electrode over temperature, and readings turned from one to another.</summary>
/// <remarks>
/// 3 mol/L: a multiparameter sonde's manual (published; another table has 210 at 25 degC). The others are published for 25 degC (Bard and Faulkner 2000; Sawyer, Sobkowiak and Roberts 1995,
/// as tabulated), junction included; away from 25 degC they are from memory. Straight lines between the rows.
/// </remarks>
public static class ReferencePotential
{
    /// <summary>Tables differ by some millivolts for one electrode: 207 or 210, 241 or 244 at 25 degC.</summary>
    private const double TableUncertainty = 3;

    private const double PublishedAt = 25;

    private static readonly FactorTable SilverChloride3M = new([(5, 221), (10, 217), (15, 214), (20, 210), (25, 207), (30, 203), (35, 200), (40, 196)]);
    private static readonly FactorTable SilverChloride3M5 = new([(10, 215), (15, 212), (20, 208), (25, 205), (30, 201), (35, 197), (40, 193)]);
    private static readonly FactorTable SilverChlorideSaturated = new([(10, 214), (15, 209), (20, 204), (25, 199), (30, 194), (35, 189), (40, 184)]);
    private static readonly FactorTable Calomel = new([(10, 254), (15, 251), (20, 248), (25, 244), (30, 241), (35, 238), (40, 234)]);
    private static readonly FactorTable Hydrogen = new([(-5, 0), (110, 0)]);

    /// <summary>mV of an electrode against the standard hydrogen electrode.</summary>
    public static Figure Of(ReferenceElectrode electrode, Celsius water)
    {
        if (Table(electrode) is not { } table) return Figure.Not(Reason.Of("orp.electrode_unknown"));
        return table.TryAt(water.Degrees, out var potential)
            ? Figure.Of(potential)
            : Figure.Not(InputCheck.Outside("temperature", water.Degrees, table.Range, "degC"));
    }

    /// <summary>True when the potential at that temperature is from memory.</summary>
    public static bool IsFromMemory(ReferenceElectrode electrode, Celsius water) =>
        electrode is ReferenceElectrode.SilverChloride3M5 or ReferenceElectrode.SilverChlorideSaturated or ReferenceElectrode.Calomel
        && water.Degrees != PublishedAt;

    /// <summary>A reading against one electrode as another would show it: reading + E(from) - E(to).</summary>
    /// <param name="reading">mV against <paramref name="from"/>.</param>
    /// <param name="from">The electrode it was read against.</param>
    /// <param name="to">The electrode asked for.</param>
    /// <param name="water">Temperature of the electrodes.</param>
    public static OrpConversion Convert(Millivolts reading, ReferenceElectrode from, ReferenceElectrode to, Celsius water)
    {
        if (from == to && from != ReferenceElectrode.Unknown) return new(Figure.Of(reading.Value), 0, []);
        var (old, next) = (Of(from, water), Of(to, water));
        if (!old.IsKnown) return new(old, 0, []);
        if (!next.IsKnown) return new(next, 0, []);
        return new(Figure.Of(reading.Value + old.Value - next.Value), Uncertainty(from, to),
            IsFromMemory(from, water) || IsFromMemory(to, water) ? [Reason.Of("orp.reference_from_memory")] : []);
    }

    private static double Uncertainty(ReferenceElectrode from, ReferenceElectrode to) =>
        from == ReferenceElectrode.StandardHydrogen || to == ReferenceElectrode.StandardHydrogen ? TableUncertainty : Math.Sqrt(2) * TableUncertainty;

    private static FactorTable? Table(ReferenceElectrode electrode) => electrode switch
    {
        ReferenceElectrode.StandardHydrogen => Hydrogen,
        ReferenceElectrode.SilverChloride3M => SilverChloride3M,
        ReferenceElectrode.SilverChloride3M5 => SilverChloride3M5,
        ReferenceElectrode.SilverChlorideSaturated => SilverChlorideSaturated,
        ReferenceElectrode.Calomel => Calomel,
        _ => null,
    };
}
