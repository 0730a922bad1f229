using System.Collections.Immutable;
using CsCheck;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Rules.Packs.PrintedRows;

namespace PlantWatch.Core.Tests.Rules.Packs;

/// <summary>Which limits hold for a pool: rows as printed, conditions that compute, nothing unconfirmed, and never a laxer row instead.</summary>
public sealed class LimitsMakerTests
{
    private static readonly PoolPlan Bare = Hall.Plan.Pools[0] with { Limits = [] };

    [Fact]
    public void A_row_that_nobody_confirmed_limits_nothing_and_is_counted()
    {
        var limits = LimitsMaker.Of(Plan(Bare, IndoorMinimum, PhBand), Bare, Confirmed(PhBand), default);
        Assert.Null(limits.Find(PackQuantity.FreeChlorine, RowGrade.Operating));
        Assert.NotNull(limits.Find(PackQuantity.Ph, RowGrade.Operating));
        Assert.Equal(LimitsWord.Unconfirmed, limits.Word);
        Assert.Equal("fc-indoor", Assert.Single(limits.Unconfirmed));
    }

    [Fact]
    public void A_row_whose_figure_changed_since_waits_to_be_confirmed_anew()
    {
        var limits = LimitsMaker.Of(Plan(Bare, IndoorMinimum with { Low = 1.5 }), Bare, Confirmed(IndoorMinimum), default);
        Assert.Equal("fc-indoor", Assert.Single(limits.Unconfirmed));
        // Its words and source are no figures.
        Assert.Equal(LimitsWord.InForce, LimitsMaker.Of(Plan(Bare, IndoorMinimum with { Says = "in other words" }), Bare, Confirmed(IndoorMinimum), default).Word);
    }

    [Theory]
    [InlineData(7.6, 2.0)]
    [InlineData(7.61, 3.0)]
    [InlineData(7.2, 2.0)]
    public void Above_pH_7_6_the_minimum_rises_by_one(double ph, double low) =>
        Assert.Equal(low, Free(Of([IndoorMinimum, RaisedAbove76], water: new(Ph.From(ph), null, null)))!.Low);

    [Fact]
    public void A_minimum_that_surely_rises_does_so_even_above_the_highest_value()
    {
        var narrow = IndoorMinimum with { High = 2.5 };
        Assert.Equal(3.0, Free(Of([narrow, RaisedAbove76], water: new(Ph.From(7.8), null, null)))!.Low);
        var unknown = Of([narrow, RaisedAbove76]);
        Assert.Equal((2.0, "fc-high-ph"), (Free(unknown)!.Low, Assert.Single(unknown.Undecided).RowId));
    }

    [Fact]
    public void With_pH_unknown_the_minimum_is_the_higher_one() => Assert.Equal(3.0, Free(Of([IndoorMinimum, RaisedAbove76]))!.Low);

    [Fact]
    public void A_row_for_spas_holds_for_spas_and_where_the_plan_does_not_say()
    {
        Assert.Null(Free(Of([SpaMinimum])));
        Assert.Equal(3.0, Free(Of([SpaMinimum], Bare with { Kind = PoolKind.Spa }))!.Low);
        Assert.Equal(3.0, Free(Of([SpaMinimum], Bare with { Kind = PoolKind.Unknown }))!.Low);
    }

    [Theory]
    [InlineData(0.0, 0.4, 1.4)]
    [InlineData(14.9, 0.4, 1.4)]
    [InlineData(15.0, 2.0, 5.0)]
    public void Cyanurate_decides_between_two_rows(double cyanurate, double low, double high)
    {
        var bound = Free(Of([ActiveBelow15, AvailableFrom15], water: new(null, CyanuricAcid.From(cyanurate), null)))!;
        Assert.Equal((low, high), (bound.Low, bound.High));
    }

    [Fact]
    public void Two_rows_that_exclude_each_other_are_not_both_taken_while_nobody_knows_and_the_missing_test_is_named()
    {
        var limits = Of([ActiveBelow15, AvailableFrom15], Bare with { Disinfectant = Disinfectant.SaltElectrolysis });
        var undecided = Assert.Single(limits.Undecided);
        Assert.Equal(("fc-cya", "cyanuric_acid"), (undecided.RowId, undecided.Needs));
        Assert.True(Free(limits)!.Low <= Free(limits)!.High);
    }

