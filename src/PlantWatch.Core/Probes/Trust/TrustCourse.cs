using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>The course of a probe's trust: what is believed after everything up to a time, and how it moves on when a check, a leap or work on the probe comes next.</summary>
internal sealed class TrustCourse
{
    private readonly TrustModel _model;
    private readonly HypothesisBank _bank;
    private Scatter _scatter = Scatter.AsStated;
    private TrueSpread _spread;
    private Instant _newestPair;
    private double _test, _raw;
    private bool _byReagent = true, _leapt;

    public TrustCourse(TrustModel model)
    {
        _model = model;
        _bank = new(model);
        _test = model.GainAt;
    }

    public Instant Clock { get; private set; }

    /// <summary>Checks taken in since the probe was last worked on.</summary>
    public int Taken { get; private set; }

    public double Days => Taken == 0 ? 0 : (_newestPair - FirstTaken).TotalDays;

    public Instant FirstTaken { get; private set; }

    public Standing Standing { get; private set; }

    public bool Learning => _model.Learns && (Taken < _model.ChecksNeeded || Days < _model.DaysNeeded);

    /// <summary>The newest raw reading that was paired; not a number before the first.</summary>
    public double NewestRaw => _newestPair.IsSet ? _raw : double.NaN;

    public HypothesisBank Bank => _bank;

    /// <summary>Lets time pass.</summary>
    public void AdvanceTo(Instant at)
    {
        if (Clock.IsSet && at > Clock) _bank.Advance((at - Clock).TotalDays, _scatter.Ratio);
        Clock = Instant.Later(Clock, at);
    }

    /// <summary>Takes a pair in; its test is doubted when <see cref="HypothesisBank.Doubt"/> of 0 says so.</summary>
    public void Take(in PairedCheck pair, double corrected, double correctedU)
    {
        var days = _newestPair.IsSet ? (pair.SampledAt - _newestPair).TotalDays : 0;
        var watched = pair.WatchedSince.IsSet && _newestPair.IsSet && pair.WatchedSince <= _newestPair;
        // Another instrument is off by something else: what was learned of the first does not help with it.
        if (pair.ByReagent != _byReagent && _newestPair.IsSet && !_model.Learns) _bank.ForgetReference();
        (_byReagent, _newestPair, _raw, _test) = (pair.ByReagent, pair.SampledAt, pair.Raw.Value, pair.Test.Value);
        var sight = _model.Learns ? OnLine(pair, corrected, correctedU) : OfTest(pair, corrected, correctedU);
        var (mean, variance) = _bank.Moments(sight.Row);
        _bank.Take(sight, days, watched);
        if (_bank.Doubt(0) < 0.5)
        {
            _scatter.Learn((sight.Seen - mean) / Math.Sqrt(variance + sight.Variance));
            if (Taken++ == 0) FirstTaken = pair.SampledAt;
        }

        Judge();
    }

    /// <summary>The signal leapt.</summary>
    public void Leap(double by)
    {
        _bank.Leap(by);
        _leapt = true;
        Judge();
    }

    /// <summary>The probe was calibrated, replaced or renewed: its estimate starts anew, and a line with it.</summary>
    public void Restart()
    {
        _bank.Restart(keepsReference: !_model.Learns);
        (Taken, Standing, _leapt) = (0, Standing.Unknown, false);
    }

    /// <summary>The probe was cleaned and nothing else: a drift may have ended, and the bias is no longer known that well.</summary>
    public void Cleaned()
    {
        _bank.Cleaned();
        Judge();
    }

    /// <summary>A correction changed by a known amount; nothing happened to the probe.</summary>
    public void Shift(double amount)
    {
        _bank.Shift(amount);
        Judge();
    }

    /// <summary>What the probe reads less what it should, where the water is now.</summary>
    public Estimate Bias()
    {
        if (Taken == 0 || Learning) return default;
        var (mean, variance) = _bank.Moments(BiasRow);
        return new(mean, Math.Sqrt(Math.Max(variance, 1e-12)));
    }

    /// <summary>One of the numbers.</summary>
    public Estimate Number(int number, double plus = 0)
    {
        var (mean, variance) = _bank.Moments(number);
        return new(mean + plus, Math.Sqrt(Math.Max(variance, 1e-18)));
    }

    /// <summary>What a sound probe would read by the test, on the learned line.</summary>
    public Estimate OnLineBy(in PairedCheck pair)
    {
        var (x, u2) = Place(pair);
        var gain = _bank.Moments(Belief.Gain).Mean;
        var (mean, variance) = _bank.Moments(Five.Of(0, 0, x - _model.GainAt, 1, 1));
        return new(mean, Math.Sqrt(variance + (gain * gain * u2) + (_model.OwnScatter * _model.OwnScatter)));
    }

