using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>
/// Watches the two dosing pumps of a pool by what their strokes do to the water. Several accounts of each pump run beside each other, the healthy one among them; a verdict is the account that foresees the water best.
/// Every verdict uses only what came before it.
/// </summary>
[JsonConverter(typeof(PoolSupervisorJson))]
public sealed partial class PoolSupervisor
{
    // After standing, the water at the probes is that of the pipes for so long.
    private static readonly TimeSpan Settles = TimeSpan.FromMinutes(30);

    // Above these log odds nothing is learned any more: it might be the trouble.
    private const double Suspicion = 4;

    private readonly PumpedPool _pool;
    private readonly WatchedPump[] _pumps;
    private readonly SwapJudge _swap;
    private readonly RedoxSense _redox;
    private readonly LoopSights _sights;
    private readonly UsualLevel _chlorine = new(0.95), _need = new(0.9995);
    private readonly List<PumpVerdict> _verdicts = [];
    private FiveMinutes? _bin;
    private Instant _stoodAt;
    private bool _stepped;

    /// <summary>Begins with nothing learned.</summary>
    public PoolSupervisor(PumpedPool pool)
    {
        ArgumentNullException.ThrowIfNull(pool);
        _pool = pool;
        _redox = new RedoxSense(pool.ChlorinePerStroke);
        _sights = new LoopSights(_redox);
        _swap = new SwapJudge(pool);
        _pumps =
        [
            new(DosedProduct.Acid, pool.Acid, new DosingLoop(LoopSetting.OfPh(pool), null)),
            new(DosedProduct.Chlorine, pool.Chlorine, new DosingLoop(LoopSetting.OfNeed(), _redox)),
        ];
    }

    /// <summary>A test by hand found so much free chlorine, in mg/L.</summary>
    public void Test(double freeChlorine) => _redox.UsualChlorine = Math.Max(0.2, _chlorine.Take(freeChlorine));

    /// <summary>Takes in what was heard at one sample time, and says what it changes. The list is good until the next call.</summary>
    public IReadOnlyList<PumpVerdict> Take(in PlantMinute minute)
    {
        _verdicts.Clear();
        if (_bin is { } full && minute.At - full.From >= FiveMinutes.Span) Close(full);
        if (_bin is null || minute.At - _bin.From >= FiveMinutes.Span) _bin = FiveMinutes.Of(minute.At);
        _bin.Add(minute, _pumps[0].Full, _pumps[1].Full);
        if (minute.Circulates == false) _stoodAt = minute.At;
        foreach (var pump in _pumps) Hear(pump, minute);
        return _verdicts;
    }

    private void Hear(WatchedPump pump, in PlantMinute minute)
    {
        if (minute.Litres(pump.Product) is { } litres) pump.Tank.Hear(litres);
        if (minute.Strokes(pump.Product) is not { } strokes) return;
        pump.Hear(strokes, minute.Circulates != false);
        Say(pump, ref pump.Standing, minute.Circulates == false && strokes > 0, PumpTrouble.WithoutCirculation, minute.At);
        Say(pump, ref pump.Stuck, pump.Leap.At is not null, PumpTrouble.StuckOn, minute.At);
    }

    private void Say(WatchedPump pump, ref bool said, bool holds, PumpTrouble trouble, Instant at)
    {
        if (said != holds) _verdicts.Add(new(at, pump.Product, trouble, holds));
        said = holds;
    }

    private void Close(FiveMinutes bin)
    {
        var (end, hour) = (bin.From + FiveMinutes.Span, (int)(bin.From.UnixMicroseconds / 3_600_000_000 % 24));
        var (acid, chlorine) = (_pumps[0], _pumps[1]);
        Step(bin);
        chlorine.Push(bin.Strokes(1), 0);
        acid.Push(bin.Strokes(0), bin.Strokes(1) * _pool.AcidPerChlorineStroke);
        var seen = bin.Circulated && end - _stoodAt > Settles;
        LearnNeed(bin, seen);
        LoopSpan ofAcid = new(acid.Strokes, acid.Extra, hour, _sights.Acid(bin, seen)), ofChlorine = new(chlorine.Strokes, chlorine.Extra, hour, _sights.Chlorine(bin, seen, !chlorine.Stuck, chlorine.Full));
        if (!HasBegun(acid, ofAcid.Sight, ofAcid.Sight.Value, 0.02) || !HasBegun(chlorine, ofChlorine.Sight, bin.Strokes(1) / DosingLoop.Minutes, 2)) return;
        acid.Pass(ofAcid, IsQuiet(acid));
        chlorine.Pass(ofChlorine, IsQuiet(chlorine));
        _swap.Pass(acid.Loop, chlorine.Loop, ofAcid, ofChlorine);
        foreach (var pump in _pumps) Judge(pump, end, hour, seen);
        JudgeSwap(end);
    }

    private void LearnNeed(FiveMinutes bin, bool seen)
    {
        if (seen && bin.Heard(1) && !_pumps[1].Stuck && IsQuiet(_pumps[1])) _redox.UsualNeed = _need.Take(bin.Strokes(1) / DosingLoop.Minutes);
    }

    private static bool HasBegun(WatchedPump pump, in LoopSight sight, double value, double sd)
    {
        if (!pump.Loop.Started && sight.Shown != Shown.Nothing) pump.Loop.Start(value, sd);
        return pump.Loop.Started;
    }

    private bool IsQuiet(WatchedPump pump) => pump.Judge.Best <= Suspicion && _swap.Odds <= Suspicion && !pump.Stuck;

    private void Judge(WatchedPump pump, Instant end, int hour, bool seen)
    {
        Say(pump, ref pump.Empty, pump.Tank.EmptiedItself, PumpTrouble.EmptyTank, end);
        pump.Balance.Add(pump, end, hour, seen);
        pump.Balance.Release(pump.Loop.Pattern, end, pump.IsWell && !_swap.Said, pump.Judge.Best < Suspicion && _swap.Odds < Suspicion);
        pump.Judge.Renew(pump.Loop, pump.Tank.Healthy, end);
        var (raised, cleared) = pump.Judge.Judge(pump.Loop, !pump.Stuck && !pump.Empty);
        if (cleared != PumpTrouble.None) _verdicts.Add(new(end, pump.Product, cleared, false));
        if (raised is not null) _verdicts.Add(new(end, pump.Product, raised.Kind, true, raised.Evidence(pump.Loop, end, raised.Odds, pump.LitresPerStroke, _pool.ChlorinePerStroke)));
    }

    private void JudgeSwap(Instant end)
    {
        _swap.Renew(_pumps[0].Loop, _pumps[1].Loop, end);
        if (!_swap.Judge()) return;
        for (var i = 0; i < _pumps.Length; i++)
            _verdicts.Add(new(end, _pumps[i].Product, PumpTrouble.Swapped, _swap.Said, _swap.Said ? _swap.Of(i).Evidence(_pumps[i].Loop, end, _swap.Odds, _pumps[i].LitresPerStroke, _pool.ChlorinePerStroke) : null));
    }
}
