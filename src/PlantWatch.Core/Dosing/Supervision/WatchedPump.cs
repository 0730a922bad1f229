namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>All that is kept of one pump.</summary>
internal sealed class WatchedPump
{
    // Highest rate that was held for so many samples is flat out.
    private const int FlatOutSamples = 10;
    private const double LeastFull = 10;

    private double _most;
    private int _mostHeard;

    public WatchedPump(DosedProduct product, DosingPump pump, DosingLoop loop)
    {
        (Product, Loop) = (product, loop);
        LitresPerStroke = pump.MillilitresPerStroke / 1000;
        Tank = new TankWatch(LitresPerStroke);
    }

    public DosedProduct Product { get; }

    public double LitresPerStroke { get; }

    public DosingLoop Loop { get; }

    public TankWatch Tank { get; }

    public PumpJudge Judge { get; } = new();

    public StrokeLeap Leap { get; } = new();

    public HourBalance Balance { get; } = new();

    /// <summary>Strokes a bin, newest first.</summary>
    public double[] Strokes { get; } = new double[LoopSetting.MostLag + 1];

    /// <summary>Demand that the other product made, in the same order.</summary>
    public double[] Extra { get; } = new double[LoopSetting.MostLag + 1];

    /// <summary>Strokes a minute when it runs flat out; endless until it was seen to.</summary>
    public double Full { get; private set; } = double.MaxValue;

    /// <summary>What its samples alone say.</summary>
    public bool Standing, Stuck, Empty;

    /// <summary>Nothing is wrong or looks so.</summary>
    public bool IsWell => Judge.Said == PumpTrouble.None && !Stuck && !Empty;

    public void Hear(double strokes, bool circulates)
    {
        if (strokes > _most + 0.5) (_most, _mostHeard) = (strokes, 0);
        if (strokes > _most - 0.5 && ++_mostHeard >= FlatOutSamples && _most >= LeastFull) Full = _most;
        Leap.Take(strokes, circulates);
    }

    public void Push(double strokes, double extra)
    {
        Array.Copy(Strokes, 0, Strokes, 1, Strokes.Length - 1);
        Array.Copy(Extra, 0, Extra, 1, Extra.Length - 1);
        (Strokes[0], Extra[0]) = (strokes, extra);
    }

    /// <summary>Five minutes pass.</summary>
    public void Pass(in LoopSpan span, bool learns)
    {
        Loop.Take(span, learns);
        foreach (var account in Judge.Accounts)
        {
            var lag = Loop.Setting.Lag(account.Cell);
            account.Pass(Loop, (account.Arrives * Strokes[lag]) + (account.Leaks * Loop.Pattern.Mean * DosingLoop.Minutes) - Extra[lag], span);
        }

        Tank.Pass(Strokes[0], Loop.Pattern.Mean * DosingLoop.Minutes, Judge.Accounts);
    }

    /// <summary>Takes over what the samples of the same pump showed before: it is of the pump, whatever water it doses.</summary>
    /// <param name="before">The pump as it was watched.</param>
    /// <param name="strokes">Its strokes mean what they meant: how fast it can be and what it leapt to are counted in them.</param>
    public void GoesOnFrom(WatchedPump before, bool strokes)
    {
        (Standing, Stuck, Empty) = (before.Standing, before.Stuck, before.Empty);
        Tape tank = Tape.Blank(), leap = Tape.Blank();
        before.Tank.Keep(tank);
        Tank.Keep(tank.Rewound());
        if (!strokes) return;
        (_most, _mostHeard, Full) = (before._most, before._mostHeard, before.Full);
        before.Leap.Keep(leap);
        Leap.Keep(leap.Rewound());
    }

    public void Keep(Tape tape)
    {
        (_most, _mostHeard, Full) = (tape.Next(_most), tape.Next(_mostHeard), tape.Next(Full));
        (Standing, Stuck, Empty) = (tape.Next(Standing), tape.Next(Stuck), tape.Next(Empty));
        tape.All(Strokes);
        tape.All(Extra);
        Loop.Keep(tape);
        Tank.Keep(tape);
        Judge.Keep(tape);
        Leap.Keep(tape);
        Balance.Keep(tape);
    }
}
