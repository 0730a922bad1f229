namespace PlantWatch.Core.Chemistry;

/// <summary>Molar masses in g/mol and the bases in which the trade counts. 1 L of pool water is taken as 1 kg.</summary>
internal static class Masses
{
    /// <summary>Calcium.</summary>
    public const double Calcium = 40.078;

    /// <summary>Chloride.</summary>
    public const double Chloride = 35.453;

    /// <summary>Sodium.</summary>
    public const double Sodium = 22.98977;

    /// <summary>Bicarbonate.</summary>
    public const double Bicarbonate = 61.01684;

    /// <summary>Sodium chloride.</summary>
    public const double SodiumChloride = Sodium + Chloride;

    /// <summary>Sulfate.</summary>
    public const double Sulfate = 96.0626;

    /// <summary>Calcium carbonate, the basis of hardness.</summary>
    public const double CalciumCarbonate = 100.0869;

    /// <summary>Half of it, the basis of alkalinity: g per equivalent.</summary>
    public const double AlkalinityEquivalent = CalciumCarbonate / 2;

    /// <summary>Carbon dioxide.</summary>
    public const double CarbonDioxide = 44.0095;

    /// <summary>Chlorine Cl2, the basis of free chlorine.</summary>
    public const double Chlorine = 70.906;

    /// <summary>Cyanuric acid.</summary>
    public const double CyanuricAcid = 129.07;

    /// <summary>Boron, the basis of borate.</summary>
    public const double Boron = 10.811;

    /// <summary>From mg/L to mol/kg.</summary>
    public static double Moles(double milligramsPerLitre, double mass) => milligramsPerLitre / (1000 * mass);

    /// <summary>From mol/kg to mg/L.</summary>
    public static double Milligrams(double moles, double mass) => moles * 1000 * mass;
}
