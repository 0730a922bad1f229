using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Stock.StockBench;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>What the level of a tank tells: use, fills, and fills that nobody has written down.</summary>
public sealed class TankTests
{
    [Fact]
    public void The_ripple_of_a_level_does_not_add_up_to_use()
    {
        // 100 L; from 80 to 68 per cent in a day are 12 L, whatever the sensor ripples by (from -0.7 to 0.8 per cent, 288 times).
        var bench = new Bench(Plan);
        bench.Falls(TimeSpan.FromHours(15), 80, 80);
        bench.Falls(TimeSpan.FromHours(24), 80, 68);
        bench.Falls(TimeSpan.FromHours(2), 68, 68);
        var day = Assert.Single(bench.Tank("acid-pump").Days, d => d.IsWhole);
        Assert.Equal(12, day.Amount, 0.7);
        Assert.Equal(24, day.Hours, 0.5);
        var row = bench.Entries.Select(e => e.Body).OfType<UseEntry>().Single(u => u.Use.Day == day.Day).Use;
        // 0.80 a litre by the plant file.
        Assert.Equal((UseSource.Level, StockUnit.Litre, 0.8), (row.Source, row.Unit, row.UnitPrice));
    }

    [Fact]
    public void A_fill_is_no_use_and_what_was_used_around_it_is()
    {
        var bench = new Bench(Plan);
        bench.Falls(TimeSpan.FromHours(15), 50, 50);
        // 50 to 44, then filled to 94, then to 88: 12 L of 100 were used.
        bench.Falls(TimeSpan.FromHours(12), 50, 44);
        bench.Write(bench.Delivery("acid", "acid-pump", 50) with { Act = StockAct.Refilled });
        bench.Falls(TimeSpan.FromMinutes(20), 60, 94);
        bench.Falls(TimeSpan.FromHours(12), 94, 88);
        bench.Falls(TimeSpan.FromHours(1), 88, 88);
        Assert.Equal(12, bench.Tank("acid-pump").Days.Concat([bench.Tank("acid-pump").Today]).Sum(d => d.Amount), 1.5);
        bench.Pass(TimeSpan.FromHours(1));
        Assert.False(bench.IsUp(RuleBook.TankFilledByNobody, "acid-pump"));
    }

    [Fact]
    public void One_bad_reading_is_neither_use_nor_a_fill()
    {
        var bench = new Bench(Plan);
        bench.Falls(TimeSpan.FromHours(2), 60, 60);
        bench.Falls(TimeSpan.FromMinutes(15), 12, 12);
        bench.Falls(TimeSpan.FromHours(3), 60, 60);
        Assert.Equal(0, bench.Tank("acid-pump").Today.Amount, 1.0);
        Assert.Null(bench.Tank("acid-pump").Unknown);
    }

    [Fact, Evidence("R-044")]
    public void A_level_that_leaps_up_and_nobody_wrote_it_down_asks_who_filled_it()
    {
        var bench = new Bench(Plan);
        bench.Falls(TimeSpan.FromHours(2), 20, 20);
        bench.Falls(TimeSpan.FromMinutes(50), 90, 90);
        Assert.False(bench.IsUp(RuleBook.TankFilledByNobody, "acid-pump"));
        bench.Pass(TimeSpan.FromMinutes(35));
        var alarm = bench.Alarm(RuleBook.TankFilledByNobody, "acid-pump")!;
        Assert.Equal("stock.filled_by_nobody", alarm.Cause.Code);
        Assert.Equal(70, alarm.Cause.Facts[1].Number!.Value, 1.5);
        bench.Restart();
        // Of yesterday it answers nothing; of an hour ago it does.
        bench.Write(bench.Delivery("acid", "acid-pump", 70) with { HappenedAt = bench.Now - TimeSpan.FromHours(20) });
        Assert.True(bench.IsUp(RuleBook.TankFilledByNobody, "acid-pump"));
        bench.Write(bench.Delivery("acid", "acid-pump", 70) with { HappenedAt = bench.Now - TimeSpan.FromHours(1) });
        Assert.False(bench.IsUp(RuleBook.TankFilledByNobody, "acid-pump"));
    }

    [Fact]
    public void What_was_left_and_what_came_mix_by_volume()
    {
        var bench = new Bench(Plan);
        // Trade per cent: 50 L of 12 and 100 L of 15 are 150 L of (600 + 1500) / 150 = 14.
        bench.Write(bench.Delivery("hypo", "hypo-pump", 50) with { Strength = 12, MadeOn = new(2026, 5, 5), Batch = "A" });
        bench.Write(bench.Delivery("hypo", "hypo-pump", 100) with { Strength = 15, MadeOn = new(2026, 5, 5), Batch = "B" });
        Assert.Equal((14.0, "B"), (Math.Round(bench.Tank("hypo-pump").Mix!.Strength, 9), bench.Tank("hypo-pump").Mix!.Batch));
        // The second one was 10 and not 100 L: (600 + 150) / 60 = 12.5.
        var second = bench.Entries.Select(e => e.Body).OfType<StockEntry>().Last().Move;
        bench.Write(second with { Id = TimeOrderedId.Derive(bench.Now, "right"), Amount = 10, Corrects = second.Id, CorrectionReason = "a nought too many" });
        Assert.Equal(12.5, bench.Tank("hypo-pump").Mix!.Strength, 1e-9);
    }

