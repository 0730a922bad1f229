using System.Runtime.InteropServices;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What happens to a loop in five minutes.</summary>
/// <param name="Strokes">Strokes by how many bins ago, newest first.</param>
/// <param name="Extra">Demand that the other product makes, in strokes, in the same order.</param>
/// <param name="Hour">Hour of the day.</param>
/// <param name="Sight">What shows.</param>
internal readonly record struct LoopSpan(double[] Strokes, double[] Extra, int Hour, LoopSight Sight);

/// <summary>
/// One pump and the value its controller holds. How much a stroke moves the value, how late, and how much the value wanders are the likeliest cell of a grid, learned from the loop's own play; what the pool usually
/// asks is learned from mass balance. The acid loop's value is pH. The chlorine loop's is the need, in strokes a minute, that its controller shows by what it asks for: no probe of free chlorine is wanted.
/// </summary>
/// <remarks>A bank of Kalman filters on a grid of parameters: D. T. Magill, IEEE Trans. Automatic Control 10 (1965) 434, from memory.</remarks>
internal sealed class DosingLoop
{
    /// <summary>Minutes of a bin.</summary>
    public const double Minutes = 5;

    // Demand beyond the usual lasts part of a day: a crowd, the sun (common practice).
    private static readonly double Keeps = Math.Exp(-Minutes / 300);

    // A cell takes over only when it is clearly likelier.
    private const double Clearly = 0.5;

    private readonly LoopBelief[] _cells;
    private readonly double[] _weights, _last;

    public DosingLoop(LoopSetting setting, RedoxSense? redox)
    {
        (Setting, Redox) = (setting, redox);
        (_cells, _weights, _last) = (new LoopBelief[setting.Cells], new double[setting.Cells], new double[setting.Cells]);
        for (var i = 0; i < _weights.Length; i++) _weights[i] = setting.Prior(i);
    }

    public LoopSetting Setting { get; }

    /// <summary>What redox shows of the loop; null where it shows nothing.</summary>
    public RedoxSense? Redox { get; }

    public DemandPattern Pattern { get; } = new();

    public bool Started { get; private set; }

    /// <summary>The likeliest cell.</summary>
    public int Likeliest { get; private set; }

    /// <summary>The value as that cell has it.</summary>
    public double Value => _cells[Likeliest].V;

    public LoopBelief Belief(int cell) => _cells[cell];

    /// <summary>Log likelihood that a cell gave the last bin.</summary>
    public double LastLikelihood(int cell) => _last[cell];

    /// <summary>Demand against the usual by how much there is to be lost: chlorine decays in proportion.</summary>
    public double Share(in LoopBelief belief, int cell) => Redox?.Share(belief.V, Setting.Fall(cell)) ?? 1;

    public void Start(double value, double sd)
    {
        Array.Fill(_cells, LoopBelief.At(value, sd));
        Started = true;
    }

    /// <summary>Five minutes pass in every cell.</summary>
    public void Take(in LoopSpan span, bool learns)
    {
        for (var i = 0; i < _cells.Length; i++)
        {
            var lag = Setting.Lag(i);
            _last[i] = Pass(ref _cells[i], i, span.Strokes[lag] - span.Extra[lag], span);
            if (learns) _weights[i] += _last[i];
        }

        for (var i = 0; i < _cells.Length; i++)
            if (_weights[i] > _weights[Likeliest] + Clearly) Likeliest = i;
    }

    /// <summary>The same for one account of it, in the terms of a cell: so many strokes acted.</summary>
    public double Pass(ref LoopBelief belief, int cell, double acted, in LoopSpan span)
    {
        var minutes = Minutes * Share(belief, cell);
        var (wander, drift) = (Setting.Wander(cell), Redox?.Drift ?? 0);
        belief.Advance(
            Setting.Fall(cell), Pattern.Usual(span.Hour) * minutes, Pattern.Spread(span.Hour) * minutes, acted, wander * wander * Minutes, drift * drift * Minutes, Keeps);
        return See(ref belief, cell, span.Sight);
    }

    /// <summary>Only the value is known, in every cell.</summary>
    public void Anew()
    {
        for (var i = 0; i < _cells.Length; i++) _cells[i] = LoopBelief.At(_cells[i].V, Math.Sqrt(Math.Max(0, _cells[i].Vv)));
    }

    /// <summary>The value reads otherwise by so much, in every cell.</summary>
    public void Shift(double by)
    {
        for (var i = 0; i < _cells.Length; i++) _cells[i].V += by;
    }

    /// <summary>What the cells said of the last bin is told by none of it.</summary>
    public void Keep(Tape tape)
    {
        tape.All(MemoryMarshal.Cast<LoopBelief, double>(_cells.AsSpan()));
        tape.All(_weights);
        (Started, Likeliest) = (tape.Next(Started), tape.Next(Likeliest));
        Pattern.Keep(tape);
    }

    private double See(ref LoopBelief belief, int cell, in LoopSight sight)
    {
        var likelihood = sight.Shown switch
        {
            Shown.Figure => belief.See(sight.Value - belief.V, 1, 0, sight.Variance),
            Shown.NoHigher => belief.SeeBelow(sight.Value, sight.Variance),
            Shown.NoLower => belief.SeeAbove(sight.Value, sight.Variance),
            _ => 0,
        };
        return sight.Orp is { } orp && Redox is { } redox ? likelihood + redox.See(ref belief, Setting.Fall(cell), orp, sight.OrpVariance) : likelihood;
    }
}
