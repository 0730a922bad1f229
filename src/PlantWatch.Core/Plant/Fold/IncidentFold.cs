using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A contamination incident from declaring to closing. Both are a person's acts: no test, no clock and no time opens a pool.</summary>
internal static class IncidentFold
{
    // Long ago is a slip in the date.
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(7);

    private const int TestsRemembered = 500;
    private const int RemarksRemembered = 200;
    private const int ClosedRemembered = 64;

    public static Outcome Declare(Draft draft, IncidentDeclared said)
    {
        var declared = said.Incident with
        {
            HappenedAt = said.Incident.HappenedAt.IsSet ? said.Incident.HappenedAt : said.At, DeclaredAt = said.At, Tests = [], Remarks = [],
        };
        if (draft.ClosedIncidents.Contains(declared.Id)) return Outcome.AlreadyDone.Instance;
        if (draft.Incidents.TryGetValue(declared.Id, out var known)) return Again(known, said.Incident);
        if (Objection(draft, declared, said.At) is { } objection) return objection;
        draft.Incidents = draft.Incidents.Add(declared.Id, declared);
        Write(draft, declared, IncidentChange.Declared, said.At, declared.DeclaredBy, declared.Note);
        OperationFold.CloseFor(draft, declared, said.At);
        Look(draft, said.At);
        return Outcome.Done.Instance;
    }