    [Theory]
    [InlineData(26.0, 1.0)]
    [InlineData(26.1, 2.0)]
    [InlineData(null, 2.0)]
    public void Warm_water_needs_more_and_unknown_counts_as_warm(double? celsius, double low) =>
        Assert.Equal(low, Free(Of([CoolUnstabilised, WarmUnstabilised], water: new(null, null, celsius is { } c ? Celsius.From(c) : null)))!.Low);

    [Fact]
    public void An_ORP_limit_against_another_electrode_is_converted()
    {
        // 244 less 207 mV at 25 degC (published table of potentials): 720 mV against calomel are 757 against Ag/AgCl 3 M.
        var bound = Of([Orp720]).Find(PackQuantity.Orp, RowGrade.Operating)!;
        Assert.Equal(757, bound.Low!.Value, 1.0);
    }

    [Theory]
    [InlineData("Ag/AgCl 3 M", 720.0, 0.0)]
    [InlineData("Ag/AgCl 3.5 M", 722.0, 2.0)]
    [InlineData("Ag/AgCl sat.", 728.0, 8.0)]
    public void An_ORP_row_that_leaves_the_filling_out_is_taken_at_its_stricter_end_and_says_so(string own, double low, double above)
    {
        // 207, 205 and 199 mV at 25 degC (published tables of potentials): the fillings lie 8 mV apart.
        var plan = Plan(Bare, Orp720 with { When = new() { ReferenceElectrode = "Ag/AgCl" } }) is var p ? p with { Probes = [.. p.Probes.Select(b => b.Measurand == Measurand.Orp ? b with { ReferenceElectrode = own } : b)] } : null!;
        var limits = LimitsMaker.Of(plan, Bare, Confirmed([.. plan.Pack!.Rows]), default);
        Assert.Equal(low, limits.Find(PackQuantity.Orp, RowGrade.Operating)!.Low!.Value, 1e-9);
        Assert.Empty(limits.Undecided);
        var turned = Assert.Single(limits.Turned);
        Assert.Equal(("Ag/AgCl", own, 8.0, 720 + above), (turned.Against, turned.Own, turned.Spread, turned.Low));
    }

    [Fact]
    public void Beside_a_row_against_calomel_the_one_that_leaves_the_filling_out_is_the_one_for_silver_chloride()
    {
        // As one guideline prints the pair: 720 mV against silver/silver chloride, 680 against calomel (from memory).
        var limits = Of([Orp720 with { Id = "silver", When = new() { ReferenceElectrode = "Ag/AgCl" } }, Orp720 with { Low = 680 }]);
        Assert.Equal((720.0, "silver"), limits.Find(PackQuantity.Orp, RowGrade.Operating) is { } b ? (b.Low, b.LowFrom) : default);
    }

    [Fact]
    public void An_ORP_row_that_names_no_electrode_is_taken_as_the_strictest_that_probes_carry()
    {
        // 650 mV against calomel are 687 against Ag/AgCl 3 M: 244 less 207.
        var limits = Of([Orp720 with { Low = 650, When = new() { ToJudge = "against which electrode" } }]);
        Assert.Equal(687, limits.Find(PackQuantity.Orp, RowGrade.Operating)!.Low!.Value, 1e-9);
        Assert.Equal(("", 45.0), (Assert.Single(limits.Turned).Against, limits.Turned[0].Spread));
    }

    [Fact]
    public void An_ORP_limit_against_an_electrode_that_no_table_knows_is_not_watched_and_says_so()
    {
        var limits = Of([Orp720 with { When = new() { ReferenceElectrode = "Ag/AgCl 1 M" } }]);
        Assert.Null(limits.Find(PackQuantity.Orp, RowGrade.Operating));
        Assert.Equal("reference_electrode", Assert.Single(limits.Undecided).Needs);
    }

    [Fact]
    public void A_pool_without_an_ORP_probe_lists_its_ORP_row_and_waits_for_nothing_but_the_tests_by_hand()
    {
        var plan = Plan(Bare, Orp720, PhBand) is var p ? p with { Probes = [.. p.Probes.Where(b => b.Measurand != Measurand.Orp)] } : null!;
        var limits = LimitsMaker.Of(plan, Bare, [], default);
        Assert.Equal((LimitsWord.Unconfirmed, "ph", "orp"), (limits.Word, Assert.Single(limits.Unconfirmed), Assert.Single(limits.NotMeasured)));
        // Confirmed or not, there is nothing to watch it by, and nothing is called watched.
        foreach (var confirmed in new[] { Confirmed(PhBand), Confirmed(PhBand, Orp720) })
        {
            limits = LimitsMaker.Of(plan, Bare, confirmed, default);
            Assert.Equal((LimitsWord.InForce, "orp"), (limits.Word, Assert.Single(limits.NotMeasured)));
            Assert.Null(limits.Find(PackQuantity.Orp, RowGrade.Operating));
            Assert.Empty(limits.Undecided);
        }
    }

