using System.Collections.Immutable;
using static PlantWatch.Core.Chemistry.Component;

namespace PlantWatch.Core.Chemistry;

/// <summary>A water in equilibrium with itself: every species, and what follows from them. Closed: no carbon dioxide leaves, nothing precipitates.</summary>
public sealed class Speciation
{
    private static readonly int Co2 = SpeciesTable.IndexOf("CO2");
    private static readonly int Bicarbonate = SpeciesTable.IndexOf("HCO3-");
    private static readonly int Hypochlorite = SpeciesTable.IndexOf("OCl-");

    private readonly double[] _ln;
    private readonly double[] _molality;

    internal Speciation(Composition composition, double celsius, bool ideal, Tableau tableau, double ionicStrength, double[] lnActivity, double[] molality)
    {
        (Composition, Temperature, IsIdeal, Tableau, IonicStrength) = (composition, celsius, ideal, tableau, ionicStrength);
        (_ln, _molality) = (lnActivity, molality);
    }

    /// <summary>What the water is made of, carbon included.</summary>
    public Composition Composition { get; }

    /// <summary>Temperature in degC.</summary>
    public double Temperature { get; }

    /// <summary>True for the ideal water of zero ionic strength, in which charges do not feel each other.</summary>
    public bool IsIdeal { get; }

    /// <summary>Ionic strength in mol/kg.</summary>
    public double IonicStrength { get; }

    /// <summary>pH on the activity scale.</summary>
    public double Ph => -_ln[(int)Hydrogen] / Math.Log(10);

    /// <summary>Saturation index of calcite: log10 of ion product over solubility product. Minus infinity without calcium or carbonate.</summary>
    public double SaturationIndex => Composition is { Calcium: > 0, Carbon: > 0 }
        ? (_ln[(int)Calcium] + _ln[(int)Carbonate] - Tableau.LnCalcite) / Math.Log(10)
        : double.NegativeInfinity;

    /// <summary>Total alkalinity in mg/L as CaCO3, as a titration to pH 4.5 finds it; negative in a water that has none left.</summary>
    public double TotalAlkalinity => Masses.Milligrams(WaterRecipe.Alkalinity(Composition), Masses.AlkalinityEquivalent);

    /// <summary>Calcium hardness in mg/L as CaCO3.</summary>
    public double CalciumHardness => Masses.Milligrams(Composition.Calcium, Masses.CalciumCarbonate);

    /// <summary>Free chlorine in mg/L as Cl2: what DPD reads, chlorine bound to cyanurate included.</summary>
    public double FreeChlorine => Masses.Milligrams(Composition.Chlorine, Masses.Chlorine);

    /// <summary>Hypochlorous acid in mg/L as Cl2: the part that disinfects.</summary>
    public double HypochlorousAcid => Masses.Milligrams(_molality[(int)Component.HypochlorousAcid], Masses.Chlorine);

    /// <summary>Hypochlorite ion in mg/L as Cl2.</summary>
    public double HypochloriteIon => Masses.Milligrams(_molality[Hypochlorite], Masses.Chlorine);

    /// <summary>Cyanuric acid in all forms, in mg/L.</summary>
    public double Cyanurate => Masses.Milligrams(Composition.Cyanurate, Masses.CyanuricAcid);

    /// <summary>Dissolved solids in mg/L, alkalinity counted as bicarbonate.</summary>
    public double DissolvedSolids => WaterRecipe.Solids(Composition);

    /// <summary>Dissolved carbon dioxide in mg/L as CO2.</summary>
    public double CarbonDioxide => Masses.Milligrams(_molality[Co2], Masses.CarbonDioxide);

    /// <summary>Chloride in meq/L.</summary>
    public double ChlorideMilliequivalents => 1000 * Composition.Chloride;

    /// <summary>Bicarbonate and carbonate in meq/L, free ions only.</summary>
    public double BicarbonateMilliequivalents => 1000 * (_molality[Bicarbonate] + (2 * _molality[(int)Carbonate]));

    /// <summary>Every species that the water holds: formula, charge number, mol/kg. Chloride stands in the composition.</summary>
    public ImmutableArray<(string Formula, int Charge, double Molality)> Species
    {
        get
        {
            var species = ImmutableArray.CreateBuilder<(string, int, double)>(_molality.Length);
            for (var i = 0; i < _molality.Length; i++)
                if (_molality[i] > 0) species.Add((SpeciesTable.All[i].Name, SpeciesTable.All[i].Charge, _molality[i]));
            return species.ToImmutable();
        }
    }

    internal Tableau Tableau { get; }

    internal ReadOnlySpan<double> LnActivity => _ln;

    internal ReadOnlySpan<double> Molality => _molality;
}
