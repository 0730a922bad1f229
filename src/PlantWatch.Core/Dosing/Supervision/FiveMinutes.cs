using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What was heard in five minutes, by the clock.</summary>
internal sealed class FiveMinutes
{
    public static readonly TimeSpan Span = TimeSpan.FromMinutes(5);

    private readonly double[] _strokes = new double[2];
    private readonly int[] _heard = new int[2], _still = new int[2], _flatOut = new int[2];
    private double _ph, _phSquares, _orp, _orpSquares, _first;
    private int _phs, _orps;

    public Instant From { get; private set; }

    public bool Circulated { get; private set; } = true;

    public static FiveMinutes Of(Instant at) => new() { From = Floor(at) };

    public static Instant Floor(Instant at) => Instant.FromUnixMicroseconds(at.UnixMicroseconds / (Span.Ticks / 10) * (Span.Ticks / 10));

    public void Add(in PlantMinute minute, double fullAcid, double fullChlorine)
    {
        if (minute.Circulates == false) Circulated = false;
        Count(0, minute.AcidStrokes, fullAcid);
        Count(1, minute.ChlorineStrokes, fullChlorine);
        if (minute.Ph is { } ph)
        {
            if (_phs == 0) _first = ph;
            (_ph, _phSquares, _phs) = (_ph + ph, _phSquares + ((ph - _first) * (ph - _first)), _phs + 1);
        }

        if (minute.Orp is { } orp) (_orp, _orpSquares, _orps) = (_orp + orp, _orpSquares + (orp * orp), _orps + 1);
    }

    /// <summary>Strokes heard; minutes that were not heard count as the mean of the others.</summary>
    public double Strokes(int pump) => _heard[pump] == 0 ? 0 : _strokes[pump] * 5 / _heard[pump];

    public bool Heard(int pump) => _heard[pump] > 0;

    public bool AllStill(int pump) => _still[pump] == _heard[pump];

    public bool AllFlatOut(int pump) => _flatOut[pump] == _heard[pump];

    public double? Ph => _phs == 0 ? null : _ph / _phs;

    public double? Orp => _orps == 0 ? null : _orp / _orps;

    /// <summary>Scatter of single ORP samples; null with fewer than three.</summary>
    public double? OrpVariance => _orps < 3 ? null : Math.Max(0, _orpSquares - (_orp * _orp / _orps)) / (_orps - 1);

    /// <summary>Scatter of single pH samples; null with fewer than three.</summary>
    public double? PhVariance => _phs < 3 ? null : Math.Max(0, _phSquares - (((_ph - (_phs * _first)) * (_ph - (_phs * _first))) / _phs)) / (_phs - 1);

    public void Keep(Tape tape)
    {
        (From, Circulated) = (tape.Next(From), tape.Next(Circulated));
        tape.All(_strokes);
        tape.All(_heard);
        tape.All(_still);
        tape.All(_flatOut);
        (_ph, _phSquares, _orp, _orpSquares, _first) = (tape.Next(_ph), tape.Next(_phSquares), tape.Next(_orp), tape.Next(_orpSquares), tape.Next(_first));
        (_phs, _orps) = (tape.Next(_phs), tape.Next(_orps));
    }

    private void Count(int pump, double? strokes, double full)
    {
        if (strokes is not { } s) return;
        _strokes[pump] += s;
        _heard[pump]++;
        if (s < 0.5) _still[pump]++;
        if (s >= full - 0.5) _flatOut[pump]++;
    }
}
