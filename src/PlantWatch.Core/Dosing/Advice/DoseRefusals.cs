using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>What stands against a dose before anything is worked out. Doubt never makes safe: what is not known counts against it.</summary>
internal static class DoseRefusals
{
    /// <summary>Combined chlorine in mg/L from which it is called high where the plant has set no limit (common practice).</summary>
    private const double CombinedHigh = 1.0;

    public static ImmutableArray<Reason> Of(DoseSituation at, ProductAtHand product, Measurand target, double value, DoseVolume volume)
    {
        var against = ImmutableArray.CreateBuilder<Reason>();
        if (at.Entitlement != Entitlement.Granted) against.Add(Reason.Of("dose.not_entitled"));
        against.AddRange(volume.Against);
        against.AddRange(ProductFitness.Against(product.Plan, at.Pool));
        Test(at, target, against);
        if (target != Measurand.Ph) Test(at, Measurand.Ph, against);
        Stabiliser(at, product, target, against);
        Bathers(at, product, against);
        Target(at, product, target, value, against);
        return against.ToImmutable();
    }

    /// <summary>True when the combined chlorine of the newest pair lies above the limit, or above the usual one where none is set.</summary>
    public static bool CombinedIsHigh(DoseSituation at) => at.Combined > (at.Limit(Measurand.CombinedChlorine)?.High ?? CombinedHigh);

    /// <summary>What stands against resting on the newest test of a figure: that there is none, that it is doubted, only a bound, or too old.</summary>
    public static void Test(DoseSituation at, Measurand measurand, ImmutableArray<Reason>.Builder against)
    {
        if (!at.Tests.TryGetValue(measurand, out var test))
        {
            against.Add(Reason.Of("dose.test_missing", measurand.Key()));
            return;
        }

        if (test.Suspect) against.Add(Reason.Of("dose.test_suspect", measurand.Key()));
        // "Below 0.03" is a number good enough to dose up from; every other bound is not.
        if (test.Result.Censoring != Censoring.None && !(measurand == Measurand.FreeChlorine && test.Result.Censoring == Censoring.Below)) against.Add(Reason.Of("dose.test_is_a_bound", measurand.Key()));
        var age = at.Now - test.SampledAt;
        if (age > TestAge.Oldest(measurand)) against.Add(Reason.Of("dose.test_stale", measurand.Key(), age.TotalHours, TestAge.Oldest(measurand).TotalHours));
    }

    // Cyanuric acid stays until it is drained: each go of a stabilised product adds to it, and small goes add up to the same.
    private static void Stabiliser(DoseSituation at, ProductAtHand product, Measurand target, ImmutableArray<Reason>.Builder against)
    {
        if (!ProductFacts.Of(product.Plan.Kind).IsStabilised) return;
        if (target != Measurand.CyanuricAcid) Test(at, Measurand.CyanuricAcid, against);
        var most = at.Limit(Measurand.CyanuricAcid)?.High ?? UsualBands.MostCyanurate;
        if (at.Tests.TryGetValue(Measurand.CyanuricAcid, out var test) && test.Result.Value >= most) against.Add(Reason.Of("dose.stabiliser_enough", product.Plan.Name, test.Result.Value, most));
    }

    private static void Bathers(DoseSituation at, ProductAtHand product, ImmutableArray<Reason>.Builder against)
    {
        if (product.Plan.AddedBy == DosingWay.Pump || at.BathersOut == true) return;
        if (at.BathersOut == false || at.Bathers > 0) against.Add(Reason.Of("dose.bathers_in"));
        else against.Add(Reason.Of("dose.bathers_not_known"));
    }

    private static void Target(DoseSituation at, ProductAtHand product, Measurand target, double value, ImmutableArray<Reason>.Builder against)
    {
        if (ProductUse.Direction(product.Plan.Kind, target) == 0)
        {
            if (product.IsModelled) against.Add(Reason.Of("dose.not_for_this", product.Plan.Name, target.Key()));
            return;
        }

        if (!double.IsFinite(value) || !target.Possible().Contains(value)) against.Add(Reason.Of("dose.target_impossible", target.Key(), target.Possible().Low, target.Possible().High, target.Unit()));
        else if (target == Measurand.FreeChlorine && IsForHold(at, product, value)) Hold(at.Hold!, product, value, against);
        else if (target == Measurand.FreeChlorine) Chlorine(at, value, against);
        else if (at.Limit(target) is { } limit && (value < limit.Low || value > limit.High)) against.Add(Outside(target, limit));
        else if (target == Measurand.Ph && !at.PhStop.Contains(value)) against.Add(Reason.Of("dose.target_beyond_stop", target.Key(), at.PhStop.Low, at.PhStop.High, target.Unit()));
    }

    private static void Chlorine(DoseSituation at, double value, ImmutableArray<Reason>.Builder against)
    {
        if (value > at.ChlorineStop.High) against.Add(Reason.Of("dose.target_beyond_stop", Measurand.FreeChlorine.Key(), at.ChlorineStop.Low, at.ChlorineStop.High, Measurand.FreeChlorine.Unit()));
        else if (at.Closed) return;
        else if (CombinedIsHigh(at) && value > (at.Limit(Measurand.FreeChlorine)?.High ?? DoseAdvisor.UsualHighestChlorine)) against.Add(Reason.Of("dose.no_shock_while_open", at.Combined!.Value));
        else if (at.Limit(Measurand.FreeChlorine) is { } limit && (value < limit.Low || value > limit.High)) against.Add(Outside(Measurand.FreeChlorine, limit));
        else if (value > DoseAdvisor.UsualHighestChlorine) against.Add(Reason.Of("dose.chlorine_while_open", DoseAdvisor.UsualHighestChlorine));
    }

    /// <summary>True when chlorine is raised for an open incident: past the pool's limit, to where its plan goes, or past what always holds.</summary>
    public static bool IsForHold(DoseSituation at, ProductAtHand product, double value) =>
        at.Hold is { } hold && !product.Facts.IsDechlorinator && value > (at.Limit(Measurand.FreeChlorine)?.High ?? DoseAdvisor.UsualHighestChlorine)
        && (value <= hold.Highest || value > at.ChlorineStop.High);

    // The state of the pools is asked, not who asks: that somebody says it is closed is not enough for this much.
    private static void Hold(IncidentHold hold, ProductAtHand product, double value, ImmutableArray<Reason>.Builder against)
    {
        if (hold.Figure is null) against.AddRange(Reason.Of("dose.incident_without_row"), hold.Refusal!);
        else if (value > hold.Highest) against.Add(Reason.Of("dose.target_beyond_incident", value, hold.Highest.Value, Measurand.FreeChlorine.Unit()));
        if (!hold.MayBatheIn.IsEmpty) against.Add(Reason.Of("dose.incident_not_closed", string.Join(", ", hold.MayBatheIn)));
        if (ProductFacts.Of(product.Plan.Kind).IsStabilised) against.Add(Reason.Of("dose.incident_stabilised", product.Plan.Name));
    }

    private static Reason Outside(Measurand target, LimitPlan limit) => Reason.Of("dose.target_outside_limit", target.Key(), new Fact(limit.Low, null), new Fact(limit.High, null), target.Unit());
}