    [Fact]
    public void What_is_tested_by_hand_counts_without_a_probe_and_so_does_an_ORP_that_the_authority_demands()
    {
        var plan = Plan(Bare, IndoorMinimum, Orp720 with { MustBeMeasured = true }) with { Probes = [] };
        Assert.Equal("fc-indoor orp", string.Join(" ", LimitsMaker.Of(plan, Bare, [], default).Unconfirmed));
        var limits = LimitsMaker.Of(plan, Bare, Confirmed([.. plan.Pack!.Rows]), default);
        Assert.Equal("orp_probe", Assert.Single(limits.Undecided).Needs);
    }

    [Fact]
    public void An_ORP_that_is_a_duty_by_hand_counts()
    {
        var byHand = Bare with { Duties = [new([Measurand.Orp], [new(7, 0)])] };
        var plan = Plan(byHand, Orp720) with { Probes = [] };
        Assert.Equal("orp", Assert.Single(LimitsMaker.Of(plan, byHand, [], default).Unconfirmed));
    }

    [Fact]
    public void The_plant_may_tighten_and_its_looser_end_does_not_count()
    {
        var pool = Bare with { Limits = [new(Measurand.FreeChlorine, 1.0, 3.0, "own sheet")] };
        var bound = Free(Of([IndoorMinimum], pool))!;
        Assert.Equal((2.0, "fc-indoor", 3.0, ""), (bound.Low, bound.LowFrom, bound.High, bound.HighFrom));
    }

    [Theory]
    [InlineData(null, 4.0, 2.0, "fc-indoor", 3.5, "fc-indoor")]
    [InlineData(null, 3.0, 2.0, "fc-indoor", 3.0, "")]
    [InlineData(2.5, null, 2.5, "", 3.5, "fc-indoor")]
    [InlineData(2.0, 3.5, 2.0, "fc-indoor", 3.5, "fc-indoor")]
    public void Each_end_is_the_tighter_of_the_two_and_says_whose_it_is(double? low, double? high, double then, string from, double upTo, string whose)
    {
        var bound = Free(Of([IndoorMinimum with { High = 3.5 }], Bare with { Limits = [new(Measurand.FreeChlorine, low, high, "own sheet")] }))!;
        Assert.Equal((then, from, upTo, whose), (bound.Low, bound.LowFrom, bound.High, bound.HighFrom));
    }

    [Fact]
    public void Where_the_pack_has_no_upper_end_the_plants_own_is_one()
    {
        var bound = Free(Of([IndoorMinimum], Bare with { Limits = [new(Measurand.FreeChlorine, null, 3, "own sheet")] }))!;
        Assert.Equal((2.0, "fc-indoor", 3.0, ""), (bound.Low, bound.LowFrom, bound.High, bound.HighFrom));
    }

    [Fact]
    public void Who_loosens_one_end_leaves_the_other_to_the_pack()
    {
        var row = IndoorMinimum with { High = 3.5 };
        LimitBound Loosened(double? low, double? high) => Free(Of([row], Bare with { Limits = [new(Measurand.FreeChlorine, low, high, "own sheet", LoosenedBy: "E. Example", LoosenedWhy: "a letter")] }))!;
        Assert.Equal((1.0, "", 3.5, "fc-indoor"), Loosened(1, null) is var b ? (b.Low, b.LowFrom, b.High, b.HighFrom) : default);
        Assert.Equal((2.0, "fc-indoor", 5.0, ""), Loosened(null, 5) is var c ? (c.Low, c.LowFrom, c.High, c.HighFrom) : default);
    }

    [Theory]
    [InlineData(Disinfectant.Bromine, true)]
    [InlineData(Disinfectant.Unknown, true)]
    [InlineData(Disinfectant.Chlorine, false)]
    public void A_bromine_row_limits_where_bromine_may_be(Disinfectant disinfectant, bool limits) =>
        Assert.Equal(limits, LimitsMaker.IsLimit(Row("br", PackQuantity.Bromine, 3, 6, "a page"), Bare with { Disinfectant = disinfectant }));

