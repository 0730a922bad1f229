using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Stock.StockBench;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>The stock book, worked out by hand beside each test.</summary>
public sealed class StockBookTests
{
    [Fact]
    public void Deliveries_refills_doses_and_counts_add_up()
    {
        var bench = new Bench(Plan);
        // Opening stock by a count against a book of nothing: 60. Four drums of 25 L come: 160. Two are put into the tank: 110.
        bench.Write(bench.Count("hypo", null, 60, 0));
        bench.Write(bench.Delivery("hypo", null, 100) with { Containers = 4, Price = 120 });
        bench.Write(bench.Delivery("hypo", "hypo-pump", 50) with { Act = StockAct.Refilled });
        Assert.Equal(110, bench.Store("hypo"), 1e-9);
        // No level is measured there: the tank holds by the book what was put in.
        Assert.Equal(50, bench.Tank("hypo-pump").Book);
        // Counted 105 where the book says 110: the difference of -5 is a row of its own, and nothing before it is changed.
        bench.Write(bench.Count("hypo", null, 105, 110));
        Assert.Equal(105, bench.Store("hypo"), 1e-9);
        Assert.Equal([60.0, 100, 50, 105], bench.Entries.Select(e => e.Body).OfType<StockEntry>().Select(e => e.Move.Amount));
        // 120 for 100 L are 1.20 a litre, and that goes before the 1.00 of the plant file.
        Assert.Equal(1.2, StockSheet.Of(Hypo, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores, new(2026, 5, 5)).UnitPrice!.Value, 1e-9);
    }

    [Fact]
    public void A_dose_by_hand_is_taken_from_the_store_with_its_cost_and_a_correction_puts_it_back()
    {
        var bench = new Bench(Plan);
        bench.Write(bench.Count("bicarb", null, 100, 0));
        var dose = new GivenDose { Id = TimeOrderedId.Derive(bench.Now, "dose"), PoolId = "main", ProductId = "bicarb", Product = "Bicarbonate", Kilograms = 12, GivenAt = bench.Now, By = "R. Example" };
        bench.Run(at => new DoseGiven(at, dose));
        Assert.Equal(88, bench.Store("bicarb"), 1e-9);
        // 12 kg at 1.10 are 13.20.
        var use = Assert.Single(bench.Entries.Select(e => e.Body).OfType<UseEntry>()).Use;
        Assert.Equal((12.0, StockUnit.Kilogram, UseSource.Hand, 13.2), (use.Amount, use.Unit, use.Source, Math.Round(use.Cost!.Value, 6)));
        // It was 2 kg and not 12: 100 - 2 = 98, and the rows of the day add up to 2.
        bench.Run(at => new DoseGiven(at, dose with { Id = TimeOrderedId.Derive(at, "again"), Kilograms = 2, Corrects = dose.Id, CorrectionReason = "a slip" }));
        Assert.Equal(98, bench.Store("bicarb"), 1e-9);
        Assert.Equal(2, bench.Entries.Select(e => e.Body).OfType<UseEntry>().Sum(u => u.Use.Amount), 1e-9);
    }

    [Fact]
    public void A_row_is_corrected_once_and_the_correction_after_that()
    {
        var bench = new Bench(Plan);
        var first = bench.Delivery("hypo", null, 100);
        bench.Write(first);
        var second = bench.Delivery("hypo", null, 10) with { Corrects = first.Id, CorrectionReason = "a nought too many" };
        bench.Write(second);
        var third = bench.Delivery("hypo", null, 11) with { Corrects = first.Id, CorrectionReason = "the same, by another" };
        Assert.Equal("corrects stock.corrected_already", AtTheDoor(bench, third));
        Assert.Null(AtTheDoor(bench, third with { Corrects = second.Id }));
        Assert.IsType<Outcome.Done>(bench.Write(bench.Delivery("hypo", null, 12) with { Corrects = second.Id, CorrectionReason = "read again" }));
        Assert.Equal(12, bench.Store("hypo"), 1e-9);
    }

    [Fact]
    public void Corrected_twice_in_a_journal_of_before_the_newest_counts_and_nothing_is_taken_back_twice()
    {
        var bench = new Bench(Plan);
        var first = bench.Delivery("hypo", null, 100);
        bench.Write(first);
        var second = bench.Delivery("hypo", null, 10) with { Corrects = first.Id, CorrectionReason = "a nought too many" };
        bench.Write(second);
        var third = bench.Delivery("hypo", null, 11) with { Corrects = first.Id, CorrectionReason = "the same, by another" };
        Assert.IsType<Outcome.Done>(bench.Write(third));
        // Sent again it is answered as the first time.
        Assert.Null(AtTheDoor(bench, third));
        Assert.IsType<Outcome.AlreadyDone>(bench.Write(third));
        // 100 was 10 was 11, and only that: not 100 - 100 + 10 - 100 + 11.
        Assert.Equal(11, bench.Store("hypo"), 1e-9);
        bench.Write(bench.Delivery("hypo", null, 12) with { Corrects = second.Id, CorrectionReason = "read again" });
        Assert.Equal(12, bench.Store("hypo"), 1e-9);
    }

