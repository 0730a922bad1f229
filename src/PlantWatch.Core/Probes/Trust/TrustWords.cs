using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>Where the fold stands after a check was taken in.</summary>
internal readonly record struct Standpoint(int Taken, double Days, bool Learning, Standing Standing, Estimate Probe, Estimate Test, Estimate Bias);

/// <summary>The verdict on a check that was taken in, and its reasons, most important first.</summary>
internal readonly struct TrustWords(ProbePlan probe, TrustModel model, string unit)
{
    public (Verdict Verdict, ImmutableArray<Reason> Reasons) Of(Standpoint at, Reason? also)
    {
        if (at.Learning) return (Verdict.Learning, Join(Learning(at), also));
        if (IsFlagged(at.Standing)) return (Verdict.ProbeDrifts, Drifts(at, also));
        var (difference, u) = Compare(at);
        // A first check that differs leaves open who is wrong; only a repeat can say.
        if (at.Standing == Standing.Unknown) return (Verdict.CheckSuspect, Join(Reason.Of("trust.first_check_differs", difference, u, unit), also));
        return Math.Abs(difference) <= u
            ? (Verdict.Agrees, Join(Reason.Of("trust.agrees", difference, u, unit), also))
            : (Verdict.Agrees, Join(Reason.Of("trust.agrees_with_earlier_checks", difference, u, unit), also));
    }

    /// <summary>Why a flagged probe stays flagged beside a check that was set aside.</summary>
    public ImmutableArray<Reason> StillHolds(Standpoint at) => IsFlagged(at.Standing) ? Drifts(at, null) : [];

    private static bool IsFlagged(Standing standing) => standing is Standing.MaintenanceRequired or Standing.OutOfSpecification;

    private Reason Learning(Standpoint at) => at.Taken < model.ChecksNeeded
        ? Reason.Of("trust.learning", at.Taken, model.ChecksNeeded)
        : Reason.Of("trust.learning_days", at.Days, model.DaysNeeded);

    private ImmutableArray<Reason> Drifts(Standpoint at, Reason? also)
    {
        var reasons = ImmutableArray.CreateBuilder<Reason>(4);
        reasons.Add(Reason.Of(at.Bias.Value > 0 ? "trust.reads_high" : "trust.reads_low", Math.Abs(at.Bias.Value), at.Bias.Expanded, unit, at.Taken));
        var limit = at.Standing == Standing.OutOfSpecification ? model.OutAt : model.MaintenanceAt;
        // Called wrong early, by how likely it is: the best value may still lie inside.
        reasons.Add(Math.Abs(at.Bias.Value) <= limit ? Reason.Of("trust.may_be_beyond", limit, unit)
            : Reason.Of(at.Standing == Standing.OutOfSpecification ? "trust.out_of_specification" : "trust.maintenance_required", limit, unit));
        if (probe.Origin == SignalOrigin.PanelScaled) reasons.Add(Reason.Of("trust.panel_doses_by_it"));
        if (also is not null) reasons.Add(also);
        return reasons.ToImmutable();
    }

    private (double Difference, double U) Compare(Standpoint at)
    {
        var (p, t) = (at.Probe.Expanded, at.Test.Expanded);
        return (at.Probe.Value - at.Test.Value, Math.Sqrt((p * p) + (t * t)));
    }

    private static ImmutableArray<Reason> Join(Reason reason, Reason? also) => also is null ? [reason] : [reason, also];
}
