using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Tests.Plant.Fold;
using static PlantWatch.Core.Tests.Stock.StockBench;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>A product in the tank of another is told at once and stands until people at the tank have said that it is safe.</summary>
public sealed class WrongTankTests
{
    [Fact, Evidence("R-043")]
    public void A_delivery_for_another_tank_is_refused_until_it_is_said_that_it_went_in()
    {
        var bench = new Bench(Plan);
        var wrong = bench.Delivery("acid", "hypo-pump", 50);
        Assert.Equal("wentIn wrong_tank.chlorine_gas", WhyNot(bench.Write(wrong)));
        Assert.Null(bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump"));
        Assert.DoesNotContain(bench.Entries, e => e.Body is StockEntry);

        Assert.IsType<Outcome.Done>(bench.Write(wrong with { WentIn = true }));
        var alarm = bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump")!;
        Assert.Equal((Priority.Critical, AlarmState.Unacknowledged, "wrong_tank.chlorine_gas"), (alarm.Priority, alarm.State, alarm.Cause.Code));
        Assert.Equal(["Hydrochloric acid", "Hypochlorite pump", "Hypochlorite"], alarm.Cause.Facts.Select(f => f.Text));
        Assert.True(Assert.Single(bench.Entries.Select(e => e.Body).OfType<StockEntry>()).Move.WentIn);
    }

    [Fact, Evidence("R-043")]
    public void It_can_neither_be_shelved_nor_taken_out_of_service_nor_reset_and_a_restart_keeps_it()
    {
        var (bench, id) = Spoiled();
        Assert.Equal(" alarm.never_shelved", WhyNot(bench.Run(at => new AlarmShelved(at, id, at + TimeSpan.FromHours(1), "R. Example", "busy"))));
        Assert.Equal(" alarm.never_out_of_service", WhyNot(bench.Run(at => new AlarmTakenOutOfService(at, "R-043/hypo-pump", "R. Example", "busy"))));
        bench.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "drained"), "main", OperatingState.Drained, "R. Example"));
        bench.Restart();
        bench.Pass(TimeSpan.FromHours(1));
        Assert.True(bench.IsUp(RuleBook.WrongProductInTank, "hypo-pump"));
        Assert.Equal(" alarm.still_active", WhyNot(bench.Run(at => new AlarmReset(at, id, "R. Example", null))));
        Assert.False(bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump")!.Suppressed);
    }

    [Theory, Evidence("R-043")]
    [InlineData(false, true, true, "roomLeft alarm.leave_room_first")]
    [InlineData(true, false, true, "pumpsIsolated alarm.isolate_tank_pump_first")]
    [InlineData(true, true, false, "tankDealtWith alarm.deal_with_tank")]
    public void Half_safe_is_not_safe(bool left, bool isolated, bool dealtWith, string why)
    {
        var (bench, id) = Spoiled();
        Assert.Equal(why, WhyNot(bench.Run(at => new PlantMadeSafe(at, id, true, isolated, true, "J. Sample", null) { RoomLeft = left, TankDealtWith = dealtWith })));
        Assert.True(bench.IsUp(RuleBook.WrongProductInTank, "hypo-pump"));
        // What is spoiled is no stock.
        Assert.Equal(0, Assert.Single(StockSheet.Of(Hypo, bench.State.Plan.Pumps.Zip(bench.State.Tanks), bench.State.Stores, new(2026, 5, 5)).Tanks).Usable);
    }

    [Fact, Evidence("R-043")]
    public void Made_safe_it_clears_and_its_latch_holds_until_it_was_seen_and_reset()
    {
        var (bench, id) = Spoiled();
        bench.Run(at => new PlantMadeSafe(at, id, false, true, false, "J. Sample", "the fire service has emptied it") { RoomLeft = true, TankDealtWith = true });
        Assert.Equal(AlarmState.LatchedUnacknowledged, bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump")!.State);
        Assert.Null(bench.Tank("hypo-pump").Wrong);
        Assert.Equal(" alarm.acknowledge_first", WhyNot(bench.Run(at => new AlarmReset(at, id, "R. Example", null))));
        bench.Run(at => new AlarmAcknowledged(at, id, "R. Example", null));
        Assert.IsType<Outcome.Done>(bench.Run(at => new AlarmReset(at, id, "R. Example", null)));
        Assert.Null(bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump"));
    }

    [Fact, Evidence("R-043")]
    public void What_makes_one_tank_safe_makes_neither_another_tank_nor_the_pipes_safe()
    {
        var (bench, id) = Spoiled();
        bench.Write(bench.Delivery("hypo", "acid-pump", 20) with { WentIn = true });
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Flow, "0");
        bench.Pass(TimeSpan.FromMinutes(1));
        bench.Run(at => new PlantMadeSafe(at, id, true, true, true, "J. Sample", null) { RoomLeft = true, TankDealtWith = true });
        Assert.False(bench.IsUp(RuleBook.WrongProductInTank, "hypo-pump"));
        Assert.True(bench.IsUp(RuleBook.WrongProductInTank, "acid-pump"));
        Assert.Null(bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.MadeSafe);
        var pipes = bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.Id;
        Assert.IsType<Outcome.Done>(bench.Run(at => new PlantMadeSafe(at, pipes, true, true, true, "J. Sample", null) { RoomLeft = true, TankDealtWith = true }));
        Assert.NotNull(bench.Alarm(RuleBook.DosesWithoutFlow, "acid-pump")!.MadeSafe);
        Assert.True(bench.IsUp(RuleBook.WrongProductInTank, "acid-pump"));
    }

    [Fact, Evidence("R-043")]
    public void A_row_that_is_corrected_later_clears_nothing()
    {
        var (bench, _) = Spoiled();
        var wrong = bench.Entries.Select(e => e.Body).OfType<StockEntry>().Single().Move;
        Assert.IsType<Outcome.Done>(bench.Write(bench.Delivery("acid", "acid-pump", 50) with { Corrects = wrong.Id, CorrectionReason = "wrong line picked" }));
        Assert.True(bench.IsUp(RuleBook.WrongProductInTank, "hypo-pump"));
    }

    // The pairs of docs/rules.md R-043: standard hazards, common practice.
    [Theory]
    [InlineData(ProductKind.HydrochloricAcid, ProductKind.SodiumHypochlorite, "wrong_tank.chlorine_gas")]
    [InlineData(ProductKind.SodiumHypochlorite, ProductKind.SulfuricAcid, "wrong_tank.chlorine_gas")]
    [InlineData(ProductKind.SodiumBisulfate, ProductKind.SodiumHypochlorite, "wrong_tank.chlorine_gas")]
    [InlineData(ProductKind.Coagulant, ProductKind.SodiumHypochlorite, "wrong_tank.chlorine_gas")]
    [InlineData(ProductKind.SodiumHypochlorite, ProductKind.Coagulant, "wrong_tank.chlorine_gas")]
    [InlineData(ProductKind.CyanuricAcid, ProductKind.SodiumHypochlorite, "wrong_tank.heat_and_gas")]
    [InlineData(ProductKind.Dichlor, ProductKind.SodiumHypochlorite, "wrong_tank.heat_and_gas")]
    [InlineData(ProductKind.CalciumHypochlorite, ProductKind.Trichlor, "wrong_tank.fire_and_explosion")]
    [InlineData(ProductKind.SodiumThiosulfate, ProductKind.SodiumHypochlorite, "wrong_tank.oxidisers")]
    [InlineData(ProductKind.SodiumHydroxide, ProductKind.HydrochloricAcid, "wrong_tank.acid_and_base")]
    [InlineData(ProductKind.SodiumBisulfite, ProductKind.HydrochloricAcid, "wrong_tank.sulfur_dioxide")]
    [InlineData(ProductKind.CalciumChloride, ProductKind.SodiumHypochlorite, "wrong_tank.not_known")]
    public void Each_pair_has_its_consequence(ProductKind product, ProductKind tank, string code) =>
        Assert.Equal(code, WrongTank.Cause("what came", product, "Pump", new ProductPlan("t", "what belongs", tank, null)).Code);

    [Fact]
    public void Two_products_of_one_kind_may_share_a_tank_and_only_the_strength_is_said()
    {
        var strong = Hypo with { Id = "hypo-2", Name = "Hypochlorite, strong", Strength = 15 };
        var bench = new Bench(Plan with { Products = [.. Plan.Products, strong] });
        Assert.IsType<Outcome.Done>(bench.Write(bench.Delivery("hypo-2", "hypo-pump", 50)));
        Assert.Null(bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump"));
        var day = new DateOnly(2026, 5, 5);
        Assert.Equal("stock.strength_differs", Assert.Single(LabelAdvice.Of(Hypo, bench.Delivery("hypo", "hypo-pump", 50) with { Strength = 15 }, day)).Code);
        Assert.Empty(LabelAdvice.Of(Hypo, bench.Delivery("hypo", "hypo-pump", 50) with { Strength = 12.5 }, day));
    }

    private static (Bench Bench, Guid Alarm) Spoiled()
    {
        var bench = new Bench(Plan);
        bench.Write(bench.Delivery("acid", "hypo-pump", 50) with { WentIn = true });
        return (bench, bench.Alarm(RuleBook.WrongProductInTank, "hypo-pump")!.Id);
    }
}