    [Theory]
    [InlineData(7.6, null, null, "ph")]
    [InlineData(null, 26.0, null, "temperature")]
    [InlineData(null, null, true, "cyanuric_acid")]
    public void A_row_that_cannot_be_taken_says_which_test_would_decide_it(double? phAbove, double? warmAbove, bool? cyanurate, string needs)
    {
        // Beside a maximum of 0.5 a minimum of 2 leaves nothing, and whether it holds is not known.
        var may = Row("may", PackQuantity.FreeChlorine, 2, null, "a page") with { When = new() { PhAbove = phAbove, TemperatureAbove = warmAbove, CyanurateUsed = cyanurate } };
        var most = Row("most", PackQuantity.FreeChlorine, null, 0.5, "a page");
        var limits = Of([most, may], Bare with { Disinfectant = Disinfectant.SaltElectrolysis });
        Assert.Equal(("may", needs), Assert.Single(limits.Undecided) is var u ? (u.RowId, u.Needs) : default);
    }

    [Theory]
    [InlineData(Disinfectant.StabilisedChlorine, null, Holds.Yes)]
    [InlineData(Disinfectant.StabilisedChlorine, 3.0, Holds.Yes)]
    [InlineData(Disinfectant.Chlorine, 10.0, Holds.Yes)]
    [InlineData(Disinfectant.Chlorine, 9.9, Holds.No)]
    [InlineData(Disinfectant.Chlorine, null, Holds.No)]
    [InlineData(Disinfectant.Bromine, null, Holds.No)]
    [InlineData(Disinfectant.SaltElectrolysis, null, Holds.Unknown)]
    [InlineData(Disinfectant.SaltElectrolysis, 3.0, Holds.No)]
    public void Whether_water_holds_cyanurate_is_told_by_a_test_or_by_how_it_is_disinfected(Disinfectant disinfectant, double? cyanurate, Holds holds) =>
        Assert.Equal(holds, ConditionCheck.UsesCyanurate(Bare with { Disinfectant = disinfectant }, new(null, cyanurate is { } c ? CyanuricAcid.From(c) : null, null)));

    [Theory]
    [InlineData(PoolKind.Spa, Holds.No)]
    [InlineData(PoolKind.Swimming, Holds.Yes)]
    [InlineData(PoolKind.Unknown, Holds.Unknown)]
    public void A_row_for_all_pools_but_spas_holds_for_the_others_and_may_where_the_plan_does_not_say(PoolKind kind, Holds holds) =>
        Assert.Equal(holds, ConditionCheck.Of(new() { NotKinds = [PoolKind.Spa] }, Bare with { Kind = kind }, default));

    [Fact]
    public void Unstabilised_water_that_nobody_tested_is_below_any_figure_of_cyanurate()
    {
        PackCondition below = new() { CyanurateBelow = 0.5 }, from = new() { CyanurateFrom = 0.5 };
        Assert.Equal((Holds.Yes, Holds.No), (ConditionCheck.Of(below, Bare, default), ConditionCheck.Of(from, Bare, default)));
    }

    [Fact]
    public void One_of_several_duties_by_hand_is_enough_to_measure_by()
    {
        var byHand = Bare with { Duties = [new([Measurand.Ph], [new(7, 0)]), new([Measurand.Ph, Measurand.Orp], [new(7, 0)])] };
        Assert.True(LimitsMaker.IsMeasured(Orp720, Hall.Plan with { Probes = [] }, byHand));
    }

    [Fact]
    public void Loosening_needs_an_engineer_by_name_and_a_reason()
    {
        LimitPlan looser = new(Measurand.FreeChlorine, 1.0, null, "own sheet", LoosenedBy: "e. example", LoosenedWhy: "the authority's letter of 3 May");
        Assert.Equal(1.0, Free(Of([IndoorMinimum], Bare with { Limits = [looser] }))!.Low);
        Assert.Equal(2.0, Free(Of([IndoorMinimum], Bare with { Limits = [looser with { LoosenedWhy = " " }] }))!.Low);
        Assert.Equal(2.0, Free(Of([IndoorMinimum], Bare with { Limits = [looser with { LoosenedBy = "O. Example" }] }))!.Low);
        // A closure limit is touched by nobody.
        Assert.Equal(2.0, Of([IndoorMinimum with { Grade = RowGrade.Closure }], Bare with { Limits = [looser] }).Find(PackQuantity.FreeChlorine, RowGrade.Closure)!.Low);
    }