    [Fact]
    public void An_amount_of_next_to_nothing_is_asked_at_the_door_and_has_no_price_without_end_in_a_journal_of_before()
    {
        var bench = new Bench(Plan);
        Assert.Equal("amount stock.amount_impossible", AtTheDoor(bench, bench.Delivery("hypo", null, 1e-320) with { Price = 5 }));
        Assert.Null(AtTheDoor(bench, bench.Delivery("hypo", null, 0.001)));
        Assert.Null(AtTheDoor(bench, bench.Count("hypo", null, 0, 0)));
        Assert.IsType<Outcome.Done>(bench.Write(bench.Delivery("hypo", null, 1e-320) with { Price = 5 }));
        Assert.Null(bench.State.Stores.Single(s => s.ProductId == "hypo").Price);
        bench.Write(bench.Delivery("hypo", null, 0.001) with { Price = 1e9 });
        Assert.True(double.IsFinite(bench.State.Stores.Single(s => s.ProductId == "hypo").Price!.Value.Amount));
    }

    [Theory]
    [InlineData("Example, R.", "checkedBy stock.two_people")]
    [InlineData("R. Ex\u0430mple", "checkedBy stock.two_people")]
    [InlineData("...", "checkedBy field.required")]
    [InlineData("\u200B", "checkedBy field.required")]
    public void One_person_does_not_pass_as_two_by_another_spelling_and_what_was_taken_before_is_taken_again(string checkedBy, string why)
    {
        var bench = new Bench(Plan);
        var move = bench.Delivery("hypo", null, 100) with { CheckedBy = checkedBy };
        Assert.Equal(why, AtTheDoor(bench, move));
        Assert.IsType<Outcome.Done>(bench.Write(move));
        // Sent again it is answered as the first time; the next row is asked.
        Assert.Null(AtTheDoor(bench, move));
        Assert.IsType<Outcome.AlreadyDone>(bench.Write(move));
        Assert.Equal("by field.required", AtTheDoor(bench, bench.Delivery("hypo", null, 90) with { By = "..." }));
        // A count is one person's.
        Assert.Null(AtTheDoor(bench, bench.Count("hypo", null, 100, 100)));
    }

    [Fact]
    public void A_liquid_given_by_hand_is_taken_in_litres()
    {
        var bench = new Bench(Plan with { Products = [Hypo with { Density = 1.2 }, Acid, Bicarb] });
        bench.Write(bench.Count("hypo", null, 100, 0));
        // 6 kg at 1.2 kg/L are 5 L.
        bench.Run(at => new DoseGiven(at, new GivenDose { Id = TimeOrderedId.Derive(at, "dose"), PoolId = "main", ProductId = "hypo", Product = "Hypochlorite", Kilograms = 6, GivenAt = at, By = "R. Example" }));
        Assert.Equal(95, bench.Store("hypo"), 1e-9);
    }

    [Fact]
    public void A_correction_takes_the_place_of_its_row_and_the_same_row_twice_counts_once()
    {
        var bench = new Bench(Plan);
        var first = bench.Delivery("hypo", null, 1000);
        bench.Write(first);
        Assert.IsType<Outcome.AlreadyDone>(bench.Write(first));
        Assert.Equal("id id.taken", WhyNot(bench.Write(first with { Amount = 5 })));
        bench.Write(bench.Delivery("hypo", null, 100) with { Corrects = first.Id, CorrectionReason = "a nought too many" });
        Assert.Equal(100, bench.Store("hypo"), 1e-9);
    }