    public static Outcome Note(Draft draft, IncidentNoted said)
    {
        if (!draft.Incidents.TryGetValue(said.IncidentId, out var incident)) return No(TurnedDownKind.NotFound, "id", Reason.Of("incident.not_open"));
        if (incident.Remarks.FirstOrDefault(r => r.Id == said.RemarkId) is { } known)
            return known.By == said.By && known.Text == said.Text ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "remarkId", Reason.Of("id.taken"));
        if (string.IsNullOrWhiteSpace(said.Text)) return No(TurnedDownKind.Invalid, "text", Reason.Of("field.required"));
        if (incident.Remarks.Length >= RemarksRemembered) return No(TurnedDownKind.Conflict, "text", Reason.Of("field.too_many"));
        incident = incident with { Remarks = incident.Remarks.Add(new(said.RemarkId, said.At, said.By, said.Text)) };
        draft.Incidents = draft.Incidents.SetItem(incident.Id, incident);
        Write(draft, incident, IncidentChange.Noted, said.At, said.By, said.Text);
        return Outcome.Done.Instance;
    }

    public static Outcome Close(Draft draft, IncidentClosed said)
    {
        if (draft.ClosedIncidents.Contains(said.IncidentId)) return Outcome.AlreadyDone.Instance;
        if (!draft.Incidents.TryGetValue(said.IncidentId, out var incident)) return No(TurnedDownKind.NotFound, "id", Reason.Of("incident.not_open"));
        if (string.IsNullOrWhiteSpace(said.By)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (string.IsNullOrWhiteSpace(said.Why)) return No(TurnedDownKind.Invalid, "why", Reason.Of("field.required"));
        Forget(draft, incident.Id);
        Write(draft, incident, IncidentChange.Closed, said.At, said.By, said.Why);
        Look(draft, said.At);
        return Outcome.Done.Instance;
    }

    /// <summary>A check stands at its sample time, whenever it was typed.</summary>
    public static void Take(Draft draft, ManualCheck check, Plausibility plausibility)
    {
        foreach (var incident in draft.Incidents.Values.Where(i => (i.ClosesThePool || i.PoolId == check.PoolId) && i.HappenedAt <= check.SampledAt).ToArray())
        {
            if (IncidentEvidence.Of(check, plausibility.InItself) is not { } test) return;
            test = test with { PoolId = check.PoolId == incident.PoolId ? null : check.PoolId };
            HoldTest[] tests = [.. incident.Tests.Append(test).OrderBy(t => t.At).ThenBy(t => t.Id)];
            draft.Incidents = draft.Incidents.SetItem(incident.Id, incident with { Tests = [.. tests.Skip(Math.Max(0, tests.Length - TestsRemembered))] });
        }
    }

    /// <summary>What a corrected check said was never so.</summary>
    public static void Withdraw(Draft draft, Guid check)
    {
        foreach (var incident in draft.Incidents.Values.Where(i => i.Tests.Any(t => t.Id == check)).ToArray())
            draft.Incidents = draft.Incidents.SetItem(incident.Id, incident with { Tests = incident.Tests.RemoveAll(t => t.Id == check) });
    }

    /// <summary>A new plan: what lost its pool is written down, what came with a pool is taken, and pools that came share the water too.</summary>
    public static void AfterPlan(Draft draft, CircuitState before, Arrival arrival, Instant at)
    {
        if (before.Incidents.IsEmpty && arrival.Incidents.IsEmpty) return;
        foreach (var was in before.Incidents.Values)
            if (!draft.Incidents.TryGetValue(was.Id, out var now)) Lost(draft, was, IncidentChange.PoolGone, at);
            else if (PlanChange.IsRehomed(before.Plan, draft.Plan, was, now)) Lost(draft, was, IncidentChange.PoolLeft, at);
        foreach (var came in arrival.Incidents.Where(i => draft.Index.Pool(i.PoolId) >= 0 && !draft.Incidents.ContainsKey(i.Id) && !draft.ClosedIncidents.Contains(i.Id))) Came(draft, came, at);
        foreach (var open in draft.Incidents.Values) OperationFold.CloseAdded(draft, open, at);
        Look(draft, at);
    }

    private static void Lost(Draft draft, Incident was, IncidentChange change, Instant at) =>
        draft.Write(at, at, was.PoolId, new IncidentEntry(was, change, null, null, HoldWord.Refused, 0));

    private static void Came(Draft draft, Incident incident, Instant at)
    {
        draft.Incidents = draft.Incidents.Add(incident.Id, incident);
        Write(draft, incident, IncidentChange.CameWithPool, at, null, null);
        OperationFold.CloseFor(draft, incident, at);
    }

    // The pools of a circuit share their water: what came into one is in all of them.
    private static void Look(Draft draft, Instant at)
    {
        var open = draft.Incidents.Values.Where(i => i.ClosesThePool).OrderBy(i => i.DeclaredAt).ThenBy(i => i.Id).ToArray();
        foreach (var pool in draft.Plan.Pools)
            draft.Alarms.Look(RuleBook.IncidentOpen, RuleBook.IncidentOpen.KeyFor(pool.Id), pool.Id, open.Length > 0, at, () => Cause(draft, pool, open));
    }

    private static Reason Cause(Draft draft, Plans.PoolPlan pool, Incident[] open)
    {
        var own = open.FirstOrDefault(i => i.PoolId == pool.Id);
        var shown = own ?? open[0];
        var kind = System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(shown.Kind.ToString());
        if (own is not null) return Reason.Of("incident.open", pool.Name, kind);
        return Reason.Of("incident.open_in_shared_water", pool.Name, draft.Plan.Pools[draft.Index.Pool(shown.PoolId)].Name, kind);
    }

    private static Outcome Again(Incident known, Incident said) =>
        known.PoolId == said.PoolId && known.Kind == said.Kind && known.Authority == said.Authority && known.DeclaredBy == said.DeclaredBy && known.Note == said.Note
        && (!said.HappenedAt.IsSet || said.HappenedAt == known.HappenedAt)
            ? Outcome.AlreadyDone.Instance
            : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));

    private static Outcome.TurnedDown? Objection(Draft draft, Incident incident, Instant at)
    {
        if (draft.Index.Pool(incident.PoolId) < 0) return No(TurnedDownKind.NotFound, "poolId", Reason.Of("pool.unknown", incident.PoolId));
        if (string.IsNullOrWhiteSpace(incident.DeclaredBy)) return No(TurnedDownKind.Invalid, "by", Reason.Of("field.required"));
        if (incident.Kind == IncidentKind.Unknown || !Enum.IsDefined(incident.Kind)) return No(TurnedDownKind.Invalid, "kind", Reason.Of("field.required"));
        if (IncidentTables.Of(incident.Authority, incident.Kind).IsEmpty) return No(TurnedDownKind.Invalid, "authority", Reason.Of("incident.no_figure"));
        if (incident.HappenedAt > at + DeviceClock.AheadTolerance) return No(TurnedDownKind.Invalid, "happenedAt", Reason.Of("incident.not_in_future"));
        return at - incident.HappenedAt > Oldest ? No(TurnedDownKind.Invalid, "happenedAt", Reason.Of("incident.too_long_ago", Oldest.TotalDays)) : null;
    }

    private static void Forget(Draft draft, Guid id)
    {
        draft.Incidents = draft.Incidents.Remove(id);
        draft.ClosedIncidents = draft.ClosedIncidents.Length < ClosedRemembered ? draft.ClosedIncidents.Add(id) : draft.ClosedIncidents.RemoveAt(0).Add(id);
    }

    private static void Write(Draft draft, Incident incident, IncidentChange change, Instant at, string? by, string? comment)
    {
        var pool = draft.Index.Pool(incident.PoolId);
        var clock = Clock(draft, incident, pool, at);
        var entry = new IncidentEntry(incident, change, by, comment, clock.Word, clock.Share) { Others = incident.ClosesThePool ? Others(draft, incident, pool, at) : [] };
        draft.Write(at, change == IncidentChange.Declared ? incident.HappenedAt : at, incident.PoolId, entry);
    }

    private static ImmutableArray<PoolHold> Others(Draft draft, Incident incident, int own, Instant at)
    {
        var others = ImmutableArray.CreateBuilder<PoolHold>();
        for (var pool = 0; pool < draft.Pools.Length; pool++)
            if (pool != own && Clock(draft, incident, pool, at) is var clock) others.Add(new(draft.Plan.Pools[pool].Id, clock.Word, clock.Share));
        return others.ToImmutable();
    }

    private static HoldClock Clock(Draft draft, Incident incident, int pool, Instant at) => IncidentEvidence.Clock(incident, draft.Plan.Pools[pool], draft.Pools[pool], at);

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