    [Fact]
    public void What_a_value_is_held_against_is_the_strictest_of_operating_closure_and_the_plants_own()
    {
        var pool = Bare with { Limits = [new(Measurand.Ph, 7.2, 7.9, "own sheet")] };
        var limits = Of([PhBand with { High = 8.2 }, PhClosure], pool);
        // The plant's 7.2 to 7.9 within 7.0 to 8.2, closed outside 6.5 to 8.0.
        Assert.Equal((7.2, 7.9), limits.Ends(Measurand.Ph));
        Assert.Equal((null, 8.0), Of([PhClosure with { Low = null }, PhBand with { Low = null, High = 8.2 }]).Ends(Measurand.Ph));
        Assert.Equal((null, null), limits.Ends(Measurand.FreeChlorine));
        Assert.Equal((null, null), limits.Ends(Measurand.SampleFlow));
    }

    [Fact]
    public void Without_a_pack_the_plants_own_limits_hold() =>
        Assert.Equal(LimitsWord.OwnOnly, LimitsMaker.Of(Hall.Plan, Hall.Plan.Pools[0], [], default).Word);

    [Fact]
    public void A_guide_row_and_a_sentence_wait_for_nobody_and_limit_nothing() =>
        Assert.Equal((LimitsWord.InForce, 0), LimitsMaker.Of(Plan(Bare, PhBand with { Grade = RowGrade.Guide }, Row("x", PackQuantity.Sentence, null, null, "a page")), Bare, [], default) is var l ? (l.Word, l.Bounds.Length) : default);

    private static readonly Gen<PackRow> AnyRow =
        from quantity in Gen.Bool.Select(b => b ? PackQuantity.FreeChlorine : PackQuantity.Ph)
        from low in Gen.Double[0, 5]
        from span in Gen.Double[0, 5]
        from grade in Gen.Bool.Select(b => b ? RowGrade.Operating : RowGrade.Closure)
        from above in Gen.Double[5.5, 8.5].Select(v => v < 6.5 ? (double?)null : v)
        from indoor in Gen.Bool
        select new PackRow
        {
            Id = "", Quantity = quantity, Grade = grade, Low = low, High = low + span, Says = "", Source = "",
            When = new() { PhAbove = above, Setting = indoor ? Setting.Indoor : null },
        };

    [Fact]
    public void One_row_more_confirmed_never_loosens_what_was_watched() =>
        Gen.Select(AnyRow.Array[1, 6], Gen.Int[0, 5], Gen.Double[6.5, 8.5]).Sample((made, which, ph) =>
        {
            var rows = made.Select((r, i) => r with { Id = $"r{i}" }).ToArray();
            var one = rows[which % rows.Length];
            var plan = Plan(Bare, rows);
            var water = new WaterFacts(Ph.From(ph), null, null);
            var before = LimitsMaker.Of(plan, Bare, Confirmed([.. rows.Where(r => r != one)]), water);
            var after = LimitsMaker.Of(plan, Bare, Confirmed(rows), water);
            foreach (var bound in before.Bounds)
            {
                var now = after.Find(bound.Quantity, bound.Grade);
                Assert.True(now is not null && !(now.Low < bound.Low) && !(now.High > bound.High));
            }
        }, iter: 20_000);

    private static LimitsInForce Of(PackRow[] rows, PoolPlan? pool = null, WaterFacts water = default) =>
        LimitsMaker.Of(Plan(pool ?? Bare, rows), pool ?? Bare, Confirmed(rows), water);

    private static LimitBound? Free(LimitsInForce limits) => limits.Find(PackQuantity.FreeChlorine, RowGrade.Operating);

    private static CircuitPlan Plan(PoolPlan pool, params PackRow[] rows) => Hall.Plan with
    {
        Pools = [pool, .. Hall.Plan.Pools.Skip(1)], Pack = Pack(rows),
        People = [new("e", "E. Example", PersonRole.Engineer), new("o", "O. Example", PersonRole.Operator)],
    };

    private static ImmutableArray<RowConfirmation> Confirmed(params PackRow[] rows) =>
        [.. rows.Select(r => new RowConfirmation("made-up", r.Id, RowDigest.Of(r), "E. Example", Hall.Nine, "the regulation, schedule 1"))];
}
