using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>The account that the acid pump draws hypochlorite, and the chlorine pump none: acid strokes raise pH and chlorine, chlorine strokes do nothing of their own. Both loops must speak for it.</summary>
internal sealed class SwapJudge
{
    // Nine in ten. Being wrong empties a plant room and a pool, and the next time nobody runs; being late is gas. Against even odds it costs half an hour in the median and no find in simulated pools,
    // and a chlorine siphon is taken for it a little less often; ninety-nine in a hundred costs an hour and more (our choice, because of that: docs/decisions/0014-pumps-by-physics.md).
    private const double Limit = PumpJudge.Beforehand + 2.2;

    // Each loop alone: either by itself can look so on an idle day. Room and end as with the other accounts (our choice, on the seeds of the benchmark).
    private const double Each = 1.5, Room = 12, Over = 1;

    // What chance lifts above the limit falls again within the half hour.
    private const int Bins = 6;

    private readonly PumpAccount _acid, _chlorine;
    private readonly double _chlorineStrokesPerAcidStroke;
    private int _lasts;

    public SwapJudge(PumpedPool pool)
    {
        var caustic = pool.Chlorine.Strength * PumpedPool.CausticPerGram / pool.Acid.Strength;
        (_acid, _chlorine) = (new(PumpTrouble.Swapped, -caustic, 0), new(PumpTrouble.Swapped, 0, 0));
        _chlorineStrokesPerAcidStroke = pool.Acid.MillilitresPerStroke / pool.Chlorine.MillilitresPerStroke;
    }

    public bool Said { get; private set; }

    public double Odds => _acid.Odds + _chlorine.Odds;

    /// <summary>The account of a pump.</summary>
    public PumpAccount Of(int pump) => pump == 0 ? _acid : _chlorine;

    public void Pass(DosingLoop acid, DosingLoop chlorine, in LoopSpan ofAcid, in LoopSpan ofChlorine)
    {
        _acid.Pass(acid, _acid.Arrives * ofAcid.Strokes[acid.Setting.Lag(_acid.Cell)], ofAcid);
        _chlorine.Pass(chlorine, ofAcid.Strokes[chlorine.Setting.Lag(_chlorine.Cell)] * _chlorineStrokesPerAcidStroke, ofChlorine);
    }

    public void Renew(DosingLoop acid, DosingLoop chlorine, Instant at)
    {
        if (Odds >= 0 && PumpJudge.IsReady(acid) && PumpJudge.IsReady(chlorine)) return;
        _acid.Begin(acid, default, at);
        _chlorine.Begin(chlorine, default, at);
    }

    /// <summary>True when what is believed has changed.</summary>
    public bool Judge()
    {
        if (Odds > Limit + Room) (_acid.Odds, _chlorine.Odds) = (_acid.Odds * (Limit + Room) / Odds, _chlorine.Odds * (Limit + Room) / Odds);
        _lasts = Odds > Limit && Math.Min(_acid.Odds, _chlorine.Odds) > Each ? _lasts + 1 : 0;
        var now = Said ? Odds >= Over : _lasts >= Bins;
        if (now == Said) return false;
        Said = now;
        return true;
    }

    public void Keep(Tape tape)
    {
        _acid.Keep(tape);
        _chlorine.Keep(tape);
        (_lasts, Said) = (tape.Next(_lasts), tape.Next(Said));
    }
}
