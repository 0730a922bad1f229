using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>What one pair says, at its place in the order of sample times.</summary>
internal readonly record struct PairVerdict(Verdict Verdict, Estimate Probe, Estimate Test, Estimate Bias, Standing Standing, ImmutableArray<Reason> Reasons);

/// <summary>
/// Folds a probe's paired checks, in sample-time order, from the first to the last. It is always run over all kept pairs, so the order in which
/// checks arrive cannot matter. A test far from what the earlier ones say is set aside; its repeat decides who was wrong.
/// </summary>
internal sealed class TrustFold
{
    // Three standard deviations: one sound check in 370 is asked to be repeated, about one in four months of three checks a day.
    private const double WildAt = 3;

    // A result that was unlikely by itself, or stands beside a doubted one, needs less to be set aside or to confirm.
    private const double DoubtfulAt = 2;

    // After this many doubted in a row that agree with nobody, the estimate itself is in doubt.
    private const int DoubtedInARow = 4;

    private readonly ProbePlan _probe;
    private readonly TrustModel _model;
    private readonly ImmutableArray<Calibration> _changes;
    private readonly PairedCheck[] _pairs;

    private BiasFilter _filter;
    private Cusum _shifts = Cusum.OfInnovations;
    private TrueSpread _spread;
    private readonly (double X, double Variance)[] _places;
    private Calibration? _correction;
    private Instant _clock, _firstTaken;
    private int _next, _taken, _pending = -1, _doubtedInARow;
    private double _pendingInnovation;
    private double _shared;
    private Standing _standing;
    private Reason? _afterwards;

    private TrustFold(ProbePlan probe, TrustModel model, ImmutableArray<Calibration> changes, PairedCheck[] pairs)
    {
        (_probe, _model, _changes, _pairs) = (probe, model, changes, pairs);
        _filter = new(model);
        _places = new (double, double)[pairs.Length];
    }

    /// <summary>The trust that follows from the pairs, and what the watched check said at its place.</summary>
    public static (ProbeTrust Trust, PairVerdict Watched) Run(
        ProbePlan probe, TrustModel model, ImmutableArray<PairedCheck> pairs, ImmutableArray<Calibration> changes, Guid watched)
    {
        var fold = new TrustFold(probe, model, changes, [.. pairs]);
        var (last, seen) = (default(PairVerdict), default(PairVerdict));
        for (var i = 0; i < fold._pairs.Length; i++)
        {
            last = fold.Take(i);
            if (fold._pairs[i].CheckId == watched) seen = last;
        }

        fold.ApplyChanges(Instant.FromUnixMicroseconds(long.MaxValue));
        return (fold.Trust(last), seen);
    }

    private PairVerdict Take(int i)
    {
        ApplyChanges(_pairs[i].SampledAt);
        _afterwards = null;
        _filter.Advance((_pairs[i].SampledAt - _clock).TotalDays * (_clock.IsSet ? 1 : 0));
        _clock = _pairs[i].SampledAt;
        _shared = _pairs[i].Shared;
        _places[i] = Place(_pairs[i]);
        var (mean, variance) = _filter.Predict(_places[i].X);
        var innovation = Corrected(i) - mean;
        var z = innovation / Math.Sqrt(variance + Noise(i));
        if (Confirms(i, innovation, z)) return TakeBoth(i);
        return Math.Abs(z) > (_pairs[i].Suspect ? DoubtfulAt : WildAt) ? SetAside(i, innovation) : TakeIn(i, z);
    }

    private PairVerdict TakeIn(int i, double z)
    {
        _pairs[i] = _pairs[i] with { Doubted = false };
        (_pending, _doubtedInARow) = (-1, 0);
        var shifted = _shifts.Signals(z);
        // A signal only makes the estimate listen harder to the next checks: a false one costs nothing.
        if (shifted) (_filter, _shifts) = (_filter.Loosened(_model.UncheckedSd), Cusum.OfInnovations);
        Update(i);
        return Say(i, shifted ? Reason.Of("trust.small_shift_found") : null);
    }

    private PairVerdict SetAside(int i, double innovation)
    {
        _pairs[i] = _pairs[i] with { Doubted = true };
        (_pending, _pendingInnovation) = (i, innovation);
        if (++_doubtedInARow >= DoubtedInARow) _filter = _filter.Loosened(_model.JumpSd);
        var expected = Math.Sqrt(_filter.Predict(_places[i].X).Variance + Noise(i));
        var doubt = Reason.Of(_pairs[i].Suspect ? "trust.unlikely_check_stands_alone" : "trust.check_stands_alone", innovation, WildAt * expected, Unit);
        return new(Verdict.CheckSuspect, ProbeEstimate(i), TestEstimate(i), Bias(), _standing, [doubt, .. Words.StillHolds(At(i))]);
    }

    // The repeat of a doubted check sides with it: same direction, nearer to it than to the estimate, and clearly off by itself.
    private bool Confirms(int i, double innovation, double z)
    {
        if (_pending < 0 || Math.Abs(z) <= DoubtfulAt || Math.Sign(innovation) != Math.Sign(_pendingInnovation)) return false;
        var days = (_pairs[i].SampledAt - _pairs[_pending].SampledAt).TotalDays;
        var apart = Math.Abs(innovation - _pendingInnovation) / Math.Sqrt(Noise(i) + Noise(_pending) + (_model.DriftVariancePerDay * days));
        return apart < WildAt && apart < Math.Abs(z);
    }

    private PairVerdict TakeBoth(int i)
    {
        // Before the line is learned a jump is more likely the line's: what was learned so far came from the wrong side.
        if (Learning) Restart();
        else _filter = _filter.Loosened(_model.JumpSd);
        _shifts = Cusum.OfInnovations;
        _pairs[_pending] = _pairs[_pending] with { Doubted = false };
        _pairs[i] = _pairs[i] with { Doubted = false };
        Update(_pending);
        Update(i);
        (_pending, _doubtedInARow) = (-1, 0);
        return Say(i, Reason.Of("trust.repeat_confirms"));
    }

