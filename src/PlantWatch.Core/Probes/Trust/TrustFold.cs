using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>What one pair says, at its place in the order of sample times.</summary>
internal readonly record struct PairVerdict(Verdict Verdict, Estimate Probe, Estimate Test, Estimate Bias, Estimate Drift, Standing Standing, ImmutableArray<Reason> Reasons);

/// <summary>
/// Folds what happened to a probe in the order of sample times: its paired checks, leaps of its signal, work on it. It is always run from the base over all kept pairs, so the order in
/// which checks arrive cannot matter.
/// </summary>
internal sealed class TrustFold
{
    // From this probability on a test is not believed; it is more likely spoiled than not.
    private const double Disbelieved = 0.5;

    private readonly ProbePlan _probe;
    private readonly TrustModel _model;
    private readonly ImmutableArray<Calibration> _changes;
    private readonly ImmutableArray<SignalLeap> _leaps;
    private readonly PairedCheck[] _pairs;
    private readonly TrustCourse _course;
    private readonly TrustBase? _from;
    private Calibration? _correction;
    private Instant _decidedUntil;
    private int _nextChange, _nextLeap;
    private Reason? _afterwards;

    private TrustFold(ProbePlan probe, TrustModel model, ProbeTrust trust, TrustBase? from, ImmutableArray<Calibration> changes)
    {
        (_probe, _model, _changes, _leaps, _from, _pairs) = (probe, model, changes, trust.Leaps, from, [.. trust.Pairs]);
        _course = TrustCourse.From(model, from);
        _decidedUntil = from?.DecidedUntil ?? Instant.Never;
        SkipWhatIsKnown();
    }

    /// <summary>The trust that follows from all that is kept, and what the watched check said at its place.</summary>
    public static (ProbeTrust Trust, PairVerdict Watched) Run(ProbePlan probe, TrustModel model, ProbeTrust trust, ImmutableArray<Calibration> changes, Guid watched)
    {
        var fold = new TrustFold(probe, model, trust, trust.Base, changes);
        return fold.Through(trust, 0, watched);
    }

    /// <summary>The same when only the newest pair is new: it goes on from where the last fold ended.</summary>
    public static (ProbeTrust Trust, PairVerdict Watched) GoOn(ProbePlan probe, TrustModel model, ProbeTrust trust, ImmutableArray<Calibration> changes)
    {
        var newest = trust.Pairs.Length - 1;
        if (trust.Head is null || newest < 1 || trust.Head.At != trust.Pairs[newest - 1].SampledAt || PairBook.ToSettle(trust.Pairs.Length) > 0)
            return Run(probe, model, trust, changes, trust.Pairs[newest].CheckId);
        var fold = new TrustFold(probe, model, trust, trust.Head, changes);
        return fold.Through(trust, newest, trust.Pairs[newest].CheckId);
    }

    private (ProbeTrust Trust, PairVerdict Watched) Through(ProbeTrust trust, int first, Guid watched)
    {
        var (last, seen) = (default(PairVerdict), default(PairVerdict));
        var settled = PairBook.ToSettle(_pairs.Length);
        var newBase = trust.Base;
        for (var i = first; i < _pairs.Length; i++)
        {
            last = Take(i);
            if (_pairs[i].CheckId == watched) seen = last;
            if (i + 1 == settled) newBase = _course.Save(_decidedUntil);
        }

        var head = _pairs.Length > 0 ? _course.Save(_decidedUntil) : null;
        UpTo(Instant.FromUnixMicroseconds(long.MaxValue));
        return (Trust(trust with { Base = newBase, Head = head }, settled, last), seen);
    }

