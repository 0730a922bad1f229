using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a dose does beside what it is given for, said.</summary>
public static class SideEffects
{
    // Sulfate attacks cement: 300 mg/L is where the trade begins to mind (common practice).
    private const double SulfateMass = Masses.Sulfate;

    /// <summary>The side effects of so many kg in a m3.</summary>
    /// <param name="product">The product as it stands in the store.</param>
    /// <param name="target">What it is given for.</param>
    /// <param name="kilogramsPerCubicMetre">The dose.</param>
    /// <param name="dosed">The water before and after; null when it cannot be worked out.</param>
    public static ImmutableArray<Reason> Of(ProductAtHand product, Measurand target, double kilogramsPerCubicMetre, DosedWater? dosed)
    {
        ArgumentNullException.ThrowIfNull(product);
        var says = ImmutableArray.CreateBuilder<Reason>();
        var changes = DoseChanges.Of(product.PerKilogram, kilogramsPerCubicMetre);
        if (changes.Cyanurate > 0 && target != Measurand.CyanuricAcid) says.Add(Reason.Of("side.adds_cyanurate", changes.Cyanurate));
        if (changes.Calcium > 0 && target != Measurand.CalciumHardness) says.Add(Reason.Of("side.adds_calcium", changes.Calcium));
        var sulfate = product.PerKilogram.Sulfate * kilogramsPerCubicMetre * SulfateMass;
        if (sulfate > 0.5) says.Add(Reason.Of("side.adds_sulfate", sulfate));
        if (dosed is not null) Alkalinity(target, dosed, says);
        Role(product, target, changes, dosed, says);
        if (dosed is { AtOnce.SaturationIndex: > 0.3 } && dosed.AtOnce.SaturationIndex > dosed.Before.SaturationIndex) says.Add(Reason.Of("side.may_cloud", dosed.AtOnce.SaturationIndex));
        return says.ToImmutable();
    }

    private static void Alkalinity(Measurand target, DosedWater dosed, ImmutableArray<Reason>.Builder says)
    {
        var change = (dosed.Spent ?? dosed.AtOnce).TotalAlkalinity - dosed.Before.TotalAlkalinity;
        if (target != Measurand.TotalAlkalinity && Math.Abs(change) >= 0.5) says.Add(Reason.Of(change < 0 ? "side.takes_alkalinity" : "side.adds_alkalinity", Math.Abs(change)));
    }

    private static void Role(ProductAtHand product, Measurand target, DoseChanges changes, DosedWater? dosed, ImmutableArray<Reason>.Builder says)
    {
        switch (ProductUse.Role(product.Plan.Kind))
        {
            case ProductRole.Chlorine when dosed?.Spent is { } spent:
                says.Add(Reason.Of("side.chlorine_ph", dosed.Before.Ph, dosed.AtOnce.Ph, spent.Ph));
                break;
            case ProductRole.Acid or ProductRole.CarbonDioxide when target == Measurand.Ph:
                says.Add(Reason.Of("side.ph_drifts_up"));
                break;
            case ProductRole.Dechlorinator when Dechlorination.GramsPerGram(product.Plan.Kind) is { } range:
                if (range.High > range.Low) says.Add(Reason.Of("side.dechlorination_range", range.Low, range.High));
                if (Dechlorination.InTheField(product.Plan.Kind) is { } field) says.Add(Reason.Of("side.dechlorination_field", range.Low, field));
                break;
        }

        if (product.Plan.Kind == ProductKind.CarbonDioxide) says.Add(Reason.Of("side.carbon_dioxide_keeps_alkalinity"));
        if (changes.Solids >= 20) says.Add(Reason.Of("side.adds_solids", changes.Solids));
    }
}
