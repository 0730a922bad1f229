using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>
/// One account of a pump since some moment, beside the account that all is well. It begins anew from the healthy one whenever that foresaw the water better: a cumulative sum of log likelihood ratios.
/// </summary>
/// <param name="kind">What it says.</param>
/// <param name="arrives">Part of what is stroked that acts; negative where it acts the other way.</param>
/// <param name="leaks">What comes without strokes, in usual demands.</param>
/// <remarks>E. S. Page, Biometrika 41 (1954) 100.</remarks>
internal sealed class PumpAccount(PumpTrouble kind, double arrives, double leaks)
{
    // One bin decides nothing.
    private const double MostCredit = 3;

    private double _from, _expected;

    public LoopBelief Belief;
    public TankBelief Tank;

    public PumpTrouble Kind => kind;

    public double Arrives => arrives;

    public double Leaks => leaks;

    /// <summary>The cell of the loop in whose terms it thinks.</summary>
    public int Cell { get; private set; }

    /// <summary>Log of how much better than the healthy account it foresaw what came since.</summary>
    public double Odds { get; set; }

    public Instant Since { get; private set; }

    public double Strokes { get; private set; }

    public void Begin(DosingLoop loop, in TankBelief tank, Instant at)
    {
        (Cell, Odds, Since, Strokes) = (loop.Likeliest, 0, at, 0);
        (Belief, Tank) = (loop.Belief(Cell), tank);
        (_from, _expected) = (Belief.V, 0);
    }

    /// <summary>Five minutes pass by this account, in which so many strokes acted.</summary>
    public void Pass(DosingLoop loop, double acted, in LoopSpan span)
    {
        var lag = loop.Setting.Lag(Cell);
        _expected += loop.Setting.Fall(Cell) * ((loop.Pattern.Usual(span.Hour) * DosingLoop.Minutes) + span.Extra[lag] - span.Strokes[lag]);
        Credit(loop.Pass(ref Belief, Cell, acted, span) - loop.LastLikelihood(Cell));
        Strokes += span.Strokes[0];
    }

    /// <summary>How likely a trouble is at log odds, given how seldom there is one.</summary>
    public static double Certainty(double odds) => 1 / (1 + Math.Exp(PumpJudge.Beforehand - odds));

    public void Shift(double by)
    {
        Belief.V += by;
        _from += by;
    }

    public void Keep(Tape tape)
    {
        (_from, _expected) = (tape.Next(_from), tape.Next(_expected));
        Belief.Keep(tape);
        Tank.Keep(tape);
        (Cell, Odds, Since, Strokes) = (tape.Next(Cell), tape.Next(Odds), tape.Next(Since), tape.Next(Strokes));
    }

    /// <summary>What was seen is so much likelier by this account.</summary>
    public void Credit(double odds) => Odds += Math.Clamp(odds, -MostCredit, MostCredit);

    /// <summary>What speaks for it, at log odds that may be those of more accounts than this one.</summary>
    public PumpEvidence Evidence(DosingLoop loop, Instant at, double odds, double litresPerStroke, double chlorinePerStroke)
    {
        // A need that rises is chlorine that falls.
        var scale = loop.Redox is null ? 1 : -chlorinePerStroke / loop.Setting.Fall(Cell);
        var leaked = leaks * loop.Pattern.Mean * (at - Since).TotalMinutes;
        return new(Since, Strokes, ((Strokes * (1 - Math.Max(0, arrives))) - leaked) * litresPerStroke, scale * _expected, scale * (loop.Value - _from), Certainty(odds));
    }
}