    [Fact]
    public void A_drum_is_as_old_as_its_label_and_doses_go_by_what_is_in_the_tank()
    {
        var bench = new Bench(Plan);
        var made = new DateOnly(2026, 2, 24);
        bench.Write(bench.Delivery("hypo", "hypo-pump", 100) with { Strength = 15, MadeOn = made, Batch = "C-7" });
        // Seventy days at 20 degC, by the decay of HypochloriteDecay (Gordon, Adam and Bubnis; see there): the same as a product whose label says so in the plant file.
        var left = HypochloriteDecay.Left(150, 70, 20).Value;
        Assert.Equal(15 * left, bench.Tank("hypo-pump").Mix!.Strength, 1e-6);
        var atHand = AsDelivered.Of(Hypo, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores);
        Assert.Equal((new DateOnly(2026, 5, 5), "C-7"), (atHand.StrengthOn, atHand.FromBatch));
        Assert.Contains(ProductAtHand.Of(atHand, new(2026, 5, 5)).Strength.Says, s => s.Code == "product.as_delivered");
        // A litre of it brings so many grams of chlorine: per cent by trade times ten.
        var now = ProductAtHand.Of(atHand, new(2026, 5, 5));
        Assert.Equal(150 * left, 1000 * now.AvailableChlorine * now.KilogramsPerLitre!.Value, 1e-6);
        // An assay that is newer than the delivery goes before it.
        var assayed = Hypo with { Assay = 11, AssayedOn = new(2026, 5, 6) };
        Assert.Equal(assayed, AsDelivered.Of(assayed, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores));
        Assert.Equal("stock.aged", LabelAdvice.Of(Hypo with { Strength = 15 }, bench.Delivery("hypo", "hypo-pump", 1) with { Strength = 15, MadeOn = made }, new(2026, 5, 5))[0].Code);
    }

    [Fact]
    public void What_a_person_doses_is_as_strong_as_the_newest_drum_in_the_store()
    {
        var bench = new Bench(Plan);
        bench.Write(bench.Delivery("hypo", "hypo-pump", 100) with { Strength = 15 });
        bench.Write(bench.Delivery("hypo", null, 100) with { Strength = 10, Batch = "D" });
        var byHand = Hypo with { AddedBy = DosingWay.Hand };
        Assert.Equal(10, AsDelivered.Of(byHand, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores).Strength);
        Assert.Equal(15, AsDelivered.Of(Hypo, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores).Strength);
    }

    [Fact]
    public void Without_a_level_the_use_is_the_running_time_times_what_the_pump_delivers()
    {
        var bench = new Bench(Plan with { Pumps = [Plan.Pumps[0], Plan.Pumps[1] with { LitresPerHour = 6 }] });
        bench.Write(bench.Delivery("hypo", "hypo-pump", 50));
        // From nine to midnight and a day more the pump runs for ten minutes of every hour: a litre each time, 24 on the whole day.
        for (var hour = 0; hour < 40; hour++)
        {
            bench.Says("hall/hypo/state", "running");
            bench.Pass(TimeSpan.FromMinutes(10));
            bench.Says("hall/hypo/state", "stopped");
            bench.Pass(TimeSpan.FromMinutes(50) - TimeSpan.FromSeconds(1));
        }

        var day = Assert.Single(bench.Tank("hypo-pump").Days, d => d.IsWhole);
        Assert.Equal(24, day.Amount, 0.05);
        Assert.Equal(10, bench.Tank("hypo-pump").Book!.Value, 0.05);
        Assert.Equal(UseSource.Running, bench.Entries.Select(e => e.Body).OfType<UseEntry>().Last().Use.Source);
    }

    [Fact]
    public void Strokes_tell_better_than_running_and_stopped()
    {
        var bench = new Bench(Plan with { Pumps = [Plan.Pumps[0], Plan.Pumps[1] with { LitresPerHour = 6, StrokesTopic = "hall/hypo/strokes", MillilitresPerStroke = 2 }] });
        bench.Write(bench.Delivery("hypo", "hypo-pump", 50));
        // A thousand strokes of 2 mL in each of twelve hours: 24 L, whatever it says of running.
        for (var hour = 0; hour <= 12; hour++)
        {
            bench.Says("hall/hypo/state", hour % 2 == 0 ? "running" : "stopped");
            bench.Says("hall/hypo/strokes", FormattableString.Invariant($"{1000 * hour}"));
            bench.Pass(TimeSpan.FromMinutes(59));
        }

        Assert.Equal(24, bench.Tank("hypo-pump").Today.Amount, 1e-6);
        Assert.Equal(26, bench.Tank("hypo-pump").Book!.Value, 1e-6);
        Assert.Equal(12, bench.Tank("hypo-pump").Today.Hours, 0.3);
    }

    [Fact]
    public void What_stands_under_the_foot_valve_is_not_counted_as_usable()
    {
        var bench = new Bench(Plan);
        bench.Falls(TimeSpan.FromHours(1), 40, 40);
        var sheet = StockSheet.Of(Acid, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores, new(2026, 5, 5));
        // 40 of 100 L less 5 under the foot.
        Assert.Equal(35, Assert.Single(sheet.Tanks).Usable!.Value, 1.0);
        Assert.Equal(("stock.too_few_days", (double?)null), (sheet.Why!.Code, sheet.Store));
    }
}
