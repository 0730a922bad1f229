using System.Collections.Immutable;

namespace PlantWatch.Core.Probes;

/// <summary>How likely each part of the story is to be wrong, over all ways in which some of them may be.</summary>
internal sealed class StoryOdds
{
    private readonly ImmutableArray<Witness> _witnesses;
    private readonly double[] _of;

    private StoryOdds(ImmutableArray<Witness> witnesses, double[] of) => (_witnesses, _of) = (witnesses, of);

    /// <summary>Probability that nobody is wrong.</summary>
    public double Nobody => _of.Length > 0 ? _of[0] : 1;

    /// <summary>Weighs every set of wrong witnesses by what was known before and by what they said.</summary>
    /// <param name="witnesses">The witnesses, at most a handful.</param>
    /// <param name="before">Odds that a part is wrong, before anything was held against anything.</param>
    public static StoryOdds Of(ImmutableArray<Witness> witnesses, Func<StoryPart, double> before)
    {
        var logs = new double[1 << witnesses.Length];
        for (var wrong = 0; wrong < logs.Length; wrong++)
        {
            logs[wrong] = Hearing.Of(witnesses.AsSpan(), wrong).LogEvidence;
            for (var i = 0; i < witnesses.Length; i++)
                if ((wrong & (1 << i)) != 0) logs[wrong] += Math.Log(before(witnesses[i].Part));
        }

        var most = logs.Max();
        var sum = 0.0;
        for (var i = 0; i < logs.Length; i++) sum += logs[i] = Math.Exp(logs[i] - most);
        for (var i = 0; i < logs.Length; i++) logs[i] /= sum;
        return new(witnesses, logs);
    }

    /// <summary>Probability that a part is wrong, alone or with others.</summary>
    public double IsWrong(StoryPart part)
    {
        var (bit, sum) = (Bit(part), 0.0);
        for (var wrong = 0; wrong < _of.Length; wrong++)
            if ((wrong & bit) != 0) sum += _of[wrong];
        return sum;
    }

    /// <summary>The lowest and highest water that an explanation with more than one chance in a hundred leads to: while in doubt the worse end stands, so the bar is low.</summary>
    public (double LowPh, double HighPh, double LowLog, double HighLog) Range()
    {
        var range = (LowPh: double.MaxValue, HighPh: double.MinValue, LowLog: double.MaxValue, HighLog: double.MinValue);
        for (var wrong = 0; wrong < _of.Length; wrong++)
        {
            if (_of[wrong] <= 0.01) continue;
            var water = Hearing.Of(_witnesses.AsSpan(), wrong);
            range = (Math.Min(range.LowPh, water.Ph), Math.Max(range.HighPh, water.Ph), Math.Min(range.LowLog, water.LogChlorine), Math.Max(range.HighLog, water.LogChlorine));
        }

        return range;
    }

    private int Bit(StoryPart part)
    {
        for (var i = 0; i < _witnesses.Length; i++)
            if (_witnesses[i].Part == part) return 1 << i;
        return 0;
    }
}
