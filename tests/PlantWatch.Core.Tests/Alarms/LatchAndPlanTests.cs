using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;
using PlantWatch.Core.Tests.Stock;
using static PlantWatch.Core.Tests.Stock.StockBench;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>A latch waits for a person, as in IEC 62682; a line that is taken out of a file is none.</summary>
public sealed class LatchAndPlanTests
{
    private static CircuitPlan WithoutAcid => StockBench.Plan with { Pumps = StockBench.Plan.Pumps.RemoveAt(0) };

    [Fact, Evidence("R-043")]
    public void A_wrong_product_in_a_tank_is_still_told_when_the_plant_file_loses_the_pump()
    {
        var (bench, id) = Spoiled();
        bench.Load(WithoutAcid);
        bench.Restart();
        bench.Pass(TimeSpan.FromHours(1));
        var alarm = bench.Alarm(RuleBook.WrongProductInTank, "acid-pump")!;
        Assert.Equal((id, AlarmState.LatchedUnacknowledged, true), (alarm.Id, alarm.State, alarm.LatchHeld));
        bench.Run(at => new AlarmAcknowledged(at, id, "R. Example", null));
        Assert.Equal(" alarm.make_safe_first", WhyNot(bench.Run(at => new AlarmReset(at, id, "R. Example", null))));
    }

    [Fact, Evidence("R-043")]
    public void Made_safe_and_seen_it_is_reset_though_its_pump_is_gone()
    {
        var (bench, id) = Spoiled();
        bench.Load(WithoutAcid);
        bench.Run(at => new PlantMadeSafe(at, id, false, true, false, "J. Sample", null) { RoomLeft = true, TankDealtWith = true });
        bench.Run(at => new AlarmAcknowledged(at, id, "R. Example", null));
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmReset(at, id, "R. Example", null)));
        Assert.Null(bench.Alarm(RuleBook.WrongProductInTank, "acid-pump"));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Retired, AlarmChange.MadeSafe, AlarmChange.Acknowledged, AlarmChange.Reset], bench.Told(RuleBook.WrongProductInTank, "acid-pump"));
    }

    [Fact, Evidence("R-043")]
    public void It_stands_when_the_pump_comes_back_and_is_told_as_gone_once()
    {
        var (bench, id) = Spoiled();
        bench.Load(WithoutAcid);
        bench.Load(WithoutAcid with { Name = "Hall, rebuilt" });
        bench.Load(StockBench.Plan);
        Assert.Equal(id, bench.Alarm(RuleBook.WrongProductInTank, "acid-pump")!.Id);
        Assert.Equal([AlarmChange.Raised, AlarmChange.Retired], bench.Told(RuleBook.WrongProductInTank, "acid-pump"));
    }

    [Fact, Evidence("R-033")]
    public void Dosing_into_standing_water_is_still_told_when_the_plant_file_loses_what_saw_it()
    {
        var bench = new Bench(Hall.Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(bench.IsUp(RuleBook.DosesWithoutFlow, "acid-pump"));
        bench.Load(Hall.Plan.Without("main-flow"));
        bench.Pass(TimeSpan.FromMinutes(5));
        Assert.Equal(AlarmState.LatchedUnacknowledged, bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.State);
    }

    [Fact, Evidence("R-043")]
    public void A_latch_outlives_another_pump_that_takes_the_name_of_the_one_that_is_gone()
    {
        var (bench, id) = Spoiled();
        bench.Load(WithoutAcid);
        // The other pump's tank is spoiled too, and then it takes the free name.
        bench.Write(bench.Delivery("acid", "hypo-pump", 50) with { WentIn = true });
        var other = bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump")!.Id;
        bench.Load(WithoutAcid with { Pumps = [.. WithoutAcid.Pumps.Select(p => p.Id == "hypo-pump" ? p with { Id = "acid-pump", Was = "hypo-pump" } : p)] });
        bench.Restart();
        Assert.Equal(new[] { id, other }.Order(), bench.State.Alarms.Values.Where(a => a.LatchHeld).Select(a => a.Id).Order());
        Assert.All(bench.State.Alarms, pair => Assert.Equal(pair.Key, pair.Value.Key));
        Assert.Equal(other, bench.Alarm(RuleBook.WrongProductInTank, "acid-pump")!.Id);
        // Each is made safe, seen and reset for itself.
        foreach (var latched in new[] { id, other })
        {
            bench.Run(at => new PlantMadeSafe(at, latched, false, true, false, "J. Sample", null) { RoomLeft = true, TankDealtWith = true });
            bench.Run(at => new AlarmAcknowledged(at, latched, "R. Example", null));
        }

        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmReset(at, id, "R. Example", null)));
        Assert.Equal([other], bench.State.Alarms.Values.Where(a => a.LatchHeld).Select(a => a.Id));
    }

    [Fact]
    public void What_has_a_latch_is_seen_though_it_was_shelved_or_out_of_service()
    {
        var alarm = new AlarmRecord
        {
            Key = "R-037/p", Rule = "R-037", Subject = "p", Cause = new("pump.over_daily_limit", []), Active = true, LatchHeld = true, Latches = true, IsAcknowledged = false,
            ShelvedUntil = Hall.Nine + TimeSpan.FromHours(1), ShelvedBy = "R. Example", OutOfService = true, OutOfServiceBy = "R. Example", Suppressed = true, SuppressedBy = new("x", []),
        };
        var left = AlarmLife.Bereave(alarm, Hall.Nine);
        Assert.Equal((AlarmState.LatchedUnacknowledged, Hall.Nine), (left.State, left.ClearedAt));
        Assert.Equal(left, AlarmLife.Bereave(left, Hall.Nine + TimeSpan.FromHours(1)));
    }

    private static (Bench Bench, Guid Alarm) Spoiled()
    {
        var bench = new Bench(StockBench.Plan);
        bench.Write(bench.Delivery("hypo", "acid-pump", 50) with { WentIn = true });
        return (bench, bench.Alarm(RuleBook.WrongProductInTank, "acid-pump")!.Id);
    }
}
