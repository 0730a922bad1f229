using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Live;

/// <summary>What changed in a circuit since the browsers were last told.</summary>
internal sealed class CircuitPulse
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, Reading> _readings = new(StringComparer.Ordinal);
    private Dictionary<string, int> _probes = new(StringComparer.Ordinal);
    private CircuitPlan? _indexed;
    private CircuitState? _shown;
    private CircuitState? _newest;

    public void Take(CircuitWorker worker, StepResult result)
    {
        lock (_gate)
        {
            _newest = result.Next;
            foreach (var reading in result.Readings)
                if (reading.Order == Order.Newest) _readings[reading.Series] = reading;
        }
    }

    public IReadOnlyList<ReadingPoint>? TakeReadings()
    {
        lock (_gate)
        {
            if (_readings.Count == 0 || _newest is null) return null;
            // Many commits lie between two beats: what they share is made once a beat.
            ReadingPoint[] points = [.. _readings.Values.Select(r => Point(_newest, r))];
            _readings.Clear();
            return points;
        }
    }

    /// <summary>True when something but numbers changed since the last view, or when numbers did and it is time again.</summary>
    public bool WantsView(bool timeForNumbers)
    {
        lock (_gate)
        {
            if (_newest is null || ReferenceEquals(_shown, _newest)) return false;
            if (!timeForNumbers && _shown is not null && !DiffersInKind(_shown, _newest)) return false;
            _shown = _newest;
            return true;
        }
    }

    public void Forget()
    {
        lock (_gate)
        {
            _readings.Clear();
            _shown = null;
        }
    }

    private static bool DiffersInKind(CircuitState a, CircuitState b)
    {
        if (!ReferenceEquals(a.Plan, b.Plan) || !ReferenceEquals(a.Alarms, b.Alarms) || !ReferenceEquals(a.Jobs, b.Jobs) || !ReferenceEquals(a.Incidents, b.Incidents) || a.Calibrations != b.Calibrations) return true;
        for (var i = 0; i < a.Pools.Length; i++)
            if (!ReferenceEquals(a.Pools[i], b.Pools[i])) return true;
        for (var i = 0; i < a.Pumps.Length; i++)
            if (a.Pumps[i].Activity != b.Pumps[i].Activity) return true;
        for (var i = 0; i < a.Probes.Length; i++)
            if (!ReferenceEquals(a.Probes[i].Trust, b.Probes[i].Trust) || a.Probes[i].Signal.Standing != b.Probes[i].Signal.Standing || a.Probes[i].Work != b.Probes[i].Work) return true;
        return false;
    }

    private ReadingPoint Point(CircuitState state, Reading reading)
    {
        if (!ReferenceEquals(_indexed, state.Plan)) Index(state);
        var value = reading.Raw;
        if (_probes.TryGetValue(reading.Series, out var i) && state.Probes[i].Last is var last && last.MeasuredAt == reading.MeasuredAt) value = last.Value;
        return new ReadingPoint(reading.Series, reading.MeasuredAt.UnixMilliseconds, reading.Raw, value, reading.Quality.IsGood());
    }

    private void Index(CircuitState state)
    {
        _probes = new Dictionary<string, int>(state.Probes.Length, StringComparer.Ordinal);
        for (var i = 0; i < state.Probes.Length; i++) _probes[state.Probes[i].Id] = i;
        _indexed = state.Plan;
    }
}
