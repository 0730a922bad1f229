using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A calibration at the bench is signed. Within the limits it holds by the signature and waits for a second look; beyond them it waits for a second person.</summary>
internal static class BenchFold
{
    public static Outcome Sign(Draft draft, int index, Calibration proposal, Instant at)
    {
        var (plan, sheet) = (draft.Plan.Probes[index], proposal.Sheet!);
        if (sheet.EndedAt > at + DeviceClock.AheadTolerance || sheet.StartedAt > at + DeviceClock.AheadTolerance)
            return No("endedAt", Reason.Of("calibration.not_in_future"));
        var from = sheet.EndedAt.IsSet ? Instant.Earlier(sheet.EndedAt, at) : at;
        if (sheet.StartedAt > from) return No("startedAt", Reason.Of("bench.ends_before_start"));
        if (at - from > Oldest || (sheet.StartedAt.IsSet && from - sheet.StartedAt > Oldest)) return No("endedAt", Reason.Of("bench.too_old", Oldest.TotalDays));
        var held = CalibrationsInForce.At(draft.Calibrations.All, plan.Id, from);
        if (!BenchResult.TryOf(plan, proposal.Work, sheet, held, out var result, out var remark)) return No(remark!.Field, remark.Reason);
        CalibrationFold.Keep(draft, Signed(proposal, result!, from, at), at, from);
        WorkFold.Finish(draft, index, WorkChange.SheetSigned, proposal.ProposedBy, at);
        CalibrationFold.Relearn(draft, index, at);
        return Outcome.Done.Instance;
    }

    // A sheet found in a pocket a week later is noted as a remark, not put in force over what was seen since.
    private static TimeSpan Oldest { get; } = TimeSpan.FromDays(7);

    private static Calibration Signed(Calibration proposal, BenchResult result, Instant from, Instant at)
    {
        var waits = result.Status == CalibrationStatus.Proposed;
        return proposal with
        {
            Kind = result.Kind, Status = result.Status, Basis = result.Basis, Slope = result.Slope, Offset = result.Offset, Sheet = result.Sheet, Checks = [], HoldsFrom = from,
            DecidedBy = waits ? null : proposal.ProposedBy, DecidedAt = waits ? Instant.Never : at,
        };
    }

    private static Outcome.TurnedDown No(string field, Reason reason) => Outcome.TurnedDown.Because(TurnedDownKind.Invalid, field, reason);
}
