using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Makes what the page shows from a circuit's state. Pure: the same state at the same time gives the same view.</summary>
internal static class CircuitViews
{
    public static CircuitView Of(CircuitState state, long version, Instant now, LedgerView ledger, Wording words)
    {
        var due = DueChecks.At(state.Plan, state.Pools, now);
        return new CircuitView(
            state.Plan.Id, version, now,
            [.. state.Plan.Pools.Select((plan, i) => PoolViews.Of(state, plan, state.Pools[i], due, now, words))],
            [.. state.Plan.Probes.Select((plan, i) => ProbeViews.Of(state, plan, state.Probes[i], now, words))],
            [.. state.Plan.Pumps.Select((plan, i) => PumpViews.Of(plan, state.Pumps[i], now))],
            [.. state.Alarms.Values.Where(a => a.Id != Guid.Empty).OrderByDescending(a => a.Priority).ThenByDescending(a => a.RaisedAt).Select(a => AlarmViews.Now(state, a, words))],
            [.. state.Jobs.Values.Select(w => JobViews.Of(state, w, words))],
            [.. state.Calibrations.Where(c => c.Status == CalibrationStatus.Proposed).Select(c => Calibration(c, state, words))],
            ledger);
    }

    public static CalibrationView Calibration(Calibration c, CircuitState state, Wording words) => new(
        c.Id, c.ProbeId, c.Kind, c.Status, c.Slope, c.Offset, c.Checks, c.ProposedBy, c.ProposedAt, c.Note,
        c.DecidedBy, c.DecidedAt.OrNull(), c.Decision, c.HoldsFrom.OrNull(), c.Basis, BenchViews.WorkDone(c.Work),
        BenchViews.Sheet(c.Sheet, state.Plan.Probes.FirstOrDefault(p => p.Id == c.ProbeId)?.Measurand ?? Core.Quantities.Measurand.Ph, words), c.WaitsForReview, c.ReviewedBy, c.ReviewedAt.OrNull(), c.Review, c.Objected);

    public static Instant? OrNull(this Instant instant) => instant.IsSet ? instant : null;

    public static WithU? OrNull(this Estimate estimate) => estimate.IsKnown ? new WithU(estimate.Value, estimate.Expanded) : null;

    /// <summary>The closing sums of one circuit: the state's, corrected by what storage found of back-fills, and what is in flight.</summary>
    public static LedgerView Ledger(CircuitWorker worker)
    {
        var (ledger, backFills, inFlight) = (worker.State.Ledger, worker.BackFills, worker.InFlight);
        var gone = backFills.AlreadyThere + backFills.Conflicting;
        return new LedgerView(
            ledger.Received + inFlight, ledger.Stored - gone, ledger.Duplicates + backFills.AlreadyThere, ledger.Refused + backFills.Conflicting, inFlight,
            ledger.StoredByDeviceTime - gone, ledger.StoredByPacket, ledger.StoredAtLeastOnce, ledger.Messages);
    }

    public static LedgerView Sum(IEnumerable<LedgerView> ledgers) => ledgers.Aggregate(
        new LedgerView(0, 0, 0, 0, 0, 0, 0, 0, 0),
        (a, b) => new(a.Received + b.Received, a.Stored + b.Stored, a.Duplicates + b.Duplicates, a.Refused + b.Refused, a.InFlight + b.InFlight,
            a.StoredByDeviceTime + b.StoredByDeviceTime, a.StoredByPacket + b.StoredByPacket, a.StoredAtLeastOnce + b.StoredAtLeastOnce, a.Messages + b.Messages));
}
