using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class WaterTests
{
    [Fact]
    public void Chlorine_dosed_is_chlorine_spent_discharged_or_still_there()
    {
        var plant = new PlantWatch.Simulator.Plant.SimulatedPlant(Plants.Quiet(), Plants.Start);
        var water = plant.Circuits[0].Water;
        var before = water.ChlorineHeld;
        plant.AdvanceTo(Plants.Start.AddDays(5));
        var book = water.Book;
        Assert.True(book.Dosed > 5000, $"a busy pool of 425 m3 takes kilograms in five days, not {book.Dosed} g");
        Assert.Equal(book.Dosed, book.Spent + book.Discharged + water.ChlorineHeld - before, 1e-6 * book.Dosed);
    }

    [Fact]
    public void Chlorine_delivered_is_what_the_pump_took_from_its_tank()
    {
        var plant = Plants.Run(Plants.Quiet(), TimeSpan.FromDays(2));
        var pump = plant.Circuits[0].Pumps.Single(p => p.Setup.Id == "main-hypo");
        Assert.Equal(pump.Delivered * 120, plant.Circuits[0].Water.Book.Dosed, 1e-6);
        Assert.Equal(pump.Setup.TankLitres * pump.Setup.TankStart / 100, pump.TankLitres + pump.Delivered, 1e-6);
    }

    [Fact]
    public void Acid_lowers_ph_and_alkalinity()
    {
        var (before, after) = Dosed("acid", 2);
        Assert.InRange(before.Ph - after.Ph, 0.02, 0.3);
        // 2 L of 2.87 mol/L in 100 m3 is 0.0574 mmol/L, 2.87 mg/L as CaCO3.
        Assert.Equal(2.87, before.Alkalinity - after.Alkalinity, 0.05);
    }

    [Fact]
    public void Hypochlorite_raises_ph_and_free_chlorine()
    {
        var (before, after) = Dosed("hypo", 1);
        Assert.Equal(1.2, after.Free - before.Free, 1e-9);
        Assert.InRange(after.Ph - before.Ph, 0.005, 0.1);
    }

    // Common practice and arithmetic: over the whole cycle hypochlorite leaves only its excess caustic behind.
    [Fact]
    public void Spent_chlorine_takes_back_the_rise_in_ph()
    {
        var water = Composition.Of(1, 0, 7.4, 110, 240, 1100, 28);
        var spent = (water with { Free = 3, Alkalinity = water.Alkalinity + (2 / Composition.ChlorineMass) }).Spend(2, 0);
        Assert.Equal(water.Alkalinity, spent.Alkalinity, 9);
    }

    [Fact]
    public void Carbon_dioxide_leaves_and_ph_rises_where_nobody_doses()
    {
        var plant = Plants.Run(Plants.Quiet(s => s.Circuits[0].Pumps.Clear()), TimeSpan.FromDays(4));
        Assert.InRange(plant.Circuits[0].View("main-pool").Ph, 7.5, 8.0);
    }

    [Fact]
    public void The_sun_eats_unprotected_chlorine()
    {
        double FreeAtTwo(double sun) => Plants.Run(Plants.Quiet(s =>
        {
            s.Circuits[0].Pumps.Clear();
            s.Circuits[0].Pools[0].Bathers.Peak = 0;
            s.Circuits[0].Pools[0].SunPerHour = sun;
        }), TimeSpan.FromHours(14)).Circuits[0].View("main-pool").Free;
        Assert.True(FreeAtTwo(0.3) < 0.5 * FreeAtTwo(0));
    }

    [Fact]
    public void Bathers_make_combined_chlorine_and_the_lamp_breaks_it()
    {
        double Combined(bool lamp) => Plants.Run(Plants.Quiet(s => s.Circuits[0].Uv = lamp), TimeSpan.FromDays(3)).Circuits[0].View("main-pool").Combined;
        Assert.True(Combined(false) > 1.5 * Combined(true));
    }

    [Fact]
    public void Pools_of_one_circuit_share_their_water()
    {
        var plant = Plants.Run(Plants.Quiet(s =>
        {
            s.Circuits[0].Pumps.Clear();
            s.Circuits[0].Pools.Add(new PoolSetup { Id = "small", VolumeM3 = 40, Start = new WaterStart { Free = 0, DissolvedSolids = 3000 } });
        }), TimeSpan.FromHours(24));
        var (main, small) = (plant.Circuits[0].View("main-pool"), plant.Circuits[0].View("small"));
        Assert.InRange(small.Solids / main.Solids, 0.97, 1.03);
    }

    private static (WaterView Before, WaterView After) Dosed(string product, double litres)
    {
        var pool = new PoolWater(new PoolSetup { VolumeM3 = 100 });
        var before = pool.View();
        pool.Dose(litres, Plants.Quiet().Product(product), new ChlorineBook());
        return (before, pool.View());
    }
}
