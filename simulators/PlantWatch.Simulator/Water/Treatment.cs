using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Water;

/// <summary>Circulation pump, pipes and filters of a circuit: how much water goes round, and what pressure the filters take.</summary>
/// <remarks>
/// The pump's pressure falls, and that of the pipes rises, with the square of the flow; that of the filters, side by side between two headers, is proportional to it.
/// With the flow q in shares of the design and r the resistance of the filters together, in shares of the clean ones:
/// shut-off = (shut-off - clean) q^2 + clean r q. Clean filters give the design flow.
/// </remarks>
internal sealed class Treatment
{
    private readonly CircuitSetup _setup;

    /// <summary>The plant room of a circuit.</summary>
    public Treatment(CircuitSetup setup)
    {
        _setup = setup;
        Beds = [.. setup.Filters.Select(f => new FilterBed(f))];
        DesignFlow = setup.Pools.Sum(p => p.VolumeM3) / setup.TurnoverHours;
    }

    /// <summary>The filters.</summary>
    public IReadOnlyList<FilterBed> Beds { get; }

    /// <summary>Circulation by design, m3/h.</summary>
    public double DesignFlow { get; }

    /// <summary>The pump runs and its water goes to the pools.</summary>
    public bool Runs { get; private set; } = true;

    /// <summary>Circulation in shares of the design.</summary>
    public double Share => !Runs ? 0 : Beds.Count == 0 ? 1 : Solved(Together);

    /// <summary>Circulation, m3/h.</summary>
    public double Flow => Share * DesignFlow;

    /// <summary>Pressure across the filters, kPa.</summary>
    public double Pressure => Beds.Count == 0 ? 0 : _setup.FilterCleanKpa * Together * Share;

    /// <summary>A filter by its id; null when there is none.</summary>
    public FilterBed? Bed(string id) => Beds.FirstOrDefault(b => b.Setup.Id == id);

    /// <summary>Lets time pass.</summary>
    public void Pass(double hours, int bathers, bool runs)
    {
        Runs = runs;
        if (!runs) return;
        // Side by side the water takes the easier way, and its dirt with it.
        var conductance = Beds.Sum(b => 1 / b.Resistance);
        foreach (var bed in Beds) bed.Catch(bathers * hours, hours, Beds.Count / bed.Resistance / conductance);
    }

    private double Together => Beds.Count / Beds.Sum(b => 1 / b.Resistance);

    private double Solved(double resistance)
    {
        var (square, line) = (_setup.PumpShutOffKpa - _setup.FilterCleanKpa, _setup.FilterCleanKpa * resistance);
        return (Math.Sqrt((line * line) + (4 * square * _setup.PumpShutOffKpa)) - line) / (2 * square);
    }
}
