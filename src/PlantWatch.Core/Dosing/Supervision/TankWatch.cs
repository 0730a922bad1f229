namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>The level of a pump's tank against what its strokes draw.</summary>
/// <param name="litresPerStroke">What a stroke draws, in L.</param>
internal sealed class TankWatch(double litresPerStroke)
{
    // Below the foot of the sensor a level stands still whatever is drawn; so little is an empty tank; and a leap is beyond waves and noise (common practice).
    private const double Foot = 1.5, Nothing = 0.75, Leap = 2.5;
    private const int Samples = 2;

    private TankBelief _healthy;
    private bool _known;
    private int _nothings;
    private double? _heard;

    /// <summary>It emptied itself. What its own strokes drew empty is a matter of refilling until the water shows it.</summary>
    public bool EmptiedItself { get; private set; }

    /// <summary>The level as the healthy account has it.</summary>
    public TankBelief Healthy => _healthy;

    // A sensor about nil shows a little less than nothing.
    public void Hear(double litres) => _heard = Math.Max(0, litres);

    /// <summary>Five minutes pass: every account draws its own, and is judged by the level.</summary>
    public void Pass(double strokes, double usual, PumpAccount[] accounts)
    {
        _healthy.Draw(strokes * litresPerStroke);
        foreach (var account in accounts) account.Tank.Draw((((account.Kind == PumpTrouble.LostPrime ? 0 : strokes)) + (account.Leaks * usual)) * litresPerStroke);
        if (_heard is not { } litres) return;
        _heard = null;
        LookForNothing(litres);
        if (!_known || Leapt(litres)) Anew(litres, accounts);
        else Judge(litres, accounts);
    }

    public void Keep(Tape tape)
    {
        _healthy.Keep(tape);
        (_known, _nothings, _heard, EmptiedItself) = (tape.Next(_known), tape.Next(_nothings), tape.Next(_heard), tape.Next(EmptiedItself));
    }

    private void LookForNothing(double litres)
    {
        var fell = _nothings > 0 || (_known && _healthy.Litres - litres > Leap);
        _nothings = litres < Nothing && fell ? _nothings + 1 : 0;
        EmptiedItself = _nothings >= Samples || (EmptiedItself && litres < Foot);
    }

    private bool Leapt(double litres) => Math.Abs(litres - _healthy.Litres) > Math.Max(Leap, 6 * Math.Sqrt(_healthy.Variance + TankBelief.Noise));

    // Filled, emptied, or heard for the first time.
    private void Anew(double litres, PumpAccount[] accounts)
    {
        (_known, _healthy) = (true, new TankBelief { Litres = litres, Variance = TankBelief.Noise });
        foreach (var account in accounts) account.Tank = _healthy;
    }

    private void Judge(double litres, PumpAccount[] accounts)
    {
        var healthy = _healthy.See(litres);
        foreach (var account in accounts)
        {
            if (litres < Foot) account.Tank = _healthy;
            else account.Credit(account.Tank.See(litres) - healthy);
        }
    }
}
