using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The calibrations of a circuit, with those in force at hand for every reading.</summary>
internal sealed class CalibrationShelf
{
    private readonly CircuitPlan _plan;
    // Null while there is no calibration at all: most batches then need no places.
    private Calibration[]?[]? _inForce;

    public CalibrationShelf(ImmutableArray<Calibration> all, CircuitPlan plan)
    {
        _plan = plan;
        All = all;
        Sort();
    }

    public ImmutableArray<Calibration> All { get; private set; }

    public Calibration? Find(Guid id) => All.FirstOrDefault(c => c.Id == id);

    public void Put(Calibration calibration)
    {
        var known = Find(calibration.Id);
        All = known is null ? All.Add(calibration) : All.Replace(known, calibration);
        Sort();
    }

    /// <summary>Raw to corrected, by the calibration that holds at that time.</summary>
    public double Correct(int probe, Instant at, double raw)
    {
        if (_inForce?[probe] is not { } list) return raw;
        for (var i = list.Length - 1; i >= 0; i--)
            if (list[i].HoldsFrom <= at) return list[i].Apply(raw);
        return raw;
    }

    private void Sort()
    {
        if (All.IsEmpty) return;
        _inForce ??= new Calibration[]?[_plan.Probes.Length];
        for (var i = 0; i < _inForce.Length; i++)
        {
            Calibration[] list = [.. All.Where(c => c.ProbeId == _plan.Probes[i].Id && CalibrationsInForce.Corrects(c)).Order(CalibrationsInForce.ByTime)];
            _inForce[i] = list.Length > 0 ? list : null;
        }
    }
}