    private PairVerdict Take(int i)
    {
        UpTo(_pairs[i].SampledAt);
        _afterwards = null;
        _course.AdvanceTo(_pairs[i].SampledAt);
        var expected = _model.Learns ? _course.OnLineBy(_pairs[i]) : _pairs[i].Test;
        var before = Doubts(i);
        _course.Take(_pairs[i], Corrected(i), CorrectedU(i));
        var confirmed = MarkDoubts(i, before);
        var at = new Standpoint(_course.Taken, _course.Days, _course.Learning, _course.Standing, new(Corrected(i), CorrectedU(i)), _model.Learns && _course.Learning ? default : expected, _course.Bias());
        var (verdict, reasons) = _pairs[i].Doubted || (_course.Taken > 1 && _course.Bank.StandsAlone > Disbelieved)
            ? (Verdict.CheckSuspect, [WhyDoubted(i, expected), .. Words.StillHolds(at)])
            : Words.Of(at, confirmed ? Reason.Of("trust.repeat_confirms") : Drifting());
        return new(verdict, at.Probe, at.Test, at.Bias, Drift(), _course.Standing, reasons);
    }

    // Doubts about kept pairs may go, and come, with every further check.
    private bool MarkDoubts(int newest, bool[] before)
    {
        var confirmed = false;
        for (var i = newest; i >= 0; i--)
        {
            var doubted = _course.Bank.Doubt(newest - i) > Disbelieved;
            confirmed |= i < newest && before[i] && !doubted;
            _pairs[i] = _pairs[i].Doubted == doubted ? _pairs[i] : _pairs[i] with { Doubted = doubted };
        }

        return confirmed && !_pairs[newest].Doubted;
    }

    private bool[] Doubts(int upTo)
    {
        var doubts = new bool[upTo];
        for (var i = 0; i < upTo; i++) doubts[i] = _pairs[i].Doubted;
        return doubts;
    }

    private Reason WhyDoubted(int i, Estimate expected)
    {
        if (TestOff() is { IsKnown: true } lot && InARow(i) > 1) return Reason.Of("trust.tests_off_together", lot.Value, lot.Expanded, Unit, InARow(i));
        var bias = _course.Bias();
        var off = Corrected(i) - expected.Value - bias.Value;
        var room = 3 * Math.Sqrt((expected.StandardUncertainty * expected.StandardUncertainty) + (bias.StandardUncertainty * bias.StandardUncertainty));
        return Reason.Of(_pairs[i].Suspect ? "trust.unlikely_check_stands_alone" : "trust.check_stands_alone", off, room, Unit);
    }

    private int InARow(int i)
    {
        var count = 0;
        while (i >= 0 && _pairs[i].Doubted) (count, i) = (count + 1, i - 1);
        return count;
    }

    // Leaps and work up to a time, in their order.
    private void UpTo(Instant until)
    {
        while (true)
        {
            var change = _nextChange < _changes.Length && _changes[_nextChange].HoldsFrom <= until ? _changes[_nextChange].HoldsFrom : Instant.Never;
            var leap = _nextLeap < _leaps.Length && _leaps[_nextLeap].At <= until ? _leaps[_nextLeap].At : Instant.Never;
            if (change.IsSet && (!leap.IsSet || change <= leap)) Apply(_changes[_nextChange++]);
            else if (leap.IsSet) Apply(_leaps[_nextLeap++]);
            else return;
        }
    }

    private void Apply(SignalLeap leap)
    {
        _course.AdvanceTo(leap.At);
        var by = leap.By * (_correction?.Slope ?? 1);
        _course.Leap(by);
        _afterwards = Reason.Of("trust.leapt", by, Unit);
    }