    private void Update(int i)
    {
        _filter.Update(Corrected(i), _places[i].X, Noise(i));
        if (_taken++ == 0) _firstTaken = _pairs[i].SampledAt;
    }

    private PairVerdict Say(int i, Reason? also)
    {
        _standing = Judged();
        var (verdict, reasons) = Words.Of(At(i), also);
        return new(verdict, ProbeEstimate(i), TestEstimate(i), Bias(), _standing, reasons);
    }

    private Standing Judged()
    {
        if (_taken == 0 || Learning) return Standing.Unknown;
        var last = _standing;
        var size = Math.Abs(_filter.Bias);
        var clear = size > Bias().Expanded;
        if (_taken == 1) return clear && size > _model.MaintenanceAt ? Standing.Unknown : Standing.Good;
        return Beyond(size, clear, _model.OutAt, last == Standing.OutOfSpecification) ? Standing.OutOfSpecification
            : Beyond(size, clear, _model.MaintenanceAt, last is Standing.MaintenanceRequired or Standing.OutOfSpecification) ? Standing.MaintenanceRequired
            : Standing.Good;
    }

    // A standing once given holds down to four fifths of its limit, so that it does not chatter on the edge.
    private static bool Beyond(double size, bool clear, double limit, bool held) => held ? size > 0.8 * limit : clear && size > limit;

    private bool Learning => _model.Learns && (_taken < _model.ChecksNeeded || (_clock - _firstTaken).TotalDays < _model.DaysNeeded);

    private void ApplyChanges(Instant until)
    {
        for (; _next < _changes.Length && _changes[_next].HoldsFrom <= until; _next++) Apply(_changes[_next]);
    }

    private void Apply(Calibration change)
    {
        (_pending, _doubtedInARow, _shifts) = (-1, 0, Cusum.OfInnovations);
        if (_clock.IsSet && change.HoldsFrom > _clock)
        {
            _filter.Advance((change.HoldsFrom - _clock).TotalDays);
            _clock = change.HoldsFrom;
        }

        var corrects = CalibrationsInForce.Corrects(change);
        var raw = LastRaw();
        if (corrects && change.Checks.Length > 0 && raw is { } value && _taken > 0)
        {
            // Made from the checks themselves: nothing happened to the probe, its number only moves by what was corrected.
            _filter.Shift(change.Apply(value) - (_correction?.Apply(value) ?? value));
            _standing = Judged();
            _afterwards = Reason.Of("trust.corrected_since");
        }
        else
        {
            Restart();
            _afterwards = Reason.Of(corrects ? "trust.calibrated_since" : "trust.panel_adjusted_since");
        }

        if (corrects) _correction = change;
    }

    private void Restart()
    {
        (_filter, _taken, _standing) = (new(_model), 0, Standing.Unknown);
    }

    // Where the test puts the pair on the line, and how surely. A test of the reading itself is taken as it is: the identity needs no spread.
    private (double X, double Variance) Place(PairedCheck pair) =>
        _model.Learns ? _spread.Draw(pair.Test.Value, pair.TestScatter) : (pair.Test.Value, pair.TestScatter * pair.TestScatter);

    private double? LastRaw()
    {
        double? raw = null;
        foreach (var pair in _pairs)
        {
            if (pair.SampledAt > _clock) break;
            raw = pair.Raw.Value;
        }

        return raw;
    }

    private double Corrected(int i) => _correction?.Apply(_pairs[i].Raw.Value) ?? _pairs[i].Raw.Value;

    private double Noise(int i)
    {
        var read = _pairs[i].Raw.StandardUncertainty * (_correction?.Slope ?? 1);
        return (read * read) + (_places[i].Variance * _filter.Slope * _filter.Slope) + (_model.OwnScatter * _model.OwnScatter);
    }

    private Estimate Bias() => _taken == 0 || Learning ? default : new(_filter.Bias, Math.Sqrt(_filter.BiasVariance + (_shared * _shared)));

    private Estimate ProbeEstimate(int i) => new(Corrected(i), _pairs[i].Raw.StandardUncertainty * Math.Abs(_correction?.Slope ?? 1));

    private Estimate TestEstimate(int i)
    {
        if (!_model.Learns) return _pairs[i].Test;
        if (Learning) return default;
        var (mean, variance) = _filter.Expected(_places[i].X);
        return new(mean, Math.Sqrt(variance + (_places[i].Variance * _filter.Slope * _filter.Slope) + (_model.OwnScatter * _model.OwnScatter)));
    }

    private Standpoint At(int i) =>
        new(_taken, (_clock - _firstTaken).TotalDays, Learning, _standing, ProbeEstimate(i), TestEstimate(i), Bias());

    private TrustWords Words => new(_probe, _model, Unit);

    private string Unit => _probe.Measurand.Unit();

    private ProbeTrust Trust(PairVerdict last)
    {
        var (reference, level, vLevel, slope, vSlope) = _filter.Line;
        return new()
        {
            Standing = _standing,
            Reasons = _afterwards is { } change ? [change] : last.Reasons.IsDefault ? [] : last.Reasons,
            Bias = Bias(),
            Verdict = last.Verdict,
            JudgedAt = _pairs.Length > 0 ? _pairs[^1].SampledAt : Instant.Never,
            Pairs = [.. _pairs],
            Taken = _taken,
            Line = _model.Learns && !Learning ? new(reference, new(level, Math.Sqrt(vLevel)), new(slope, Math.Sqrt(vSlope))) : null,
        };
    }
}
