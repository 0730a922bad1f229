namespace PlantWatch.Core.Chemistry;

/// <summary>What a plan can do to a water.</summary>
public enum MeansKind
{
    /// <summary>Nothing.</summary>
    None = 0,
    /// <summary>Add a product.</summary>
    Dose,
    /// <summary>Let carbon dioxide out: with features, air or a lowered inlet on the surface. pH rises, alkalinity stays.</summary>
    Aerate,
    /// <summary>Let free chlorine be used up, nobody bathing.</summary>
    LetChlorineFall,
    /// <summary>Replace a part of the water by fill water.</summary>
    Dilute,
}

/// <summary>One means with what a unit of it does. Units are chosen so that one of them is felt: about 1 mmol/L.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Product">The product; null where none is added.</param>
/// <param name="PerUnit">Mol per kg of water that one unit adds.</param>
/// <param name="KilogramsPerUnit">kg of product per kg of water in one unit; the part of the water replaced for a dilution; 0 otherwise.</param>
/// <param name="Price">What a unit costs, in units of the usual price: see <see cref="MeansAtHand"/>.</param>
internal sealed record Means(MeansKind Kind, ProductAtHand? Product, Composition PerUnit, double KilogramsPerUnit, double Price)
{
    /// <summary>When it is used, by common practice: chlorine down, alkalinity, pH, calcium, stabiliser, disinfectant.</summary>
    public int Turn => Kind switch
    {
        MeansKind.LetChlorineFall => 0,
        MeansKind.Aerate => 2,
        _ => TurnOf(PerUnit),
    };

    /// <summary>True for what is added for pH: its closed-system answer is not to be chased in one go.</summary>
    public bool IsForPh => Kind == MeansKind.Dose && Turn == 2;

    private static int TurnOf(Composition c) => c switch
    {
        { Chlorine: < 0 } => 0,
        { Chlorine: > 0 } => 5,
        { Cyanurate: > 0 } => 4,
        { Calcium: > 0 } => 3,
        { Carbon: > 0 } when c.StrongCharge > 0 && c.StrongCharge < 1.5 * c.Carbon => 1,
        { Carbon: > 0 } => 2,
        _ => Math.Abs(c.StrongCharge) > 1e-9 ? 2 : 6,
    };
}
