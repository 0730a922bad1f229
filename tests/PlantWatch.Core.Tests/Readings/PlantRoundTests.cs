using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The daily round through the plant room: what it takes in, when it is due, what its readings mean.</summary>
public sealed class PlantRoundTests
{
    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        BalanceTankCubicMetres = 25,
        Filters = [new("sand", "Sand filter", 4) { CleanKilopascals = 30 }, new("basket", "Strainer", null) { Kind = FilterKind.Strainer }],
    };

    [Fact]
    public void A_plant_that_names_no_items_is_walked_by_what_its_plan_knows() => Assert.Equal(
        ["filter_inlet/sand", "filter_outlet/sand", "strainer/basket", "circulation", "balance_tank", "make_up_meter", "sample_flow/main", "sample_flow/learner", "eyewash"],
        Plan.RoundInForce.Items.Select(i => i.Id));

    [Fact]
    public void A_round_is_due_once_on_each_day_of_the_site_and_late_two_hours_after_its_time()
    {
        var (round, zone) = (new RoundPlan(new TimeOnly(9, 0), []), "Europe/London");
        // Hall.Nine is 09:00 on the site's clock, 08:00 in UTC.
        Assert.Equal((RoundWord.Due, Hall.Nine), RoundDue.At(round, RoundStanding.None, zone, Hall.Nine - TimeSpan.FromHours(8.9)));
        Assert.Equal(RoundWord.Due, RoundDue.At(round, RoundStanding.None, zone, Hall.Nine + RoundDue.Allowance).Word);
        Assert.Equal(RoundWord.Overdue, RoundDue.At(round, RoundStanding.None, zone, Hall.Nine + RoundDue.Allowance + TimeSpan.FromMinutes(1)).Word);
        var walked = RoundStanding.None with { WalkedAt = Hall.Nine - TimeSpan.FromHours(3) };
        Assert.Equal(RoundWord.Walked, RoundDue.At(round, walked, zone, Hall.Nine + TimeSpan.FromHours(14.9)).Word);
        // Midnight of the site is 23:00 in UTC: the next day asks for its own.
        Assert.Equal(RoundWord.Due, RoundDue.At(round, walked, zone, Hall.Nine + TimeSpan.FromHours(15.1)).Word);
    }

    [Fact]
    public void A_weekly_look_is_wanted_when_its_week_will_have_passed_before_tomorrow()
    {
        var weekly = new RoundItemPlan("eyewash", RoundItem.Eyewash, RoundReadingKind.Works) { Every = RoundPlan.Weekly };
        var done = RoundStanding.None.With(Round([new("eyewash", null, true, null)], Hall.Nine));
        Assert.True(RoundDue.Wants(weekly, RoundStanding.None, Hall.Nine));
        Assert.False(RoundDue.Wants(weekly, done, Hall.Nine + TimeSpan.FromDays(5.9)));
        Assert.True(RoundDue.Wants(weekly, done, Hall.Nine + TimeSpan.FromDays(6.1)));
        Assert.True(RoundDue.Wants(weekly with { Every = null }, done, Hall.Nine));
    }

    [Fact]
    public void What_is_read_is_held_against_the_plan_and_the_round_before()
    {
        var bench = new Bench(Plan);
        Walk(bench, new RoundReading("make_up_meter", 1204, null, null));
        bench.Skip(TimeSpan.FromDays(2));
        bench.Run(at => new BathersCounted(at, new(Guid.CreateVersion7(), "main", new DateOnly(2026, 5, 6), 150, "R. Example")));
        bench.Run(at => new BathersCounted(at, new(Guid.CreateVersion7(), "main", new DateOnly(2026, 5, 6), 200, "R. Example")));
        var entry = Walk(bench, new RoundReading("filter_inlet/sand", 132, null, null), new("filter_outlet/sand", 50, null, null), new("make_up_meter", 1207, null, null), new("eyewash", null, false, "no water"));
        // Across 82 kPa, 30 when clean: a wash is due at 50 over clean (FilterPlan.UsualRise, common practice).
        Assert.Equal(("round.wash_due", 82.0), (Line(entry, "filter_outlet/sand").Says[0].Code, Line(entry, "filter_outlet/sand").Says[0].Facts[0].Number));
        // 200 bathers ask for 6 m3 at 30 L each (WHO 2006, second hand); of two counts for a day the newest is taken.
        var madeUp = Line(entry, "make_up_meter").Says[0];
        Assert.Equal(("round.made_up", 3.0, 200.0, 6.0, FreshWater.LitresPerBather), (madeUp.Code, madeUp.Facts[0].Number, madeUp.Facts[1].Number, madeUp.Facts[2].Number, madeUp.Facts[3].Number));
        Assert.Equal(("round.safety_out", true), (Line(entry, "eyewash").Says[0].Code, Line(entry, "eyewash").IsOut));
    }

    [Fact]
    public void Who_bathed_after_a_round_that_is_told_late_is_none_of_its_bathers()
    {
        var bench = new Bench(Plan);
        Walk(bench, new RoundReading("make_up_meter", 1204, null, null));
        bench.Skip(TimeSpan.FromDays(3));
        Bathe(bench);
        var told = Line(WalkAt(bench, bench.Now - TimeSpan.FromDays(1), new RoundReading("make_up_meter", 1207, null, null)), "make_up_meter").Says[0];
        // From nine on the 5th to nine on the 7th: the 5th and the 6th, whose bathers came after nine. Those of the 7th are still to come.
        Assert.Equal(("round.made_up", 110.0), (told.Code, told.Facts[1].Number));
    }

    [Theory]
    // The first reading at nine or at 21:00 of the 5th, the second at the same or the other end of the 7th.
    [InlineData(0, 48, 110)]
    [InlineData(0, 60, 1110)]
    [InlineData(12, 48, 100)]
    [InlineData(12, 60, 1100)]
    // Noon itself is afternoon.
    [InlineData(0, 51, 1110)]
    public void A_days_bathers_are_before_a_reading_of_the_afternoon_and_after_one_of_the_morning(double first, double second, double bathers)
    {
        var bench = new Bench(Plan);
        var nine = bench.Now;
        bench.Skip(TimeSpan.FromDays(4));
        Bathe(bench);
        WalkAt(bench, nine + TimeSpan.FromHours(first), new RoundReading("make_up_meter", 1204, null, null));
        var told = Line(WalkAt(bench, nine + TimeSpan.FromHours(second), new RoundReading("make_up_meter", 1207, null, null)), "make_up_meter").Says[0];
        Assert.Equal(("round.made_up", bathers), (told.Code, told.Facts[1].Number));
    }

    [Fact]
    public void Yesterdays_count_is_this_mornings_and_todays_is_not_waited_for()
    {
        var bench = new Bench(Plan);
        Walk(bench, new RoundReading("make_up_meter", 1204, null, null));
        bench.Run(at => new BathersCounted(at, new(Guid.CreateVersion7(), "main", new DateOnly(2026, 5, 5), 150, "R. Example")));
        bench.Skip(TimeSpan.FromDays(1));
        var told = Line(Walk(bench, new RoundReading("make_up_meter", 1209, null, null)), "make_up_meter").Says[0];
        Assert.Equal(("round.made_up", 150.0), (told.Code, told.Facts[1].Number));
    }

    [Fact]
    public void A_meter_that_went_back_was_misread_and_without_bathers_the_amount_is_told_alone()
    {
        var bench = new Bench(Plan);
        Walk(bench, new RoundReading("make_up_meter", 1204, null, null));
        bench.Skip(TimeSpan.FromDays(1));
        Assert.Equal("round.metered", Line(Walk(bench, new RoundReading("make_up_meter", 1205, null, null)), "make_up_meter").Says[0].Code);
        var back = Line(Walk(bench, new RoundReading("make_up_meter", 1105, null, null)), "make_up_meter");
        Assert.Equal(("round.meter_back", true), (back.Says[0].Code, back.IsOut));
    }

    [Theory]
    [InlineData("none", 5.0, null, "round.item_unknown")]
    [InlineData("circulation", null, null, "round.impossible")]
    [InlineData("circulation", -1.0, null, "round.impossible")]
    [InlineData("balance_tank", 900.0, null, "round.impossible")]
    [InlineData("eyewash", null, null, "round.say_whether")]
    public void A_reading_that_cannot_be_is_turned_down_with_its_place(string item, double? value, bool? works, string code)
    {
        var no = Assert.IsType<Outcome.TurnedDown>(new Bench(Plan).Run(at => new PlantRoundDone(at, Round([new("strainer/basket", null, true, null), new(item, value, works, null)], at))));
        Assert.Equal(("readings[1]", code), (no.Remarks[0].Field, no.Remarks[0].Reason.Code));
    }

    [Fact]
    public void A_round_needs_a_name_a_time_and_something_that_was_read_or_seen()
    {
        var bench = new Bench(Plan);
        string? Code(Func<PlantRound, PlantRound> change) => bench.Run(at => new PlantRoundDone(at, change(Round([new("circulation", 80, null, null)], at)))) is Outcome.TurnedDown no ? no.Remarks[0].Reason.Code : null;
        Assert.Equal("field.required", Code(r => r with { By = " " }));
        Assert.Equal("round.walked_astray", Code(r => r with { WalkedAt = r.WalkedAt + TimeSpan.FromHours(1) }));
        Assert.Equal("round.walked_astray", Code(r => r with { WalkedAt = r.WalkedAt - TimeSpan.FromDays(40) }));
        Assert.Equal("round.empty", Code(r => r with { Readings = [] }));
        Assert.Equal("round.item_twice", Code(r => r with { Readings = [r.Readings[0], r.Readings[0]] }));
        Assert.Null(Code(r => r with { Readings = [], Remark = "smells of chlorine" }));
    }

    [Fact]
    public void A_round_is_kept_once_comes_back_from_the_journal_and_a_restart_and_a_late_one_changes_no_newer_reading()
    {
        var bench = new Bench(Plan);
        var round = Round([new("circulation", 80, null, null)], bench.Now);
        Assert.IsType<Outcome.Done>(bench.Run(at => new PlantRoundDone(at, round)));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new PlantRoundDone(at, round)));
        var read = Assert.IsType<PlantRoundDone>(JournalCodec.Read(JournalCodec.Write(bench.Events))[^1]);
        Assert.True(read.Round.SaysWhat(round));
        WalkAt(bench, bench.Now - TimeSpan.FromDays(1), new RoundReading("circulation", 60, null, null));
        bench.Restart();
        Assert.Equal((80.0, round.WalkedAt), (bench.State.Round.LastOf("circulation")!.Reading.Value, bench.State.Round.WalkedAt));
        Assert.Single(bench.Entries.Select(e => e.Body).OfType<RoundEntry>(), e => e.Round.Id == round.Id);
    }

    [Fact]
    public void A_plant_that_names_its_own_items_is_walked_by_them()
    {
        var own = new RoundPlan(new TimeOnly(8, 0), [new("uv", RoundItem.UltravioletIntensity, RoundReadingKind.Percent) { Low = 60 }]);
        var bench = new Bench(Plan);
        bench.Load(Plan with { Round = own });
        Assert.Contains(bench.Entries.Select(e => e.Body).OfType<PlanEntry>().Last().Effects, e => e.Code == "plan.round_changed");
        Assert.Equal("round.below", Line(Walk(bench, new RoundReading("uv", 55, null, null)), "uv").Says[0].Code);
        Assert.Empty(Line(Walk(bench, new RoundReading("uv", 60, null, null)), "uv").Says);
    }

    // One more nought on each day, so that the sum says which days are in it.
    private static void Bathe(Bench bench)
    {
        foreach (var (day, number) in new[] { (4, 1), (5, 10), (6, 100), (7, 1000), (8, 10_000) })
            bench.Run(at => new BathersCounted(at, new(Guid.CreateVersion7(), "main", new DateOnly(2026, 5, day), number, "R. Example")));
    }

    private static PlantRound Round(ImmutableArray<RoundReading> readings, Instant at) => new(TimeOrderedId.Derive(at, $"round {readings.Length}"), at, "R. Example", readings, null);

    private static RoundEntry Walk(Bench bench, params RoundReading[] readings) => WalkAt(bench, bench.Now, readings);

    private static RoundEntry WalkAt(Bench bench, Instant walkedAt, params RoundReading[] readings)
    {
        Assert.IsType<Outcome.Done>(bench.Run(at => new PlantRoundDone(at, Round([.. readings], at) with { WalkedAt = walkedAt })));
        return bench.Entries.Select(e => e.Body).OfType<RoundEntry>().Last();
    }

    private static RoundLine Line(RoundEntry entry, string item) => entry.Lines.Single(l => l.Reading.ItemId == item);
}
