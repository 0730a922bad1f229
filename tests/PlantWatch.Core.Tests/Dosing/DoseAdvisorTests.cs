using System.Collections.Immutable;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Dosing;

public class DoseAdvisorTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 12);
    private static readonly DateOnly Today = new(2026, 3, 1);
    private static readonly VolumeConfirmation Confirmed = new("M. Reed", new(2026, 1, 5));

    private static readonly PoolPlan Pool = new()
    {
        Id = "pool", Name = "Pool", Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 400, VolumeConfirmed = Confirmed,
        Limits = [new(Measurand.Ph, 7.2, 7.6, "own"), new(Measurand.FreeChlorine, 1, 3, "own"), new(Measurand.CombinedChlorine, null, 0.8, "own")],
    };

    private static readonly CircuitPlan Circuit = new()
    {
        Id = "c", Name = "C", TimeZone = "UTC", Pools = [Pool], BalanceTankCubicMetres = 50, BalanceTankConfirmed = Confirmed, TurnoverHours = 4,
    };

    private static DoseSituation At(PoolPlan? pool = null, CircuitPlan? circuit = null, params (Measurand Measurand, double Value)[] tests) => new()
    {
        Circuit = (circuit ?? Circuit) with { Pools = circuit?.Pools ?? [pool ?? Pool] },
        Pool = pool ?? Pool,
        Tests = Tested(tests.Length > 0 ? tests : Usual),
        BathersOut = true,
        Entitlement = Entitlement.Granted,
        PhStop = new(6.5, 8.2),
        ChlorineStop = new(0.2, 10),
        Now = Now,
    };

    private static readonly (Measurand, double)[] Usual =
    [
        (Measurand.Ph, 7.4), (Measurand.Temperature, 28), (Measurand.FreeChlorine, 0.8), (Measurand.TotalChlorine, 1.0), (Measurand.TotalAlkalinity, 90),
        (Measurand.CalciumHardness, 220), (Measurand.DissolvedSolids, 1000),
    ];

    private static ImmutableSortedDictionary<Measurand, ManualValue> Tested((Measurand Measurand, double Value)[] tests) => tests.ToImmutableSortedDictionary(
        test => test.Measurand, test => new ManualValue(new(test.Measurand, test.Value, TestMethod.Photometer), Now - TimeSpan.FromMinutes(20), false, new Guid(1, 0, 0, new byte[8])));

    private static (Measurand, double)[] With(Measurand measurand, double value) => [.. Usual.Where(u => u.Item1 != measurand), (measurand, value)];

    private static ProductAtHand Product(ProductKind kind, double? percent = null, DosingWay by = DosingWay.Hand, DosingPlace to = DosingPlace.BalanceTank) =>
        ProductAtHand.Of(new("p", "Product", kind, percent) { Means = StrengthMeaning.Weight, StrengthOn = Today, AddedBy = by, AddedTo = to }, Today);

    private static string[] Codes(DoseAdvice advice) => [.. advice.Refused.Select(reason => reason.Code)];

    [Fact]
    public void A_chlorine_dose_is_worked_out_for_all_the_water_of_the_circuit_and_its_effect_is_predicted()
    {
        var advice = DoseAdvisor.Of(At(), Product(ProductKind.CalciumHypochlorite, 65), Measurand.FreeChlorine, 2.0);
        Assert.Empty(advice.Refused);
        // 450 m3 x 1.2 mg/L / 0.65.
        Assert.Equal(450 * 1.2 / 0.65 / 1000, advice.Dose!.Kilograms, 1e-9);
        Assert.Equal(advice.Dose.Kilograms, advice.Dose.FirstKilograms, 1e-9);
        Assert.Equal(2.0, advice.Dose.Predicted!.AtOnce.FreeChlorine, 1e-6);
        Assert.Equal(0.706 * 1.2, advice.Dose.Changes.Calcium, 0.01);
        Assert.Contains(advice.Dose.SideEffects, said => said.Code == "side.adds_calcium");
        Assert.Equal(4, advice.RetestHours);
        Assert.NotEmpty(advice.Equipment);
        Assert.Contains(advice.Precautions, said => said.Code == "handle.calcium_hypochlorite");
    }

    [Fact]
    public void Acid_for_pH_goes_in_by_halves_with_a_retest_between()
    {
        var advice = DoseAdvisor.Of(At(tests: With(Measurand.Ph, 7.8)), Product(ProductKind.HydrochloricAcid, 32), Measurand.Ph, 7.4);
        Assert.Empty(advice.Refused);
        Assert.Equal(advice.Dose!.Kilograms / 2, advice.Dose.FirstKilograms, 1e-6);
        Assert.Equal("dose.half_and_retest", Assert.Single(advice.Dose.Because).Code);
        Assert.InRange(advice.Dose.Predicted!.AtOnce.Ph, 7.45, 7.7);
        Assert.Contains(advice.Dose.SideEffects, said => said.Code == "side.takes_alkalinity");
        Assert.Contains(advice.Dose.SideEffects, said => said.Code == "side.ph_drifts_up");
    }

    [Fact]
    public void Soda_ash_is_capped_where_it_would_cloud_the_water_before_pH_is_reached()
    {
        var hard = With(Measurand.CalciumHardness, 450).Where(t => t.Item1 is not (Measurand.Ph or Measurand.TotalAlkalinity)).Append((Measurand.Ph, 7.3)).Append((Measurand.TotalAlkalinity, 140)).ToArray();
        var pool = Pool with { Limits = [new(Measurand.Ph, 7.2, 7.8, "own")] };
        var advice = DoseAdvisor.Of(At(pool, tests: hard), Product(ProductKind.SodiumCarbonate), Measurand.TotalAlkalinity, 180);
        Assert.Empty(advice.Refused);
        Assert.True(advice.Dose!.FirstKilograms < 0.8 * advice.Dose.Kilograms);
        Assert.Contains(advice.Dose.Because, reason => reason.Code is "dose.cap_clouds" or "dose.cap_step" or "dose.cap_high");
        Assert.True(advice.Dose.Predicted!.AtOnce.SaturationIndex <= 0.5 + 1e-6 || advice.Dose.Predicted.Before.SaturationIndex > 0.5);
    }

    [Fact]
    public void What_is_poured_into_a_small_pool_is_capped_for_that_pool_until_it_has_mixed()
    {
        var learner = Pool with { Id = "learner", Name = "Learner", VolumeCubicMetres = 50 };
        var circuit = Circuit with { Pools = [Pool, learner] };
        var advice = DoseAdvisor.Of(At(learner, circuit), Product(ProductKind.CalciumHypochlorite, 65, to: DosingPlace.Pool), Measurand.FreeChlorine, 2.0);
        Assert.Equal((500, 50), (advice.Volume.Whole, advice.Volume.First));
        // Never above 3 mg/L in the 50 m3 it is poured into: 2.2 mg/L x 50 m3 / 0.65.
        Assert.Equal(50 * 2.2 / 0.65 / 1000, advice.Dose!.FirstKilograms, 1e-3);
        Assert.Contains(advice.Dose.Because, reason => reason.Code == "dose.cap_high");
        Assert.Contains(advice.Says, said => said.Code == "dose.other_pools");
    }

    [Fact]
    public void Dechlorination_takes_the_smallest_step_and_says_the_range()
    {
        var advice = DoseAdvisor.Of(At(tests: With(Measurand.FreeChlorine, 8)), Product(ProductKind.SodiumThiosulfate), Measurand.FreeChlorine, 3);
        Assert.Empty(advice.Refused);
        Assert.Equal(450 * 5 * 0.875 / 1000, advice.Dose!.Kilograms, 0.001);
        Assert.Equal(advice.Dose.Kilograms / 2, advice.Dose.FirstKilograms, 0.001);
        var range = Assert.Single(advice.Dose.SideEffects, said => said.Code == "side.dechlorination_range");
        Assert.Equal((0.875, 7.0), (Math.Round(range.Facts[0].Number!.Value, 3), Math.Round(range.Facts[1].Number!.Value, 3)));
        Assert.Contains(advice.Says, said => said.Code == "dose.smallest_step");
    }

    [Fact]
    public void An_unconfirmed_volume_refuses_and_names_pool_and_tank()
    {
        var pool = Pool with { VolumeConfirmed = null };
        Assert.Equal(["dose.volume_unconfirmed", "dose.tank_not_known"], Codes(DoseAdvisor.Of(
            At(pool, Circuit with { Pools = [pool], BalanceTankConfirmed = null, BalanceTankCubicMetres = null }), Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, 2)));
    }

    [Fact]
    public void A_person_who_is_not_entitled_gets_no_dose() =>
        Assert.Contains("dose.not_entitled", Codes(DoseAdvisor.Of(At() with { Entitlement = default }, Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, 2)));

    [Fact]
    public void Missing_stale_doubted_and_bounded_tests_each_refuse_by_name()
    {
        var product = Product(ProductKind.CalciumHypochlorite);
        string[] Of(ManualValue? chlorine)
        {
            var at = At();
            return Codes(DoseAdvisor.Of(at with { Tests = chlorine is null ? at.Tests.Remove(Measurand.FreeChlorine) : at.Tests.SetItem(Measurand.FreeChlorine, chlorine) }, product, Measurand.FreeChlorine, 2));
        }

        var fresh = At().Tests[Measurand.FreeChlorine];
        Assert.Equal(["dose.test_missing"], Of(null));
        Assert.Equal(["dose.test_suspect"], Of(fresh with { Suspect = true }));
        Assert.Equal(["dose.test_stale"], Of(fresh with { SampledAt = Now - TimeSpan.FromHours(5) }));
        Assert.Equal(["dose.test_is_a_bound"], Of(fresh with { Result = fresh.Result with { Value = 10, Censoring = Censoring.Above } }));
        Assert.Empty(Of(fresh with { Result = fresh.Result with { Value = 0.03, Censoring = Censoring.Below } }));
    }

    [Theory]
    [InlineData(PoolKind.Swimming, Setting.Indoor, Disinfectant.StabilisedChlorine, "dose.stabiliser_indoors")]
    [InlineData(PoolKind.Spa, Setting.Outdoor, Disinfectant.StabilisedChlorine, "dose.stabiliser_warm_pool")]
    [InlineData(PoolKind.Therapy, Setting.Outdoor, Disinfectant.StabilisedChlorine, "dose.stabiliser_warm_pool")]
    [InlineData(PoolKind.Swimming, Setting.Outdoor, Disinfectant.Chlorine, "dose.stabiliser_not_declared")]
    [InlineData(PoolKind.Swimming, Setting.Outdoor, Disinfectant.Bromine, "dose.no_chlorine_in_bromine")]
    public void Stabilised_chlorine_goes_only_where_it_may(PoolKind kind, Setting setting, Disinfectant disinfectant, string code)
    {
        var pool = Pool with { Kind = kind, Setting = setting, Disinfectant = disinfectant };
        foreach (var product in (ProductKind[])[ProductKind.Trichlor, ProductKind.Dichlor, ProductKind.DichlorDihydrate, ProductKind.CyanuricAcid])
        {
            if (product == ProductKind.CyanuricAcid && code == "dose.no_chlorine_in_bromine") continue;
            Assert.Contains(code, ProductFitness.Against(Product(product).Plan, pool).Select(reason => reason.Code));
        }
    }

    [Fact]
    public void Stabilised_chlorine_may_go_into_an_outdoor_pool_declared_for_it() =>
        Assert.Empty(ProductFitness.Against(Product(ProductKind.Trichlor).Plan, Pool with { Setting = Setting.Outdoor, Disinfectant = Disinfectant.StabilisedChlorine }));

    [Theory]
    [InlineData(null, "dose.test_missing")]
    [InlineData(120.0, "dose.stabiliser_enough")]
    [InlineData(50.0, "dose.stabiliser_enough")]
    [InlineData(30.0, null)]
    public void Stabilised_chlorine_needs_a_test_of_cyanuric_acid_and_is_refused_where_there_is_enough(double? cyanurate, string? code)
    {
        var pool = Pool with { Setting = Setting.Outdoor, Disinfectant = Disinfectant.StabilisedChlorine };
        var advice = DoseAdvisor.Of(At(pool, tests: cyanurate is { } c ? With(Measurand.CyanuricAcid, c) : []), Product(ProductKind.Dichlor), Measurand.FreeChlorine, 2);
        Assert.Equal(code is null ? [] : [code], Codes(advice).Where(c => c.StartsWith("dose.stabiliser", StringComparison.Ordinal) || c == "dose.test_missing"));
    }

    [Fact]
    public void A_bromine_pool_gets_no_chlorine_dose_its_readings_times_2_25_and_what_does_not_apply()
    {
        var advice = DoseAdvisor.Of(At(Pool with { Disinfectant = Disinfectant.Bromine }), Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, 2);
        Assert.Equal(["dose.no_chlorine_in_bromine"], Codes(advice));
        Assert.Equal(1.8, Assert.Single(advice.Says, said => said.Code == "dose.bromine_reading").Facts[1].Number!.Value, 1e-9);
        Assert.Contains(advice.Says, said => said.Code == "dose.bromine_does_not_apply");
        Assert.DoesNotContain(advice.Says, said => said.Code == "dose.combined_high");
        // Nor does it hear that pH comes before the chlorine that it must not have.
        var sharp = DoseAdvisor.Of(At(Pool with { Disinfectant = Disinfectant.Bromine }, tests: With(Measurand.Ph, 7.9)), Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, 2);
        Assert.DoesNotContain(sharp.Says, said => said.Code == "dose.ph_first");
    }

    [Fact]
    public void Acid_is_still_worked_out_for_a_bromine_pool() => Assert.Empty(
        DoseAdvisor.Of(At(Pool with { Disinfectant = Disinfectant.Bromine }, tests: With(Measurand.Ph, 7.8)), Product(ProductKind.SodiumBisulfate), Measurand.Ph, 7.4).Refused);

    [Fact]
    public void Nothing_goes_in_by_hand_while_bathers_are_in_or_may_be()
    {
        var product = Product(ProductKind.CalciumHypochlorite);
        Assert.Equal(["dose.bathers_in"], Codes(DoseAdvisor.Of(At() with { BathersOut = false }, product, Measurand.FreeChlorine, 2)));
        Assert.Equal(["dose.bathers_in"], Codes(DoseAdvisor.Of(At() with { BathersOut = null, Bathers = 12 }, product, Measurand.FreeChlorine, 2)));
        Assert.Equal(["dose.bathers_not_known"], Codes(DoseAdvisor.Of(At() with { BathersOut = null, Bathers = null }, product, Measurand.FreeChlorine, 2)));
        Assert.Equal(["dose.bathers_not_known"], Codes(DoseAdvisor.Of(At() with { BathersOut = null, Bathers = 0 }, product, Measurand.FreeChlorine, 2)));
        Assert.Empty(DoseAdvisor.Of(At() with { BathersOut = false }, Product(ProductKind.CalciumHypochlorite, by: DosingWay.Pump), Measurand.FreeChlorine, 2).Refused);
    }

    [Fact]
    public void High_combined_chlorine_means_dilution_first_and_never_a_shock_while_open()
    {
        var tests = With(Measurand.TotalChlorine, 2.2);
        var product = Product(ProductKind.CalciumHypochlorite);
        Assert.Equal(["dose.no_shock_while_open"], Codes(DoseAdvisor.Of(At(tests: tests), product, Measurand.FreeChlorine, 9)));
        var within = DoseAdvisor.Of(At(tests: tests), product, Measurand.FreeChlorine, 2);
        Assert.Empty(within.Refused);
        Assert.Contains(within.Says, said => said.Code == "dose.combined_high");
        // CL-33: the ten-times rule is named (CC 1.4 -> 14 mg/L) and not acted on.
        Assert.Equal(14, Assert.Single(within.Says, said => said.Code == "breakpoint.rule_of_thumb").Facts[0].Number!.Value, 1e-9);
    }

    [Theory]
    [InlineData(3.5, false, "dose.target_outside_limit")]
    [InlineData(12, true, "dose.target_beyond_stop")]
    [InlineData(250, false, "dose.target_impossible")]
    [InlineData(0.8, false, "dose.target_outside_limit")]
    public void A_target_outside_what_is_allowed_is_refused(double target, bool closed, string code) =>
        Assert.Equal([code], Codes(DoseAdvisor.Of(At() with { Closed = closed }, Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, target)));

    [Fact]
    public void Chlorine_into_water_of_high_pH_says_that_pH_comes_first_and_is_not_withheld()
    {
        var advice = DoseAdvisor.Of(At(tests: With(Measurand.Ph, 7.8)), Product(ProductKind.CalciumHypochlorite, 65), Measurand.FreeChlorine, 2);
        Assert.Empty(advice.Refused);
        Assert.Contains(advice.Says, said => said.Code == "dose.ph_first");
    }

    [Fact]
    public void Gas_is_never_added_by_hand() => Assert.Contains(
        "dose.gas_by_hand", Codes(DoseAdvisor.Of(At(tests: With(Measurand.Ph, 7.6)), Product(ProductKind.CarbonDioxide), Measurand.Ph, 7.4)));

    [Fact]
    public void Without_hardness_the_amount_is_given_and_what_is_missing_for_a_prediction_is_said()
    {
        var advice = DoseAdvisor.Of(At(tests: [.. Usual.Where(u => u.Item1 != Measurand.CalciumHardness)]), Product(ProductKind.SodiumBicarbonate), Measurand.TotalAlkalinity, 110);
        Assert.Empty(advice.Refused);
        Assert.Null(advice.Dose!.Predicted);
        Assert.Equal(Measurand.CalciumHardness.Key(), Assert.Single(advice.Says, said => said.Code == "dose.missing_for_prediction").Facts[0].Text);
        Assert.Contains("dose.ph_needs_the_water", Codes(DoseAdvisor.Of(
            At(tests: [.. With(Measurand.Ph, 7.8).Where(u => u.Item1 != Measurand.CalciumHardness)]), Product(ProductKind.HydrochloricAcid), Measurand.Ph, 7.4)));
    }

    [Fact]
    public void Acid_and_chlorine_in_one_store_are_told_apart()
    {
        var at = At() with { Products = [new("acid", "Hydrochloric acid", ProductKind.HydrochloricAcid, 32), new("tri", "Trichlor", ProductKind.Trichlor, 90)] };
        var said = DoseAdvisor.Of(at, Product(ProductKind.CalciumHypochlorite), Measurand.FreeChlorine, 2).Precautions.Select(reason => reason.Code).ToList();
        Assert.Contains("apart.chlorine_gas", said);
        Assert.Contains("apart.fire_and_explosion", said);
    }

    [Fact]
    public void No_go_ever_passes_a_limit_that_the_water_was_inside_of()
    {
        (ProductKind Kind, Measurand Target)[] uses = [.. from kind in Enum.GetValues<ProductKind>() from target in ProductUse.Of(kind) select (kind, target)];
        Gen.Select(Gen.Int[0, uses.Length - 1], Gen.Double[6.9, 8.0], Gen.Double[40, 200], Gen.Double[80, 500], Gen.Double[0.1, 6], Gen.Double[0, 1]).Sample((use, ph, alkalinity, calcium, chlorine, to) =>
        {
            var (kind, target) = uses[use];
            var pool = Pool with { Setting = Setting.Outdoor, Disinfectant = Disinfectant.StabilisedChlorine };
            (Measurand, double)[] tests =
            [
                (Measurand.Ph, ph), (Measurand.Temperature, 27), (Measurand.FreeChlorine, chlorine), (Measurand.TotalAlkalinity, alkalinity), (Measurand.CalciumHardness, calcium),
                (Measurand.CyanuricAcid, 30), (Measurand.DissolvedSolids, 1200),
            ];
            var value = target switch { Measurand.Ph => 7.2 + (0.4 * to), Measurand.FreeChlorine => 1 + (2 * to), _ => 20 + (400 * to) };
            var advice = DoseAdvisor.Of(At(pool, tests: tests), Product(kind, by: DosingWay.Pump), target, value);
            if (advice.Dose is not { Predicted: { } dosed } dose) return;
            Assert.InRange(dose.FirstKilograms, 0, dose.Kilograms * (1 + 1e-9));
            var after = dosed.AtOnce;
            if (ph is >= 7.2 and <= 7.6) Assert.InRange(after.Ph, 7.2 - 0.0501, 7.6 + 0.0501);
            Assert.True(Math.Abs(after.Ph - ph) <= DoseLimits.MostPhStep + 1e-6);
            if (chlorine <= 3) Assert.True(after.FreeChlorine <= 3.1001);
            if (dosed.Before.SaturationIndex is > -0.5 and < 0.5) Assert.InRange(after.SaturationIndex, -0.5501, 0.5501);
        }, iter: 2000);
    }
}
