using PlantWatch.Core.Plant.Opening;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>How a pool is run. Whoever closes is believed at once; whoever opens has to show that all is well.</summary>
internal static class OperationFold
{
    private const int ActsRemembered = 64;

    public static Outcome Set(Draft draft, PoolStateSet said)
    {
        var pool = draft.Index.Pool(said.PoolId);
        if (pool < 0) return No(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", said.PoolId));
        var content = ContentHash.Of($"{said.State}|{said.By?.Trim()}|{said.Why?.Trim()}|{said.ForCause}|{said.Refilled}");
        foreach (var known in draft.Pools[pool].KnownActs)
            if (known.Id == said.ActId) return known.ContentHash == content ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if ((Objection(said, draft.Pools[pool].Operation) ?? (said.State == OperatingState.Open ? AtTheGate(draft, pool, said) : null)) is { } no) return no;
        Remember(draft, pool, new KnownCheck(said.ActId, content));
        Become(draft, pool, Next(draft, pool, said), said.At, byIncident: false, IsNewWater(draft, pool, said));
        return Outcome.Done.Instance;
    }

    /// <summary>The pools of a circuit share their water: what came into one closes all of them. One that is not open keeps its state, and is now closed for cause.</summary>
    public static void CloseFor(Draft draft, Incident incident, Instant at)
    {
        if (!incident.ClosesThePool) return;
        for (var pool = 0; pool < draft.Pools.Length; pool++) CloseFor(draft, pool, incident, at);
    }

    /// <summary>A pool that came with a new plan into water where an incident is open. Those that were there are closed for cause since it was declared.</summary>
    public static void CloseAdded(Draft draft, Incident incident, Instant at)
    {
        for (var pool = 0; pool < draft.Pools.Length; pool++)
            if (incident.ClosesThePool && !draft.Pools[pool].Operation.ForCause) CloseFor(draft, pool, incident, at);
    }

    /// <summary>Pools that came from another circuit are run as they were there: what was closed for cause is not opened by a plant file.</summary>
    public static void Arrive(Draft draft, CircuitState before, Arrival arrival, Instant at)
    {
        foreach (var came in arrival.Pools)
            if (came.Operation.State != OperatingState.NotStated && draft.Index.Pool(came.PoolId) is >= 0 and var pool && before.Pools.All(p => p.Id != came.PoolId))
                Become(draft, pool, came.Operation, at, byIncident: false, refilled: false);
    }

    private static void CloseFor(Draft draft, int pool, Incident incident, Instant at)
    {
        var before = draft.Pools[pool].Operation;
        var state = before.MayBatheIn ? OperatingState.Closed : before.State;
        var why = incident.Note ?? before.Why;
        Become(draft, pool, new(state, before.MayBatheIn ? at : before.Since, incident.DeclaredBy, why, ForCause: true, incident.Id, at), at, byIncident: true, refilled: false);
    }

    private static Outcome.TurnedDown? Objection(PoolStateSet said, PoolOperation before)
    {
        if (said.State == OperatingState.NotStated || !Enum.IsDefined(said.State)) return No(TurnedDownKind.Invalid, "state", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (said.ForCause && said.State != OperatingState.Open && string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("field.required"));
        return before.State == OperatingState.Drained && said.State is (OperatingState.Open or OperatingState.Covered)
            ? No(TurnedDownKind.Conflict, "state", Reason.Of("pool.fill_first")) : null;
    }

    private static Outcome.TurnedDown? AtTheGate(Draft draft, int pool, PoolStateSet said)
    {
        if (said.Refilled) return No(TurnedDownKind.Conflict, "state", Reason.Of("pool.fill_first"));
        if (draft.Pools[pool].Operation.ForCause && OpeningSignature.Missing(draft.Plan, said.By, said.Why) is { } missing) return new(TurnedDownKind.Conflict, [missing]);
        var open = OpeningGate.Of(draft.Plan, draft.Seal(), draft.Plan.Pools[pool], said.At).Where(line => line.Word != GateWord.Passed).ToArray();
        return open.Length == 0 ? null : new(TurnedDownKind.Conflict, [.. open.Select(line => new FieldRemark($"gate.{line.Code}", line.Reason))]);
    }

    // What was closed for cause stays so until it is opened through the gate, whatever it is called in between.
    private static PoolOperation Next(Draft draft, int pool, PoolStateSet said)
    {
        var (before, by) = (draft.Pools[pool].Operation, said.By.Trim());
        var why = string.IsNullOrWhiteSpace(said.Why) ? null : said.Why.Trim();
        if (said.State == OperatingState.Open) return new(OperatingState.Open, said.At, by, why, ForCause: false, said.ActId);
        var isNewCause = said.ForCause || GateAlarms.AnyCritical(draft.Plan, draft.Alarms.All, draft.Plan.Pools[pool].Id);
        var testsFrom = isNewCause || IsNewWater(draft, pool, said) ? said.At : before.TestsFrom;
        var forCause = isNewCause || before.ForCause;
        return new(said.State, before.State == said.State ? before.Since : said.At, by, why ?? (before.ForCause ? before.Why : null), forCause, said.ActId, testsFrom);
    }

    // Whoever leaves the drained state has filled it, also when the box was not ticked.
    private static bool IsNewWater(Draft draft, int pool, PoolStateSet said) =>
        said.State != OperatingState.Drained && (said.Refilled || draft.Pools[pool].Operation.State == OperatingState.Drained);

    private static void Become(Draft draft, int pool, PoolOperation next, Instant at, bool byIncident, bool refilled)
    {
        var before = draft.Pools[pool].Operation.State;
        draft.Pools[pool] = draft.Pools[pool] with { Operation = next };
        if (refilled) NewWater.In(draft, pool, at);
        draft.Write(at, at, draft.Plan.Pools[pool].Id, new PoolStateEntry(before, next, byIncident, refilled));
        DutyFold.Look(draft, at);
        draft.Alarms.Regard(at);
    }

    private static void Remember(Draft draft, int pool, KnownCheck act)
    {
        var known = draft.Pools[pool].KnownActs;
        draft.Pools[pool] = draft.Pools[pool] with { KnownActs = known.Length < ActsRemembered ? known.Add(act) : known.RemoveAt(0).Add(act) };
    }

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
