namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>Turns five minutes of signals into what the two loops see, and learns meanwhile how much the signals scatter.</summary>
internal sealed class LoopSights(RedoxSense redox)
{
    // A part of what was learned gives way with each bin: half a day.
    private const double Slowly = 0.01, VerySlowly = 0.003;

    // Rounding of a stroke a minute, within a bin partly averaged; and of whether a pump stands.
    private const double StrokeVariance = 0.03, StandsVariance = 0.02;

    // Bins between two potentials that show how far the level wanders.
    private const int Apart = 12;

    private readonly Queue<double> _potentials = new();
    private double _phScatter = 1e-4, _orpScatter = 4;

    /// <summary>What pH shows of the acid loop.</summary>
    public LoopSight Acid(FiveMinutes bin, bool moves)
    {
        if (!moves || bin.Ph is not { } ph) return default;
        if (bin.PhVariance is { } scatter) _phScatter += (scatter - _phScatter) * Slowly;
        return new(Shown.Figure, ph, (_phScatter / DosingLoop.Minutes) + 2e-6, null, 0);
    }

    /// <summary>What strokes and redox show of the chlorine loop. A pump that its controller does not lead shows no need.</summary>
    public LoopSight Chlorine(FiveMinutes bin, bool moves, bool isLed, double full)
    {
        double? potential = moves && bin.Orp is { } orp && bin.Ph is { } ph ? RedoxSense.WithoutPh(orp, ph) : null;
        Learn(bin, potential);
        if (!moves) return default;
        var variance = (_orpScatter / DosingLoop.Minutes) + 0.1;
        if (!isLed || !bin.Heard(1)) return new(Shown.Nothing, 0, 0, potential, variance);
        if (bin.AllStill(1)) return new(Shown.NoHigher, 0.5, StandsVariance, potential, variance);
        return bin.AllFlatOut(1) ? new(Shown.NoLower, full - 0.5, StandsVariance, potential, variance) : new(Shown.Figure, bin.Strokes(1) / DosingLoop.Minutes, StrokeVariance, potential, variance);
    }

    public void Keep(Tape tape)
    {
        tape.All(_potentials);
        (_phScatter, _orpScatter) = (tape.Next(_phScatter), tape.Next(_orpScatter));
    }

    private void Learn(FiveMinutes bin, double? potential)
    {
        if (potential is not { } now)
        {
            _potentials.Clear();
            return;
        }

        if (bin.OrpVariance is { } scatter) _orpScatter += (scatter - _orpScatter) * Slowly;
        _potentials.Enqueue(now);
        if (_potentials.Count > Apart) Wander(now - _potentials.Dequeue());
    }

    private void Wander(double moved)
    {
        var known = redox.Drift * redox.Drift;
        var seen = Math.Max(0.001, ((moved * moved) - (2 * _orpScatter / DosingLoop.Minutes)) / (Apart * DosingLoop.Minutes));
        redox.Drift = Math.Sqrt(known + ((Math.Min(seen, 9 * known) - known) * VerySlowly));
    }
}
