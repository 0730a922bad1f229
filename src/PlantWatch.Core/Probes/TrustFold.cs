using System.Collections.Immutable;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

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

    private readonly ProbePlan probe;
    private readonly TrustModel model;
    private readonly ImmutableArray<Calibration> changes;
    private readonly PairedCheck[] pairs;

    private BiasFilter filter;
    private Cusum shifts = Cusum.OfInnovations;
    private TrueSpread spread;
    private readonly (double X, double Variance)[] places;
    private Calibration? correction;
    private Instant clock, firstTaken;
    private int next, taken, pending = -1, doubtedInARow;
    private double pendingInnovation;
    private double shared;
    private Standing standing;
    private Reason? afterwards;

    private TrustFold(ProbePlan probe, TrustModel model, ImmutableArray<Calibration> changes, PairedCheck[] pairs)
    {
        (this.probe, this.model, this.changes, this.pairs) = (probe, model, changes, pairs);
        filter = new(model);
        places = new (double, double)[pairs.Length];
    }

    /// <summary>The trust that follows from the pairs, and what the watched check said at its place.</summary>
    public static (ProbeTrust Trust, PairVerdict Watched) Run(
        ProbePlan probe, TrustModel model, ImmutableArray<PairedCheck> pairs, ImmutableArray<Calibration> changes, Guid watched)
    {
        var fold = new TrustFold(probe, model, changes, [.. pairs]);
        var (last, seen) = (default(PairVerdict), default(PairVerdict));
        for (var i = 0; i < fold.pairs.Length; i++)
        {
            last = fold.Take(i);
            if (fold.pairs[i].CheckId == watched) seen = last;
        }

        fold.ApplyChanges(Instant.FromUnixMicroseconds(long.MaxValue));
        return (fold.Trust(last), seen);
    }

    private PairVerdict Take(int i)
    {
        ApplyChanges(pairs[i].SampledAt);
        afterwards = null;
        filter.Advance((pairs[i].SampledAt - clock).TotalDays * (clock.IsSet ? 1 : 0));
        clock = pairs[i].SampledAt;
        shared = pairs[i].Shared;
        places[i] = Place(pairs[i]);
        var (mean, variance) = filter.Predict(places[i].X);
        var innovation = Corrected(i) - mean;
        var z = innovation / Math.Sqrt(variance + Noise(i));
        if (Confirms(i, innovation, z)) return TakeBoth(i);
        return Math.Abs(z) > (pairs[i].Suspect ? DoubtfulAt : WildAt) ? SetAside(i, innovation) : TakeIn(i, z);
    }

    private PairVerdict TakeIn(int i, double z)
    {
        pairs[i] = pairs[i] with { Doubted = false };
        (pending, doubtedInARow) = (-1, 0);
        var shifted = shifts.Signals(z);
        // A signal only makes the estimate listen harder to the next checks: a false one costs nothing.
        if (shifted) (filter, shifts) = (filter.Loosened(model.UncheckedSd), Cusum.OfInnovations);
        Update(i);
        return Say(i, shifted ? Reason.Of("trust.small_shift_found") : null);
    }

    private PairVerdict SetAside(int i, double innovation)
    {
        pairs[i] = pairs[i] with { Doubted = true };
        (pending, pendingInnovation) = (i, innovation);
        if (++doubtedInARow >= DoubtedInARow) filter = filter.Loosened(model.JumpSd);
        var expected = Math.Sqrt(filter.Predict(places[i].X).Variance + Noise(i));
        var doubt = Reason.Of(pairs[i].Suspect ? "trust.unlikely_check_stands_alone" : "trust.check_stands_alone", innovation, WildAt * expected, Unit);
        return new(Verdict.CheckSuspect, ProbeEstimate(i), TestEstimate(i), Bias(), standing, [doubt, .. Words.StillHolds(At(i))]);
    }

    // The repeat of a doubted check sides with it: same direction, nearer to it than to the estimate, and clearly off by itself.
    private bool Confirms(int i, double innovation, double z)
    {
        if (pending < 0 || Math.Abs(z) <= DoubtfulAt || Math.Sign(innovation) != Math.Sign(pendingInnovation)) return false;
        var days = (pairs[i].SampledAt - pairs[pending].SampledAt).TotalDays;
        var apart = Math.Abs(innovation - pendingInnovation) / Math.Sqrt(Noise(i) + Noise(pending) + (model.DriftVariancePerDay * days));
        return apart < WildAt && apart < Math.Abs(z);
    }

    private PairVerdict TakeBoth(int i)
    {
        // Before the line is learned a jump is more likely the line's: what was learned so far came from the wrong side.
        if (Learning) Restart();
        else filter = filter.Loosened(model.JumpSd);
        shifts = Cusum.OfInnovations;
        pairs[pending] = pairs[pending] with { Doubted = false };
        pairs[i] = pairs[i] with { Doubted = false };
        Update(pending);
        Update(i);
        (pending, doubtedInARow) = (-1, 0);
        return Say(i, Reason.Of("trust.repeat_confirms"));
    }

    private void Update(int i)
    {
        filter.Update(Corrected(i), places[i].X, Noise(i));
        if (taken++ == 0) firstTaken = pairs[i].SampledAt;
    }

    private PairVerdict Say(int i, Reason? also)
    {
        standing = Judged();
        var (verdict, reasons) = Words.Of(At(i), also);
        return new(verdict, ProbeEstimate(i), TestEstimate(i), Bias(), standing, reasons);
    }

    private Standing Judged()
    {
        if (taken == 0 || Learning) return Standing.Unknown;
        var last = standing;
        var size = Math.Abs(filter.Bias);
        var clear = size > Bias().Expanded;
        if (taken == 1) return clear && size > model.MaintenanceAt ? Standing.Unknown : Standing.Good;
        return Beyond(size, clear, model.OutAt, last == Standing.OutOfSpecification) ? Standing.OutOfSpecification
            : Beyond(size, clear, model.MaintenanceAt, last is Standing.MaintenanceRequired or Standing.OutOfSpecification) ? Standing.MaintenanceRequired
            : Standing.Good;
    }

    // A standing once given holds down to four fifths of its limit, so that it does not chatter on the edge.
    private static bool Beyond(double size, bool clear, double limit, bool held) => held ? size > 0.8 * limit : clear && size > limit;

    private bool Learning => model.Learns && (taken < model.ChecksNeeded || (clock - firstTaken).TotalDays < model.DaysNeeded);

    private void ApplyChanges(Instant until)
    {
        for (; next < changes.Length && changes[next].HoldsFrom <= until; next++) Apply(changes[next]);
    }

    private void Apply(Calibration change)
    {
        (pending, doubtedInARow, shifts) = (-1, 0, Cusum.OfInnovations);
        if (clock.IsSet && change.HoldsFrom > clock)
        {
            filter.Advance((change.HoldsFrom - clock).TotalDays);
            clock = change.HoldsFrom;
        }

        var corrects = CalibrationsInForce.Corrects(change);
        var raw = LastRaw();
        if (corrects && change.Checks.Length > 0 && raw is { } value && taken > 0)
        {
            // Made from the checks themselves: nothing happened to the probe, its number only moves by what was corrected.
            filter.Shift(change.Apply(value) - (correction?.Apply(value) ?? value));
            standing = Judged();
            afterwards = Reason.Of("trust.corrected_since");
        }
        else
        {
            Restart();
            afterwards = Reason.Of(corrects ? "trust.calibrated_since" : "trust.panel_adjusted_since");
        }

        if (corrects) correction = change;
    }

    private void Restart()
    {
        (filter, taken, standing) = (new(model), 0, Standing.Unknown);
    }

    // Where the test puts the pair on the line, and how surely. A test of the reading itself is taken as it is: the identity needs no spread.
    private (double X, double Variance) Place(PairedCheck pair) =>
        model.Learns ? spread.Draw(pair.Test.Value, pair.TestScatter) : (pair.Test.Value, pair.TestScatter * pair.TestScatter);

    private double? LastRaw()
    {
        double? raw = null;
        foreach (var pair in pairs)
        {
            if (pair.SampledAt > clock) break;
            raw = pair.Raw.Value;
        }

        return raw;
    }

    private double Corrected(int i) => correction?.Apply(pairs[i].Raw.Value) ?? pairs[i].Raw.Value;

    private double Noise(int i)
    {
        var read = pairs[i].Raw.StandardUncertainty * (correction?.Slope ?? 1);
        return (read * read) + (places[i].Variance * filter.Slope * filter.Slope) + (model.OwnScatter * model.OwnScatter);
    }

    private Estimate Bias() => taken == 0 || Learning ? default : new(filter.Bias, Math.Sqrt(filter.BiasVariance + (shared * shared)));

    private Estimate ProbeEstimate(int i) => new(Corrected(i), pairs[i].Raw.StandardUncertainty * Math.Abs(correction?.Slope ?? 1));

    private Estimate TestEstimate(int i)
    {
        if (!model.Learns) return pairs[i].Test;
        if (Learning) return default;
        var (mean, variance) = filter.Expected(places[i].X);
        return new(mean, Math.Sqrt(variance + (places[i].Variance * filter.Slope * filter.Slope) + (model.OwnScatter * model.OwnScatter)));
    }

    private Standpoint At(int i) =>
        new(taken, (clock - firstTaken).TotalDays, Learning, standing, ProbeEstimate(i), TestEstimate(i), Bias());

    private TrustWords Words => new(probe, model, Unit);

    private string Unit => probe.Measurand.Unit();

    private ProbeTrust Trust(PairVerdict last)
    {
        var (reference, level, vLevel, slope, vSlope) = filter.Line;
        return new()
        {
            Standing = standing,
            Reasons = afterwards is { } change ? [change] : last.Reasons.IsDefault ? [] : last.Reasons,
            Bias = Bias(),
            Verdict = last.Verdict,
            JudgedAt = pairs.Length > 0 ? pairs[^1].SampledAt : Instant.Never,
            Pairs = [.. pairs],
            Taken = taken,
            Line = model.Learns && !Learning ? new(reference, new(level, Math.Sqrt(vLevel)), new(slope, Math.Sqrt(vSlope))) : null,
        };
    }
}
