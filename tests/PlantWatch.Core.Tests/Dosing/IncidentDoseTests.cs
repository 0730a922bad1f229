using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Dosing;

/// <summary>Chlorine for the hold of an open incident: as far as its plan goes, in water that nobody may bathe in, and no further.</summary>
public sealed class IncidentDoseTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 12);
    private static readonly DateOnly Today = new(2026, 3, 1);
    private static readonly VolumeConfirmation Confirmed = new("M. Reed", new(2026, 1, 5));

    private static readonly PoolPlan Pool = new()
    {
        Id = "pool", Name = "Pool", Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 400, VolumeConfirmed = Confirmed,
        Limits = [new(Measurand.Ph, 7.2, 7.6, "own"), new(Measurand.FreeChlorine, 1, 3, "own")],
    };

    private static readonly CircuitPlan Circuit = new()
    {
        Id = "c", Name = "C", TimeZone = "UTC", Pools = [Pool, Pool with { Id = "learner", Name = "Learner pool", VolumeCubicMetres = 50 }], BalanceTankCubicMetres = 50, BalanceTankConfirmed = Confirmed, TurnoverHours = 4,
    };

    [Theory]
    [InlineData(10)]
    [InlineData(20)]
    public void The_amount_for_the_plan_is_worked_out_for_all_the_water_past_what_else_always_holds(double target)
    {
        var advice = Ask(target);
        Assert.Empty(advice.Refused);
        // 500 m3, from 0.8 mg/L, 65 % available chlorine.
        Assert.Equal(500 * (target - 0.8) / 0.65 / 1000, advice.Dose!.Kilograms, 1e-9);
        Assert.DoesNotContain(advice.Dose.Because, b => b.Code == "dose.cap_step" && b.Facts[0].Text == "free_chlorine");
        // Above pH 7.5 nothing counts (CDC; MAHC s. 6.5.2.3; published): no go takes the water past it.
        Assert.True(advice.Dose.Predicted!.AtOnce.Ph <= 7.5 + 1e-6);
        Assert.Contains(advice.Says, s => s.Code == "dose.for_incident" && s.Facts[0].Number == 10 && s.Facts[1].Number == 20);
        Assert.Contains(advice.Says, s => s.Code == "dose.incident_back_before_opening");
        Assert.Contains(advice.Says, s => s.Code == "dose.incident_dilute_tests");
    }

    [Fact]
    public void Past_the_highest_figure_of_the_plan_there_is_no_dose() => Assert.Equal(["dose.target_beyond_incident"], Refused(20.1));

    [Fact]
    public void Where_the_plan_names_little_the_usual_limits_stay_as_they_are()
    {
        // Arkansas: 2 mg/L for a formed stool (published).
        var hold = Held(IncidentKind.FormedStool, IncidentAuthority.UsArkansas);
        Assert.Equal((2.0, 2.0), (hold.StartAt!.Value, hold.Highest!.Value));
        Assert.Equal(["dose.target_beyond_incident"], Refused(12, hold: hold));
        Assert.Equal(["dose.target_outside_limit"], Refused(6, hold: hold));
        var closed = Ask(6, at => at with { Closed = true }, hold: hold);
        Assert.Contains(closed.Dose!.Because, b => b.Code == "dose.cap_step" && b.Facts[0].Text == "free_chlorine");
        Assert.DoesNotContain(closed.Says, s => s.Code == "dose.for_incident");
    }

    [Fact]
    public void A_pool_of_the_water_that_is_not_closed_stands_against_it_whatever_the_person_says()
    {
        var hold = Held(open: "learner");
        Assert.Equal("Learner pool", Assert.Single(hold.MayBatheIn));
        Assert.Equal(["dose.incident_not_closed"], Refused(10, at => at with { Closed = true }, hold: hold));
    }

    [Fact]
    public void Without_a_cyanurate_test_the_plan_has_no_figure_and_what_always_holds_stays()
    {
        var hold = Held(cyanurate: null);
        Assert.Null(hold.Highest);
        Assert.Equal(["dose.incident_without_row", "incident.cyanurate_unknown"], Refused(12, hold: hold));
        Assert.Equal(["dose.incident_without_row", "incident.dilute_first"], Refused(12, hold: Held(cyanurate: 24)));
    }

    [Fact]
    public void Only_unstabilised_chlorine_is_for_an_incident() => Assert.Contains("dose.incident_stabilised", Refused(10, product: ProductKind.Trichlor));

    [Fact]
    public void A_pH_above_the_plan_is_to_be_lowered_first()
    {
        var advice = Ask(10, at => at with { Tests = at.Tests.SetItem(Measurand.Ph, at.Tests[Measurand.Ph] with { Result = new(Measurand.Ph, 7.56, TestMethod.Meter) }) });
        Assert.Contains(advice.Says, s => s.Code == "dose.incident_ph_first");
    }

    [Fact]
    public void Bathers_and_doubt_stand_against_it_as_against_any_dose()
    {
        Assert.Equal(["dose.bathers_in"], Refused(10, at => at with { BathersOut = false }));
        Assert.Equal(["dose.test_suspect"], Refused(10, at => at with { Tests = at.Tests.SetItem(Measurand.FreeChlorine, at.Tests[Measurand.FreeChlorine] with { Suspect = true }) }));
    }

    [Fact]
    public void Without_an_incident_all_is_as_it_was()
    {
        Assert.Equal(["dose.target_beyond_stop"], Refused(12, at => at with { Hold = null, Closed = true }));
        Assert.Null(IncidentHold.Of(Circuit, States(null, null), [], "pool"));
        Assert.Null(IncidentHold.Of(Circuit, States(null, 0), [Incident(IncidentKind.DeckSpill, IncidentAuthority.UsCdc)], "pool"));
    }

    [Fact]
    public void Chlorine_is_taken_out_afterwards_as_ever()
    {
        var advice = Ask(3, at => at with { Tests = at.Tests.SetItem(Measurand.FreeChlorine, at.Tests[Measurand.FreeChlorine] with { Result = new(Measurand.FreeChlorine, 20, TestMethod.Photometer) }) }, ProductKind.SodiumThiosulfate);
        Assert.Empty(advice.Refused);
        Assert.Contains(advice.Dose!.Because, b => b.Code is "dose.half_and_retest" or "dose.cap_step");
    }

    private static string[] Refused(double target, Func<DoseSituation, DoseSituation>? change = null, ProductKind product = ProductKind.CalciumHypochlorite, IncidentHold? hold = null) =>
        [.. Ask(target, change, product, hold).Refused.Select(r => r.Code)];

    private static DoseAdvice Ask(double target, Func<DoseSituation, DoseSituation>? change = null, ProductKind product = ProductKind.CalciumHypochlorite, IncidentHold? hold = null)
    {
        var at = new DoseSituation
        {
            Circuit = Circuit, Pool = Pool, Tests = Tests(), BathersOut = true, Entitlement = Entitlement.Granted, PhStop = new(6.5, 8.2), ChlorineStop = new(0.2, 10), Hold = hold ?? Held(), Now = Now,
        };
        var plan = new ProductPlan("p", "Product", product, product == ProductKind.SodiumThiosulfate ? null : 65) { Means = StrengthMeaning.Weight, StrengthOn = Today, AddedBy = DosingWay.Hand, AddedTo = DosingPlace.BalanceTank };
        return DoseAdvisor.Of(change?.Invoke(at) ?? at, ProductAtHand.Of(plan, Today), Measurand.FreeChlorine, target);
    }

    private static IncidentHold Held(IncidentKind kind = IncidentKind.DiarrhoealStool, IncidentAuthority authority = IncidentAuthority.UsCdc, double? cyanurate = 0, string? open = null) =>
        IncidentHold.Of(Circuit, States(open, cyanurate), [Incident(kind, authority)], "pool")!;

    private static Incident Incident(IncidentKind kind, IncidentAuthority authority) =>
        new() { Id = new Guid(2, 0, 0, new byte[8]), PoolId = "learner", Kind = kind, Authority = authority, DeclaredBy = "R. Example", HappenedAt = Now - TimeSpan.FromHours(1), DeclaredAt = Now - TimeSpan.FromHours(1) };

    private static ImmutableArray<PoolState> States(string? open, double? cyanurate) => [.. Circuit.Pools.Select(p => new PoolState
    {
        Id = p.Id, Operation = new(p.Id == open ? OperatingState.Open : OperatingState.Closed, Now, "R. Example", null, true),
        Manual = cyanurate is { } value ? ImmutableSortedDictionary<Measurand, ManualValue>.Empty.Add(Measurand.CyanuricAcid, Value(Measurand.CyanuricAcid, value)) : ImmutableSortedDictionary<Measurand, ManualValue>.Empty,
    })];

    private static ImmutableSortedDictionary<Measurand, ManualValue> Tests() => new (Measurand What, double Value)[]
    {
        (Measurand.Ph, 7.3), (Measurand.Temperature, 28), (Measurand.FreeChlorine, 0.8), (Measurand.TotalAlkalinity, 90), (Measurand.CalciumHardness, 220), (Measurand.DissolvedSolids, 1000),
    }.ToImmutableSortedDictionary(t => t.What, t => Value(t.What, t.Value));

    private static ManualValue Value(Measurand what, double value) => new(new(what, value, TestMethod.Photometer), Now - TimeSpan.FromMinutes(20), false, new Guid(1, 0, 0, new byte[8]));
}
