using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>What is said beside a dose: of the pool, of where and in which order, of what must not meet what.</summary>
internal static class DoseSayings
{
    /// <summary>What the pool's treatment and its tests ask to be said; also what does not apply to it.</summary>
    public static ImmutableArray<Reason> OfPool(DoseSituation at, ProductAtHand product, Measurand target)
    {
        var says = ImmutableArray.CreateBuilder<Reason>();
        if (at.Circuit.Pools.Length > 1) says.Add(Reason.Of("dose.other_pools", string.Join(", ", at.Circuit.Pools.Where(p => p.Id != at.Pool.Id).Select(p => p.Name))));
        if (at.Pool.Disinfectant == Disinfectant.Bromine) Bromine(at, says);
        else if (DoseRefusals.CombinedIsHigh(at)) Combined(at, says);
        if (target != Measurand.FreeChlorine || at.Pool.Disinfectant == Disinfectant.Bromine) return says.ToImmutable();
        if (at.Pool.Disinfectant == Disinfectant.SaltElectrolysis) says.Add(Reason.Of("dose.salt_cell"));
        if (at.Pool.Secondary.Contains(SecondaryTreatment.Ozone)) says.Add(Reason.Of("dose.ozone"));
        if (at.Pool.Secondary.Contains(SecondaryTreatment.Uv)) says.Add(Reason.Of("dose.uv"));
        if (product.Facts.ChlorinePerMole > 0 && at.Limit(Measurand.Ph)?.High is { } high && at.Tested(Measurand.Ph) > high) says.Add(Reason.Of("dose.ph_first", at.Tested(Measurand.Ph)!.Value, high));
        if (product.Facts.IsDechlorinator) says.Add(Reason.Of("dose.smallest_step"));
        return says.ToImmutable();
    }

    /// <summary>What an open incident asks to be said beside a dose of chlorine for it (MAHC s. 6.5.2.3 on the product, the pH and the tests; published).</summary>
    public static ImmutableArray<Reason> OfHold(DoseSituation at, ProductAtHand product, Measurand target, double value)
    {
        if (target != Measurand.FreeChlorine || at.Hold is not { Figure: { } figure } hold || !DoseRefusals.IsForHold(at, product, value)) return [];
        var says = ImmutableArray.CreateBuilder<Reason>();
        says.Add(Reason.Of("dose.for_incident", figure.StartAt, hold.Highest!.Value, Measurand.FreeChlorine.Unit()));
        if (at.Tested(Measurand.Ph) > figure.HighestPh) says.Add(Reason.Of("dose.incident_ph_first", at.Tested(Measurand.Ph)!.Value, figure.HighestPh, Measurand.Ph.Unit()));
        says.Add(Reason.Of("dose.incident_dilute_tests", Dpd.Range.High));
        says.Add(Reason.Of("dose.incident_back_before_opening"));
        return says.ToImmutable();
    }

    private static void Bromine(DoseSituation at, ImmutableArray<Reason>.Builder says)
    {
        if (at.Tested(Measurand.FreeChlorine) is { } reading) says.Add(Reason.Of("dose.bromine_reading", reading, Chemistry.Bromine.OfChlorineReading(reading)));
        says.Add(Reason.Of("dose.bromine_does_not_apply"));
    }

    private static void Combined(DoseSituation at, ImmutableArray<Reason>.Builder says)
    {
        says.Add(Reason.Of("dose.combined_high", at.Combined!.Value));
        says.Add(Reason.Of("breakpoint.rule_of_thumb", Breakpoint.RuleOfThumb * at.Combined.Value));
    }

    /// <summary>Where it goes in, and in which order with others.</summary>
    public static ImmutableArray<Reason> How(ProductAtHand product, DoseVolume volume)
    {
        var says = ImmutableArray.CreateBuilder<Reason>();
        says.Add(Where(product));
        if (volume.First < volume.Whole) says.Add(Reason.Of("where.first_into_pool", volume.First, volume.Whole));
        says.Add(ProductUse.Role(product.Plan.Kind) switch
        {
            ProductRole.Bicarbonate => Reason.Of("order.alkalinity_first"),
            ProductRole.Acid or ProductRole.CarbonDioxide or ProductRole.Base => Reason.Of("order.ph_second"),
            ProductRole.Calcium => Reason.Of("order.calcium_apart"),
            ProductRole.Chlorine => Reason.Of("order.chlorine_last"),
            ProductRole.Dechlorinator => Reason.Of("order.dechlorinator"),
            _ => Reason.Of("order.one_at_a_time"),
        });
        return says.ToImmutable();
    }

    private static Reason Where(ProductAtHand product) => (product.Plan.AddedBy, product.Plan.AddedTo) switch
    {
        (DosingWay.Pump, _) => Reason.Of("where.by_pump"),
        (_, DosingPlace.BalanceTank) => Reason.Of("where.balance_tank"),
        (_, DosingPlace.ReturnLine) => Reason.Of("where.return_line"),
        _ when product.Form is ProductForm.Tablets => Reason.Of("where.tablets"),
        _ when product.IsLiquid => Reason.Of("where.pool_liquid"),
        _ => Reason.Of("where.pool_solid"),
    };

    /// <summary>How to handle it, and what of the products at hand it must not meet.</summary>
    public static ImmutableArray<Reason> Precautions(DoseSituation at, ProductAtHand product)
    {
        var says = ImmutableArray.CreateBuilder<Reason>();
        says.AddRange(ProductHazards.Handling(product.Plan.Kind));
        foreach (var other in at.Products)
            if (other.Id != product.Plan.Id && ProductHazards.Apart(product.Plan.Kind, other) is { } apart) says.Add(apart);
        return says.ToImmutable();
    }
}
