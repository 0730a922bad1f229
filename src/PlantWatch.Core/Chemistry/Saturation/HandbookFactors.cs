namespace PlantWatch.Core.Chemistry;

/// <summary>The factors of the saturation index as pool handbooks print them.</summary>
/// <remarks>
/// 10 CRR-NY 6-1.30 (New York State Sanitary Code) and Administrative Rules of Montana, spa chapter, Table 7 (published).
/// Copies with 2.1 for a calcium hardness of 400 mg/L, or 2.0 or 3.0 for 1000 mg/L, are misprints of 2.2 and 2.6.
/// </remarks>
internal static class HandbookFactors
{
    /// <summary>Temperature factor over degF, the unit the table is printed in.</summary>
    public static FactorTable Temperature { get; } = new(
        [(32, 0.0), (37, 0.1), (46, 0.2), (53, 0.3), (60, 0.4), (66, 0.5), (76, 0.6), (84, 0.7), (94, 0.8), (105, 0.9), (128, 1.0)]);

    /// <summary>Calcium factor over calcium hardness in mg/L as CaCO3. Never over total hardness.</summary>
    public static FactorTable Calcium { get; } = new(
        [(5, 0.3), (25, 1.0), (50, 1.3), (75, 1.5), (100, 1.6), (150, 1.8), (200, 1.9), (300, 2.1), (400, 2.2), (800, 2.5), (1000, 2.6)]);

    /// <summary>Alkalinity factor over alkalinity in mg/L as CaCO3.</summary>
    public static FactorTable Alkalinity { get; } = new(
        [(5, 0.7), (25, 1.4), (50, 1.7), (75, 1.9), (100, 2.0), (150, 2.2), (200, 2.3), (300, 2.5), (400, 2.6), (800, 2.9), (1000, 3.0)]);

    /// <summary>The constant by dissolved solids in mg/L: 12.1 up to 1000, 12.2 above (Montana, published). New York prints 12.1 throughout.</summary>
    /// <remarks>12.3 above 2000 mg/L is a habit of operators' handbooks (common practice) and not used.</remarks>
    public static double Constant(double solids) => solids <= 1000 ? 12.1 : 12.2;
}
