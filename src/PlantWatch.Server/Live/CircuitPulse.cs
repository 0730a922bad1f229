using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Live;

/// <summary>What changed in a circuit since the browsers were last told.</summary>
internal sealed class CircuitPulse
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, Reading> readings = new(StringComparer.Ordinal);
    private Dictionary<string, int> probes = new(StringComparer.Ordinal);
    private CircuitPlan? indexed;
    private CircuitState? shown;
    private CircuitState? newest;

    public void Take(CircuitWorker worker, StepResult result)
    {
        lock (gate)
        {
            newest = result.Next;
            foreach (var reading in result.Readings)
                if (reading.Order == Order.Newest) readings[reading.Series] = reading;
        }
    }

    public IReadOnlyList<ReadingPoint>? TakeReadings()
    {
        lock (gate)
        {
            if (readings.Count == 0 || newest is null) return null;
            // Many commits lie between two beats: what they share is made once a beat.
            ReadingPoint[] points = [.. readings.Values.Select(r => Point(newest, r))];
            readings.Clear();
            return points;
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

    private ReadingPoint Point(CircuitState state, Reading reading)
    {
        if (!ReferenceEquals(indexed, state.Plan)) Index(state);
        var value = reading.Raw;
        if (probes.TryGetValue(reading.Series, out var i) && state.Probes[i].Last is var last && last.MeasuredAt == reading.MeasuredAt) value = last.Value;
        return new ReadingPoint(reading.Series, reading.MeasuredAt.UnixMilliseconds, reading.Raw, value, reading.Quality.IsGood());
    }

    private void Index(CircuitState state)
    {
        probes = new Dictionary<string, int>(state.Probes.Length, StringComparer.Ordinal);
        for (var i = 0; i < state.Probes.Length; i++) probes[state.Probes[i].Id] = i;
        indexed = state.Plan;
    }
}
