using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The signs that the checks give by what the estimate made of them.</summary>
internal sealed partial class StorySigns
{
    // In two days even a poor electrode drifts by less than its limit (docs/decisions/0005-trust.md: 0.15 pH a month).
    private static readonly TimeSpan NoDriftWithin = TimeSpan.FromHours(48);

    // The estimate calls a lot bad from evens on; from one in forty this brings a test to 5 : 2 (docs/decisions/0012-one-story.md).
    private const double LotBelieved = 100;

    private void OfChecks(StoryProbe probe, StoryPart part)
    {
        var (trust, name, unit) = (probe.Trust, probe.Plan.Measurand.Key(), probe.Plan.Measurand.Unit());
        // Called wrong for its leap alone, before any test came since: that is said already.
        if (_input.IsCalledWrong(probe))
        {
            if (!IsFlaggedByLeap(probe) && trust.Bias.IsKnown) Add(part, CalledWrong(trust.Bias), Reason.Of("story.sign_checks_call_it_wrong", name, Math.Abs(trust.Bias.Value), trust.Bias.Expanded, unit, trust.Taken));
        }

        // What the checks said before a signal went bad says nothing of it now.
        else if (trust is { Standing: Standing.Good, Taken: >= 3 } && (probe.Signal.Standing is Standing.Good or Standing.Unknown || probe.IsOnlySlow) && probe.Leap(_input.Now) is null) StandsBy(probe, part, name);
        if (!_input.IsCalledWrong(probe) && trust.Bias.IsKnown && Math.Abs(trust.Bias.Value) > trust.Bias.StandardUncertainty)
            Add(StoryPart.None, 1, Reason.Of("story.sign_bias_taken_off", name, trust.Bias.Value, trust.Bias.Expanded, unit));
        if (probe.FoundDrift is { } drift) OfDrift(probe, part, drift);
        if (_input.LotOff(probe) is { } lot) Add(PartOf(probe.Plan.Measurand), LotBelieved, Reason.Of("story.sign_tests_off", name, lot.Value, lot.Expanded, unit));
    }

    // A flag is given at two standard deviations, 20 : 1; a bias that many checks have made sure of weighs what its distance from nothing weighs.
    private static double CalledWrong(Estimate bias) =>
        Math.Clamp(Math.Exp(bias.Value * bias.Value / (2 * bias.StandardUncertainty * bias.StandardUncertainty)), Flagged, Most);

    // A drift explains a gap on its own side; to the other side it is only a thing to know.
    private void OfDrift(StoryProbe probe, StoryPart part, Estimate drift)
    {
        var what = Reason.Of("story.sign_drift", probe.Plan.Measurand.Key(), drift.Value * AMonth.Days, drift.Expanded * AMonth.Days, probe.Plan.Measurand.Unit());
        var explains = probe.Read.IsKnown && _input.Test(probe.Plan.Measurand) is { Result.Censoring: Censoring.None } test && Math.Sign(probe.Read.Value - test.Result.Value) == Math.Sign(drift.Value);
        Add(explains ? part : StoryPart.None, explains ? 2 : 1, what);
    }

    // Without the leap it would not be off, and no check has said so since.
    private bool IsFlaggedByLeap(StoryProbe probe) =>
        probe.Leap(_input.Now) is { } leap && (!probe.Trust.Bias.IsKnown || Math.Abs(probe.Trust.Bias.Value - leap.By) < TrustModel.Of(probe.Plan.Measurand)!.MaintenanceAt)
        && !probe.Trust.Pairs.Any(pair => pair.SampledAt > leap.At && pair.CheckId != _input.CheckId && !pair.Doubted);

    // A probe gets wrong by a leap, which would have been seen, or by drifting, which takes weeks. Without either since it was found right, one test alone says little.
    private void StandsBy(StoryProbe probe, StoryPart part, string name)
    {
        var right = Instant.Never;
        foreach (var pair in probe.Trust.Pairs)
            if (!pair.Doubted && pair.CheckId != _input.CheckId && pair.SampledAt < _input.SampledAt) right = pair.SampledAt;
        var isWatched = right.IsSet && _input.SampledAt - right < NoDriftWithin && probe.Signal.BlindAt < right && probe.Signal.LeaptAt < right && !MayHaveDrifted(probe, right);
        if (isWatched) Add(part, 0.1, Reason.Of("story.sign_no_leap_since", name, (_input.SampledAt - right).TotalHours, probe.Trust.Taken));
        else Add(part, 0.5, Reason.Of("story.sign_checks_stand_by_it", name, probe.Trust.Taken));
    }

    // Fouling goes to the limit within days: at the rate that was found, half the way there is too much.
    private bool MayHaveDrifted(StoryProbe probe, Instant since) =>
        probe.FoundDrift is { } drift && (Math.Abs(drift.Value) + drift.Expanded) * (_input.SampledAt - since).TotalDays > TrustModel.Of(probe.Plan.Measurand)!.MaintenanceAt / 2;
}