    private void Apply(Calibration change)
    {
        _decidedUntil = Instant.Later(_decidedUntil, change.DecidedAt);
        _course.AdvanceTo(change.HoldsFrom);
        var raw = _course.NewestRaw;
        var corrects = CalibrationsInForce.Corrects(change);
        if (corrects && change.Checks.Length > 0 && !double.IsNaN(raw) && _course.Taken > 0)
        {
            // Made from the checks themselves: nothing happened to the probe, its number only moves by what was corrected.
            _course.Shift(change.Apply(raw) - (_correction?.Apply(raw) ?? raw));
            _afterwards = Reason.Of("trust.corrected_since");
        }
        else if (change.Work == ProbeWork.Cleaned && !corrects && change.Kind != CalibrationKind.PanelAdjustment && !IsFoundSound(change))
        {
            _course.Cleaned();
            _afterwards = Reason.Of("trust.cleaned_since");
        }
        else
        {
            _course.Restart();
            _afterwards = Reason.Of(change.Kind == CalibrationKind.PanelAdjustment ? "trust.panel_adjusted_since" : _model.Learns ? "trust.line_starts_anew" : "trust.calibrated_since");
        }

        if (corrects) _correction = change;
    }

    // A sheet that waits for a second person, or was turned down, found the probe beyond its limits and corrected nothing: only the cleaning is a fact.
    private static bool IsFoundSound(Calibration change) =>
        (change.ByBuffers || change.ByCheckSolution) && change.Status is not (CalibrationStatus.Proposed or CalibrationStatus.Rejected);

    private void SkipWhatIsKnown()
    {
        if (_from is null) return;
        while (_nextLeap < _leaps.Length && _leaps[_nextLeap].At <= _from.At) _nextLeap++;
        while (_nextChange < _changes.Length && _changes[_nextChange].HoldsFrom <= _from.At && _changes[_nextChange].DecidedAt <= _from.DecidedUntil)
        {
            if (CalibrationsInForce.Corrects(_changes[_nextChange])) _correction = _changes[_nextChange];
            _nextChange++;
        }
    }

    private double Corrected(int i) => _correction?.Apply(_pairs[i].Raw.Value) ?? _pairs[i].Raw.Value;

    private double CorrectedU(int i) => _pairs[i].Raw.StandardUncertainty * Math.Abs(_correction?.Slope ?? 1);

    private Reason? Drifting() =>
        !(_course.Bank.Drifts > Disbelieved) || !_course.Bias().IsKnown || Drift() is not { IsKnown: true } drift || Math.Abs(drift.Value) <= drift.StandardUncertainty ? null
        : Math.Abs(drift.Value) > drift.Expanded ? Reason.Of("trust.drifting", drift.Value * AMonth.Days, drift.Expanded * AMonth.Days, Unit)
        : Reason.Of("trust.drifting_rate_open");

    private Estimate Drift() => _course.Taken < 2 || _course.Learning ? default : _course.Number(Belief.Rate);

    private Estimate TestOff() => !_model.Learns && _course.Bank.LotsOff > Disbelieved ? _course.Number(Belief.Passing) : default;

    private TrustWords Words => new(_probe, _model, Unit);

    private string Unit => _probe.Measurand.Unit();

    private ProbeTrust Trust(ProbeTrust before, int settled, PairVerdict last) => before with
    {
        Pairs = [.. _pairs.AsSpan(settled)],
        Leaps = before.Base is not { } settledUntil ? before.Leaps : [.. before.Leaps.Where(leap => leap.At > settledUntil.At)],
        Standing = _course.Standing,
        Reasons = _afterwards is { } change ? [change] : !last.Reasons.IsDefault ? last.Reasons : before.Reasons,
        Bias = _course.Bias(),
        Drift = Drift(),
        Slope = _probe.Measurand == Measurand.Ph && _course.Taken > 1 ? _course.Number(Belief.Gain, plus: 1) : default,
        TestOff = TestOff(),
        Verdict = _pairs.Length > 0 ? last.Verdict : before.Verdict,
        JudgedAt = _pairs.Length > 0 ? _pairs[^1].SampledAt : _from?.At ?? Instant.Never,
        Taken = _course.Taken,
        Line = _model.Learns && !_course.Learning ? new(_model.GainAt, _course.Number(Belief.Reference), _course.Number(Belief.Gain)) : null,
    };
}
