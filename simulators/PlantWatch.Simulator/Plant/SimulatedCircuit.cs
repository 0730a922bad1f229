using PlantWatch.Simulator.People;
using PlantWatch.Simulator.Probes;
using PlantWatch.Simulator.Pumps;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.Plant;

/// <summary>A circuit with its water, probes and pumps, moved on in small steps.</summary>
internal sealed class SimulatedCircuit
{
    private readonly Dictionary<string, PoolWater> _pools;
    private readonly Dictionary<string, Probe> _probesById;
    private readonly Dictionary<string, WaterView> _views = [];
    private readonly (Probe Probe, SampleLine Line)[] _lines;
    private readonly Dictionary<string, Crowd> _crowds;
    private readonly IReadOnlyList<Fault> _faults;
    private readonly Dictionary<string, IReadOnlyList<Fault>> _flowFaults;

    /// <summary>A circuit of a scenario.</summary>
    public SimulatedCircuit(CircuitSetup setup, Scenario scenario)
    {
        Setup = setup;
        _pools = setup.Pools.ToDictionary(p => p.Id, p => new PoolWater(p));
        Water = new Circulation(setup, [.. _pools.Values]);
        Treatment = new Treatment(setup);
        Probes = [.. setup.Probes.Select(p => new Probe(p, WaterOf(p).Setup, scenario))];
        _probesById = Probes.ToDictionary(p => p.Setup.Id);
        _lines = [.. Probes.Select(p => (p, new SampleLine(p.Setup.DelaySeconds)))];
        Pumps = [.. setup.Pumps.Select(p => new Pump(p, scenario))];
        _crowds = setup.Pools.ToDictionary(p => p.Id, p => new Crowd(p, scenario.Seed));
        _faults = Fault.Of(scenario, setup.Id);
        _flowFaults = Probes.Where(p => p.Setup.Measures == Measures.SampleFlow).ToDictionary(p => p.Setup.Id, p => Fault.Of(scenario, p.Setup.Id));
        foreach (var pool in _pools) _views[pool.Key] = pool.Value.View();
    }

    /// <summary>Fixed facts.</summary>
    public CircuitSetup Setup { get; }

    /// <summary>The water and its chlorine account.</summary>
    public Circulation Water { get; }

    /// <summary>Circulation pump and filters.</summary>
    public Treatment Treatment { get; }

    /// <summary>The probes.</summary>
    public IReadOnlyList<Probe> Probes { get; }

    /// <summary>The pumps.</summary>
    public IReadOnlyList<Pump> Pumps { get; }

    /// <summary>The truth about a pool.</summary>
    public WaterView View(string pool) => _views[pool];

    /// <summary>Bathers in a pool.</summary>
    public int Bathers(string pool) => _pools[pool].Bathers;

    /// <summary>A probe by its key.</summary>
    public Probe Probe(string id) => _probesById[id];

    /// <summary>Seconds by which the gateway's clock is wrong.</summary>
    public double ClockError(double hours) => _faults.Now(FaultKind.Clock, hours)?.Size ?? 0;

    /// <summary>Lets a step pass.</summary>
    public void Pass(double seconds, double stepSeconds, DateTime local, bool isWashing)
    {
        var hours = stepSeconds / 3600;
        Treatment.Pass(hours, _pools.Values.Sum(p => p.Bathers), !isWashing && !_faults.Has(FaultKind.NoCirculation, seconds / 3600));
        var sun = Math.Max(0, Math.Sin(Math.PI * (local.TimeOfDay.TotalHours - 6) / 14));
        foreach (var (id, pool) in _pools)
        {
            pool.Bathers = _crowds[id].At(local);
            pool.Pass(hours, local.Hour is >= 6 and < 20 ? sun : 0, _views[id], Water.Book);
        }
        foreach (var pump in Pumps)
        {
            var probe = _probesById[pump.Setup.Controller.Probe];
            Deliver(pump, pump.Pass(seconds, stepSeconds, probe.Panel, Flows(probe.Setup, seconds / 3600)));
        }
        Water.Pass(hours, Treatment.Share);
        foreach (var (id, pool) in _pools) _views[id] = pool.View();
        foreach (var (probe, line) in _lines) Read(probe, line, seconds, hours);
    }

    /// <summary>What an operator at a pool sees.</summary>
    public Scene Scene(string pool) => new(_views[pool],
        [.. Probes.Where(p => p.Setup.Pool == pool && p.Setup.Measures is not (Measures.SampleFlow or Measures.CirculationFlow or Measures.FilterPressure))
            .Select(p => new SheetPanel(p.Setup.Id, Math.Round(p.Panel, PanelDecimals(p.Setup.Measures))))],
        _pools[pool].Bathers);

    /// <summary>Bicarbonate added by hand: one mol of charge and of carbon for each.</summary>
    public void AddBicarbonate(string pool, double asCaCO3)
    {
        var water = _pools[pool];
        var moles = asCaCO3 / Composition.CarbonateEquivalent;
        water.Now = water.Now with { Alkalinity = water.Now.Alkalinity + moles, Carbon = water.Now.Carbon + moles, Solids = water.Now.Solids + (84 * moles) };
    }

    // All pools turn over in the same time, so the common return is shared by their volumes.
    private void Deliver(Pump pump, double litres)
    {
        var into = _pools.Values.Where(p => pump.Setup.Pool.Length == 0 || pump.Setup.Pool == p.Setup.Id);
        var volume = into.Sum(p => p.Setup.VolumeM3);
        foreach (var pool in into) pool.Dose(litres * pool.Setup.VolumeM3 / volume, pump.Product, Water.Book);
    }

    private void Read(Probe probe, SampleLine line, double seconds, double stepHours)
    {
        var hours = seconds / 3600;
        var flows = Flows(probe.Setup, hours);
        probe.Pass(hours, stepHours, line.Flow(seconds, _views[WaterOf(probe.Setup).Setup.Id], flows), flows, Treatment);
    }

    // The sample lines are fed by the circulation: no pump, no sample, and the panel's interlock holds the dosing.
    private bool Flows(ProbeSetup probe, double hours)
    {
        if (!Treatment.Runs) return false;
        var flowSwitch = probe.Measures == Measures.SampleFlow ? probe.Id : probe.FlowSwitch;
        return flowSwitch.Length == 0 || !_flowFaults.TryGetValue(flowSwitch, out var found) || !found.Has(FaultKind.NoFlow, hours);
    }

    // What tells of the plant room names no pool; the water of the first is as good as any.
    private PoolWater WaterOf(ProbeSetup probe) => _pools[probe.Pool.Length > 0 ? probe.Pool : Setup.Pools[0].Id];

    private static int PanelDecimals(Measures measures) => measures switch
    {
        Measures.Ph or Measures.FreeChlorine => 2,
        Measures.Temperature => 1,
        _ => 0,
    };
}
