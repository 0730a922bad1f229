using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What a supervisor has learned of a pump, for people to see.</summary>
/// <param name="DaysLearned">Days of every hour that were learned.</param>
/// <param name="DaysWanted">Days before anything is judged.</param>
/// <param name="FullStrokes">Strokes a minute when it runs flat out; null until it was seen to.</param>
/// <param name="MovesPerStroke">By how much a stroke moves the value: pH that acid lowers, or strokes a minute that the chlorine controller asks for less.</param>
/// <param name="LagMinutes">Minutes from stroke to probe.</param>
/// <param name="LitresPerStroke">What a stroke delivers.</param>
/// <param name="Usual">What the pool usually asks of it, in strokes a minute by the hour of the day in UTC.</param>
/// <param name="Suspicion">How likely the likeliest trouble is, from 0 to 1, beside the account that all is well.</param>
public sealed record PumpInsight(
    double DaysLearned, double DaysWanted, double? FullStrokes, double MovesPerStroke, double LagMinutes, double LitresPerStroke, IReadOnlyList<double> Usual, double Suspicion)
{
    /// <summary>It is judged by the water.</summary>
    public bool IsJudged => DaysLearned >= DaysWanted;
}

public sealed partial class PoolSupervisor
{
    /// <summary>Strokes a minute of a pump that runs flat out; endless until it was seen to.</summary>
    public double Full(DosedProduct pump) => _pumps[(int)pump].Full;

    /// <summary>What was learned of a pump.</summary>
    public PumpInsight Insight(DosedProduct pump)
    {
        var (watched, loop) = (_pumps[(int)pump], _pumps[(int)pump].Loop);
        return new(
            loop.Pattern.Days, PumpJudge.LeastDays, watched.Full < double.MaxValue ? watched.Full : null, loop.Setting.Fall(loop.Likeliest), loop.Setting.Lag(loop.Likeliest) * DosingLoop.Minutes,
            watched.LitresPerStroke, [.. Enumerable.Range(0, 24).Select(loop.Pattern.Usual)], PumpAccount.Certainty(Math.Max(watched.Judge.Best, _swap.Odds)));
    }

    /// <summary>What speaks for a trouble now; null for one that its samples say, and while it does not hold.</summary>
    public PumpEvidence? Evidence(DosedProduct pump, PumpTrouble trouble, Instant at)
    {
        var watched = _pumps[(int)pump];
        if (trouble == PumpTrouble.Swapped) return _swap.Said ? _swap.Of((int)pump).Evidence(watched.Loop, at, _swap.Odds, watched.LitresPerStroke, _pool.ChlorinePerStroke) : null;
        if (trouble == PumpTrouble.None || watched.Judge.Said != trouble) return null;
        var account = watched.Judge.Accounts.Where(a => a.Kind == trouble).MaxBy(a => a.Odds)!;
        return account.Evidence(watched.Loop, at, account.Odds, watched.LitresPerStroke, _pool.ChlorinePerStroke);
    }

    /// <summary>The pH probe reads otherwise than before, for a reason of its own: worked on, calibrated, leapt. With its next reading the course goes on from there.</summary>
    public void ReadsOtherwise() => _stepped = true;

    /// <summary>A trouble of a pump is over: by how much its pool seemed to ask more or less meanwhile was the trouble, and every account of it begins anew.</summary>
    public void Mended(DosedProduct pump)
    {
        _pumps[(int)pump].Loop.Anew();
        foreach (var account in _pumps[(int)pump].Judge.Accounts) account.Odds = -1;
        for (var i = 0; i < _pumps.Length; i++) _swap.Of(i).Odds = -1;
    }

    private void Step(FiveMinutes bin)
    {
        if (!_stepped || bin.Ph is not { } ph) return;
        _stepped = false;
        if (_pumps[0].Loop.Started) Shift(ph - _pumps[0].Loop.Value);
    }

    private void Shift(double by)
    {
        _pumps[0].Loop.Shift(by);
        foreach (var account in _pumps[0].Judge.Accounts) account.Shift(by);
        _swap.Of(0).Shift(by);
    }
}
