using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.Probes;

/// <summary>One probe: lag, wander, noise and faults between the water in its cell and the number it gives.</summary>
internal sealed class Probe
{
    private const double WanderHours = 12;

    private readonly IReadOnlyList<Fault> _faults;
    private readonly Chance _chance;
    private readonly PoolSetup _pool;
    private readonly double _noise;
    private readonly double _wanderSize;
    private readonly double _lag;
    private double _lagged = double.NaN;
    private double _wander;

    /// <summary>A probe of a pool.</summary>
    public Probe(ProbeSetup setup, PoolSetup pool, Scenario scenario)
    {
        Setup = setup;
        _pool = pool;
        _faults = Fault.Of(scenario, setup.Id);
        _chance = new Chance(scenario.Seed, setup.Id);
        var usual = Usual(setup.Measures);
        (_noise, _wanderSize, _lag) = (setup.Noise ?? usual.Noise, setup.Wander ?? usual.Wander, setup.LagSeconds ?? usual.Lag);
        PanelOffset = setup.PanelOffset;
    }

    /// <summary>Fixed facts.</summary>
    public ProbeSetup Setup { get; }

    /// <summary>What the panel adds.</summary>
    public double PanelOffset { get; set; }

    /// <summary>Its own signal in the unit of what it measures.</summary>
    public double Signal { get; private set; }

    /// <summary>What the plant's panel shows, and its controller obeys.</summary>
    public double Panel => Signal + PanelOffset;

    /// <summary>What goes out by MQTT.</summary>
    public double Published => Setup.PanelScaled ? Panel : Signal;

    /// <summary>True while nothing is sent.</summary>
    public bool IsSilent(double hours) => _faults.Has(FaultKind.Silent, hours);

    /// <summary>True while the payload is no number.</summary>
    public bool SendsNaN(double hours) => _faults.Has(FaultKind.NotANumber, hours);

    /// <summary>Lets time pass and takes a new signal.</summary>
    public void Pass(double hours, double stepHours, in WaterView cell, bool flows, Treatment treatment)
    {
        var target = Ideal(cell, flows, treatment);
        _lagged = double.IsNaN(_lagged) || _lag <= 0 ? target : _lagged + ((target - _lagged) * (1 - Math.Exp(-stepHours * 3600 / _lag)));
        _wander += (-_wander * stepHours / WanderHours) + (_wanderSize * Math.Sqrt(2 * stepHours / WanderHours) * _chance.Normal());
        var hiss = _chance.Normal() * _noise * (_faults.Now(FaultKind.Noise, hours)?.Size ?? 1);
        if (_faults.Has(FaultKind.Stuck, hours)) return;
        Signal = Bent(_lagged + Setup.Error + _wander, hours) + hiss;
        if (_faults.Now(FaultKind.Broken, hours) is { } broken) Signal = (Setup.Measures == Measures.Ph ? 7 : broken.Size) + (hiss * 0.2);
    }

    private double Bent(double value, double hours)
    {
        foreach (var fault in _faults)
        {
            var age = hours - fault.From;
            if (!fault.Holds(hours)) continue;
            value = fault.Kind switch
            {
                FaultKind.Drift => value + (fault.Size * age / 24),
                FaultKind.Step => value + fault.Size,
                // An electrode turns about its isopotential point, pH 7.
                FaultKind.SlopeLoss => 7 + ((value - 7) * (1 - ((1 - fault.Size) * Math.Min(1, age / 48)))),
                FaultKind.Poisoned => value - (fault.Size * (1 - Math.Exp(-age / 6))),
                _ => value,
            };
        }
        return value;
    }

    private double Ideal(in WaterView cell, bool flows, Treatment treatment) => Setup.Measures switch
    {
        Measures.Ph => cell.Ph,
        // Platinum answers the logarithm of HOCl at the pool's own level, and a little to pH itself (assumption).
        Measures.Orp => _pool.OrpAtOne + (_pool.OrpPerDecade * Math.Log10(Math.Max(cell.Hypochlorous, 0.005))) - (8 * (cell.Ph - 7.4)),
        Measures.Temperature => cell.Celsius,
        Measures.FreeChlorine => cell.Free,
        // Microsiemens per centimetre from dissolved solids by a factor of 0.6 (common practice).
        Measures.Conductivity => cell.Solids / 0.6 * (1 + (0.02 * (cell.Celsius - 25))),
        Measures.CirculationFlow => treatment.Flow,
        Measures.FilterPressure => treatment.Pressure,
        _ => flows ? 1 : 0,
    };

    // Noise, wander, lag in seconds: common practice for the kind.
    private static (double Noise, double Wander, double Lag) Usual(Measures measures) => measures switch
    {
        Measures.Ph => (0.006, 0.008, 15),
        Measures.Orp => (1.2, 4, 90),
        Measures.Temperature => (0.02, 0.02, 30),
        Measures.FreeChlorine => (0.015, 0.02, 60),
        Measures.Conductivity => (4, 6, 20),
        Measures.CirculationFlow => (0.8, 0.4, 5),
        Measures.FilterPressure => (0.3, 0.2, 5),
        _ => (0, 0, 0),
    };
}