    public TrustBase Save(Instant decidedUntil)
    {
        var doubts = ImmutableArray.CreateBuilder<ulong>(_bank.All.Length);
        var numbers = new List<double>();
        foreach (ref readonly var account in _bank.All)
        {
            doubts.Add(account.Doubted);
            SavedAccount.Add(account, numbers);
        }

        return new()
        {
            At = _newestPair, Taken = Taken, FirstTaken = FirstTaken, Standing = Standing, DecidedUntil = decidedUntil, ByReagent = _byReagent,
            Scatter = [_scatter.Count, _scatter.Sum], Spread = [_spread.Count, _spread.Mean, _spread.Squares], Newest = [_test, _raw, _leapt ? 1 : 0],
            Accounts = [.. numbers], Doubts = doubts.MoveToImmutable(),
        };
    }

    public static TrustCourse From(TrustModel model, TrustBase? saved)
    {
        var course = new TrustCourse(model);
        if (saved is null) return course;
        (course.Clock, course._newestPair, course.Taken, course.FirstTaken, course.Standing) = (saved.At, saved.At, saved.Taken, saved.FirstTaken, saved.Standing);
        (course._byReagent, course._test, course._raw, course._leapt) = (saved.ByReagent, saved.Newest[0], saved.Newest[1], saved.Newest[2] > 0);
        course._scatter = new() { Count = saved.Scatter[0], Sum = saved.Scatter[1] };
        course._spread = new() { Count = saved.Spread[0], Mean = saved.Spread[1], Squares = saved.Spread[2] };
        course._bank.Clear();
        var next = 0;
        foreach (var doubted in saved.Doubts) course._bank.Put(SavedAccount.Take(saved.Accounts, ref next, doubted));
        return course;
    }

    private Five BiasRow => Five.Of(1, 0, _model.Learns ? 0 : _test - _model.GainAt, 0, 0);

    private Sight OfTest(in PairedCheck pair, double corrected, double correctedU)
    {
        var row = Five.Of(1, 0, pair.Test.Value - _model.GainAt, -1, pair.ByReagent ? -1 : 0);
        var seen = corrected - pair.Test.Value;
        var stated = (pair.TestScatter * pair.TestScatter) + Math.Max(0, (pair.Shared * pair.Shared) - (_model.Shared * _model.Shared));
        var variance = (_scatter.Ratio * (stated + (_model.OwnScatter * _model.OwnScatter))) + (correctedU * correctedU);
        return new(row, seen, variance, row, variance + (_model.SlipSd * _model.SlipSd), Slip(pair), 1);
    }

    // On a line a slip shows twice: off the line, and off what the pool usually is.
    private Sight OnLine(in PairedCheck pair, double corrected, double correctedU)
    {
        var (x, u2) = Place(pair);
        var gain = _bank.Moments(Belief.Gain).Mean;
        var usual = _spread.Count > 0 ? _spread.Mean : pair.Test.Value;
        var own = (_scatter.Ratio * _model.OwnScatter * _model.OwnScatter) + (correctedU * correctedU);
        var sight = new Sight(
            Five.Of(1, 0, x - _model.GainAt, 1, 1), corrected, own + (_scatter.Ratio * u2 * gain * gain),
            Five.Of(1, 0, usual - _model.GainAt, 1, 1), own + (_spread.Variance * gain * gain), Slip(pair), _spread.SlipOdds(pair.Test.Value, pair.TestScatter, _model.SlipSd));
        _spread.Learn(pair.Test.Value, pair.TestScatter);
        return sight;
    }

    private double Slip(in PairedCheck pair) => pair.Suspect ? _model.SlipIfUnlikely : _model.Slip;

    private (double X, double Variance) Place(in PairedCheck pair) =>
        _spread.Count > 0 ? _spread.Draw(pair.Test.Value, pair.TestScatter) : (pair.Test.Value, pair.TestScatter * pair.TestScatter);

    private void Judge()
    {
        if (Learning || (Taken == 0 && !_leapt))
        {
            Standing = Standing.Unknown;
            return;
        }

        var row = BiasRow;
        var next = Is(row, _model.OutAt, Standing == Standing.OutOfSpecification) ? Standing.OutOfSpecification
            : Is(row, _model.MaintenanceAt, Standing is Standing.MaintenanceRequired or Standing.OutOfSpecification) ? Standing.MaintenanceRequired
            : Standing.Good;
        // A first check that differs leaves open who is wrong; only a repeat, or a leap of the signal, can say.
        Standing = Taken < 2 && !_leapt && next != Standing.Good ? Standing.Unknown : next;
    }

    // A standing once given holds until it has become improbable, so that it does not chatter on the edge.
    private bool Is(in Five row, double limit, bool held) => _bank.Beyond(row, limit) > (held ? _model.ClearAt : _model.FlagAt);
}