    [Fact]
    public void What_cannot_be_is_said_by_its_field()
    {
        var bench = new Bench(Plan);
        var good = bench.Delivery("hypo", "hypo-pump", 50);
        foreach (var (move, why) in new (StockMove, string)[]
        {
            (good with { CheckedBy = "" }, "checkedBy field.required"),
            (good with { CheckedBy = "r example" }, "checkedBy stock.two_people"),
            (good with { By = " " }, "by field.required"),
            (good with { Amount = 0 }, "amount stock.amount_impossible"),
            (good with { Amount = double.NaN }, "amount stock.amount_impossible"),
            (good with { Amount = 260 }, "amount stock.more_than_the_tank"),
            (good with { Strength = 120 }, "strength stock.strength_impossible"),
            (good with { MadeOn = new DateOnly(2026, 6, 1) }, "madeOn stock.made_astray"),
            (good with { Price = -1 }, "price stock.price_impossible"),
            (good with { Containers = 0 }, "containers stock.containers_impossible"),
            (good with { HappenedAt = bench.Now + TimeSpan.FromHours(1) }, "happenedAt stock.time_impossible"),
            (good with { HappenedAt = bench.Now - TimeSpan.FromDays(31) }, "happenedAt stock.time_impossible"),
            (good with { ProductId = "bleach" }, "productId stock.product_unknown"),
            (good with { PumpId = "none" }, "pumpId stock.tank_unknown"),
            (good with { Act = StockAct.Refilled, PumpId = null }, "pumpId field.required"),
            (good with { Act = StockAct.Counted, ProductId = "acid" }, "productId stock.not_of_the_tank"),
            (good with { Corrects = Guid.NewGuid(), CorrectionReason = "slip" }, "corrects stock.corrects_unknown"),
        })
            Assert.Equal(why, WhyNot(bench.Write(move with { Id = TimeOrderedId.Derive(bench.Now, why) })));
        Assert.DoesNotContain(bench.Entries, e => e.Body is StockEntry);
    }

    [Fact]
    public void A_new_plan_keeps_book_and_tank_under_the_new_name_of_the_pump()
    {
        var bench = new Bench(Plan);
        bench.Write(bench.Delivery("hypo", null, 100));
        bench.Write(bench.Delivery("hypo", "hypo-pump", 50) with { Strength = 13 });
        bench.Load(Plan with { Pumps = [Plan.Pumps[1] with { Id = "chlorine-pump", Was = "hypo-pump" }, Plan.Pumps[0]] });
        Assert.Equal(100, bench.Store("hypo"), 1e-9);
        Assert.Equal(["chlorine-pump", "acid-pump"], bench.State.Tanks.Select(t => t.PumpId));
        Assert.Equal(50, bench.Tank("chlorine-pump").Book);
        // For another product it begins anew.
        bench.Load(Plan with { Pumps = [Plan.Pumps[0], Plan.Pumps[1] with { Id = "chlorine-pump", ProductId = "acid", Doses = ProductKind.HydrochloricAcid }] });
        Assert.Null(bench.Tank("chlorine-pump").Book);
    }

    [Fact]
    public void Bathers_of_a_day_are_corrected_by_a_newer_row()
    {
        var bench = new Bench(Plan);
        var (a, b) = (TimeOrderedId.Derive(bench.Now, "a"), TimeOrderedId.Derive(bench.Now, "b"));
        var day = new DateOnly(2026, 5, 4);
        bench.Run(at => new BathersCounted(at, new BatherCount(a, "main", day, 310, "R. Example")));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new BathersCounted(at, new BatherCount(a, "main", day, 310, "R. Example"))));
        bench.Run(at => new BathersCounted(at, new BatherCount(b, "main", day, 301, "R. Example")));
        Assert.Equal(301, UseSums.BathersOf(bench.State.Bathers, ["main"])[day]);
        // The learner pool was not counted: a figure for the circuit would be wrong.
        Assert.Empty(UseSums.BathersOf(bench.State.Bathers, ["main", "learner"]));
        Assert.Equal("day bathers.day_astray", WhyNot(bench.Run(at => new BathersCounted(at, new BatherCount(Guid.NewGuid(), "main", day.AddDays(9), 1, "R. Example")))));
        Assert.Equal("number bathers.number_impossible", WhyNot(bench.Run(at => new BathersCounted(at, new BatherCount(Guid.NewGuid(), "main", day, -1, "R. Example")))));
    }

    [Fact, Evidence("R-045")]
    public void A_product_that_may_not_last_until_an_order_comes_is_told_and_taken_back()
    {
        var bench = new Bench(Plan);
        bench.Run(at => new StockOutlookSaid(at, "acid", true, 4));
        var alarm = bench.Alarm(RuleBook.StockRunsOut, "acid")!;
        Assert.Equal((Priority.Low, "stock.runs_out"), (alarm.Priority, alarm.Cause.Code));
        Assert.Equal([null, 4.0, 7.0], alarm.Cause.Facts.Select(f => f.Number));
        bench.Run(at => new StockOutlookSaid(at, "acid", false, 0));
        Assert.False(bench.IsUp(RuleBook.StockRunsOut, "acid"));
        Assert.NotNull(WhyNot(bench.Run(at => new StockOutlookSaid(at, "hypo", true, 4))));
        bench.Run(at => new StockOutlookSaid(at, "acid", true, 4));
        bench.Load(Plan with { Products = [Hypo, Acid with { DeliveryDays = null }, Bicarb] });
        Assert.Null(bench.Alarm(RuleBook.StockRunsOut, "acid"));
    }

    private static string? AtTheDoor(Bench bench, StockMove move) => MoveObjection.Of(bench.State, move) is { } no ? WhyNot(no) : null;
}
