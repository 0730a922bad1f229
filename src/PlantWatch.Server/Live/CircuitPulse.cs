using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Live;

/// <summary>What changed in a circuit since the browsers were last told.</summary>
internal sealed class CircuitPulse
{
    private readonly Lock gate = new();
    private Dictionary<string, ReadingPoint> readings = new(StringComparer.Ordinal);
    private CircuitState? shown;
    private CircuitState? newest;

    public void Take(CircuitWorker worker, StepResult result)
    {
        lock (gate)
        {
            newest = result.Next;
            foreach (var reading in result.Readings)
                if (reading.Order == Order.Newest) readings[reading.Series] = Point(result.Next, reading);
        }
    }

    public IReadOnlyList<ReadingPoint>? TakeReadings()
    {
        lock (gate)
        {
            if (readings.Count == 0) return null;
            var taken = readings;
            readings = new Dictionary<string, ReadingPoint>(StringComparer.Ordinal);
            return [.. taken.Values];
        }
    }

    /// <summary>True when something but numbers changed since the last view, or when numbers did and it is time again.</summary>
    public bool WantsView(bool timeForNumbers)
    {
        lock (gate)
        {
            if (newest is null || ReferenceEquals(shown, newest)) return false;
            if (!timeForNumbers && shown is not null && !DiffersInKind(shown, newest)) return false;
            shown = newest;
            return true;
        }
    }

    public void Forget()
    {
        lock (gate)
        {
            readings.Clear();
            shown = null;
        }
    }

    private static bool DiffersInKind(CircuitState a, CircuitState b)
    {
        if (!ReferenceEquals(a.Plan, b.Plan) || !ReferenceEquals(a.Alarms, b.Alarms) || !ReferenceEquals(a.Faults, b.Faults) || a.Calibrations != b.Calibrations) return true;
        for (var i = 0; i < a.Pools.Length; i++)
            if (!ReferenceEquals(a.Pools[i], b.Pools[i])) return true;
        for (var i = 0; i < a.Pumps.Length; i++)
            if (a.Pumps[i].Activity != b.Pumps[i].Activity) return true;
        for (var i = 0; i < a.Probes.Length; i++)
            if (!ReferenceEquals(a.Probes[i].Trust, b.Probes[i].Trust) || a.Probes[i].Signal.Standing != b.Probes[i].Signal.Standing) return true;
        return false;
    }

    private static ReadingPoint Point(CircuitState state, Reading reading)
    {
        var value = reading.Raw;
        foreach (var probe in state.Probes)
            if (probe.Id == reading.Series && probe.Last.MeasuredAt == reading.MeasuredAt) value = probe.Last.Value;
        return new ReadingPoint(reading.Series, reading.MeasuredAt.UnixMilliseconds, reading.Raw, value, reading.Quality.IsGood());
    }
}
