using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Water;

/// <summary>The ring: pools overflow to the balance tank, the tank's water passes filter and lamp and returns to the pools by their share of the flow.</summary>
internal sealed class Circulation
{
    // Share of combined and of free chlorine that one pass of the lamp destroys (assumptions; the lamp is there for the first).
    private const double LampOnCombined = 0.20;
    private const double LampOnFree = 0.01;

    private readonly CircuitSetup _setup;
    private readonly Composition _makeUp;

    /// <summary>A circuit with its pools as started; the tank holds the mean of them.</summary>
    public Circulation(CircuitSetup setup, IReadOnlyList<PoolWater> pools)
    {
        _setup = setup;
        Pools = pools;
        var m = setup.MakeUp;
        _makeUp = Composition.Of(m.Free, 0, m.Ph, m.Alkalinity, m.Hardness, m.DissolvedSolids, m.Temperature);
        Tank = pools[0].Now;
        foreach (var pool in pools.Skip(1)) Tank = Tank.Blend(pool.Now, 1.0 / pools.Count);
    }

    /// <summary>The pools.</summary>
    public IReadOnlyList<PoolWater> Pools { get; }

    /// <summary>Water of the balance tank.</summary>
    public Composition Tank { get; private set; }

    /// <summary>The chlorine account of the circuit.</summary>
    public ChlorineBook Book { get; } = new();

    /// <summary>Free and combined chlorine in all the water, grams as Cl2.</summary>
    public double ChlorineHeld =>
        ((Tank.Free + Tank.Combined) * _setup.BalanceTankM3) + Pools.Sum(p => (p.Now.Free + p.Now.Combined) * p.Setup.VolumeM3);

    /// <summary>Moves the water for a short time.</summary>
    /// <param name="hours">How long.</param>
    /// <param name="share">Circulation in shares of the design.</param>
    public void Pass(double hours, double share)
    {
        var passing = Tank;
        var treated = _setup.Uv ? passing.Spend(passing.Free * LampOnFree, passing.Combined * LampOnCombined) : passing;
        foreach (var pool in Pools)
        {
            var flow = pool.Setup.VolumeM3 / _setup.TurnoverHours * share * hours;
            Book.Spent += (passing.Free + passing.Combined - treated.Free - treated.Combined) * flow;
            var leaving = pool.Now;
            pool.Now = pool.Now.Blend(treated, flow / pool.Setup.VolumeM3);
            // What leaves the tank and what enters it differ by exactly this, so that nothing appears or vanishes.
            Tank = Tank.Add(leaving, passing, flow / _setup.BalanceTankM3);
        }
        Renew(hours);
    }

    // Fresh water by bathers and by the day; what it displaces goes down the drain.
    private void Renew(double hours)
    {
        var fresh = Pools.Sum(p => (p.Bathers * _setup.MakeUp.LitresPerBatherHour / 1000) + (p.Setup.VolumeM3 * _setup.MakeUp.PercentPerDay / 100 / 24)) * hours;
        Book.Discharged += (Tank.Free + Tank.Combined - _makeUp.Free - _makeUp.Combined) * fresh;
        var warm = _makeUp with { Celsius = Tank.Celsius };
        Tank = Tank.Blend(warm, fresh / _setup.BalanceTankM3);
    }
}
