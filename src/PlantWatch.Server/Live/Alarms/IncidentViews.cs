using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Incidents and the tables of the authorities, in words.</summary>
internal static class IncidentViews
{
    /// <summary>The open incidents of a pool, oldest first.</summary>
    public static IReadOnlyList<IncidentView> Of(CircuitState state, string poolId, Instant now, Wording words) =>
        [.. state.Incidents.Values.Where(i => i.PoolId == poolId).OrderBy(i => i.DeclaredAt).Select(i => Of(state, i, now, words))];

    /// <summary>An open incident with its clock.</summary>
    public static IncidentView Of(CircuitState state, Incident incident, Instant now, Wording words)
    {
        var at = state.Plan.Pools.Select((p, i) => (p.Id, i)).First(p => p.Id == incident.PoolId).i;
        var clock = IncidentEvidence.Clock(incident, state.Plan.Pools[at], state.Pools[at], now);
        return Bare(incident, words) with
        {
            Clock = Clock(clock, words), Cyanurate = Cyanurate(state.Pools[at]), Plan = words.Say(PlanOf(state.Plan.Pack, incident)),
            Others = incident.ClosesThePool ? [.. state.Plan.Pools.Zip(state.Pools).Where(p => p.First.Id != incident.PoolId).Select(p => Other(incident, p.First, p.Second, now, words))] : [],
        };
    }

    private static PoolClockView Other(Incident incident, PoolPlan plan, PoolState pool, Instant now, Wording words) =>
        new(plan.Id, plan.Name, Cyanurate(pool), Clock(IncidentEvidence.Clock(incident, plan, pool, now), words));

    private static double? Cyanurate(PoolState pool) => pool.Manual.GetValueOrDefault(Measurand.CyanuricAcid)?.Result.Value;

    private static Reason PlanOf(LimitPack? pack, Incident incident) => (pack, PackAuthority.For(pack?.Id, incident.Kind)) switch
    {
        (null, _) => Reason.Of("incident.chosen_without_pack"),
        (_, null) => Reason.Of("incident.chosen_pack_has_no_plan", pack.Authority),
        var (_, authority) when authority == incident.Authority => Reason.Of("incident.by_pack", pack.Authority),
        _ => Reason.Of("incident.not_by_pack", pack.Authority),
    };

    /// <summary>A closed incident, as the record has it.</summary>
    public static IncidentView Of(RecordEntry row, IncidentEntry entry, Wording words) =>
        Bare(entry.Incident, words) with { Closed = new ClosedView(row.At, entry.By, entry.Comment, entry.Hold, entry.Share, [.. entry.Others.Select(o => new PoolHoldView(o.PoolId, o.Hold, o.Share))]) };

    /// <summary>All kinds with all tables, and what a pool's limit pack proposes.</summary>
    public static IReadOnlyList<KindOfIncident> Plans(CircuitPlan circuit, Wording words) => [.. Plans(words).Select(kind => kind with
    {
        Proposed = PackAuthority.For(circuit.Pack?.Id, kind.Kind), ProposedWhy = words.Say(Proposal(circuit.Pack, kind.Kind)),
    })];

    private static Reason Proposal(LimitPack? pack, IncidentKind kind) =>
        pack is null ? Reason.Of("incident.no_pack") : Reason.Of(PackAuthority.For(pack.Id, kind) is null ? "incident.pack_has_no_plan" : "incident.pack_proposes", pack.Authority);

    /// <summary>All kinds with all tables.</summary>
    public static IReadOnlyList<KindOfIncident> Plans(Wording words) =>
        [.. Enum.GetValues<IncidentKind>().Where(k => k != IncidentKind.Unknown).Select(kind => new KindOfIncident(
            kind, Name(kind, words), words.Say(IncidentSteps.Of(kind)), [.. IncidentTables.For(kind).Select(a => Table(a, kind, words))]))];

    private static AuthorityTable Table(IncidentAuthority authority, IncidentKind kind, Wording words)
    {
        var rows = IncidentTables.Of(authority, kind);
        return new(authority, Name(authority, words), !rows.All(r => r.Superseded), [.. rows.Select(r => Row(r, words))]);
    }

    private static IncidentView Bare(Incident i, Wording words) => new(
        i.Id, i.PoolId, i.Kind, Name(i.Kind, words), i.Authority, Name(i.Authority, words), i.HappenedAt, i.DeclaredAt, i.DeclaredBy, i.Note, null, null, i.Remarks,
        words.Say(IncidentSteps.BeforeOpening), null, null, []);

    private static ClockView Clock(HoldClock clock, Wording words)
    {
        var worth = clock.LastCountedAt.IsSet ? clock.Figure?.WorthOfMinute(clock.LastResidual) : null;
        var required = clock.Figure?.Required ?? 0;
        return new(
            clock.Word, words.Say(clock.Why), clock.Figure is { } figure ? Row(figure, words) : null, clock.Credited, required, clock.Share,
            worth > 0 ? Math.Max(0, (required - clock.Credited) / worth.Value) : null, clock.StartedAt.OrNull(), clock.LastCountedAt.OrNull(),
            clock.LastCountedAt.IsSet ? clock.LastResidual : null, clock.EarliestEnd.OrNull(), clock.NextTestBy.OrNull(), clock.ReachedAt.OrNull(), [.. clock.Tests.Select(t => Test(t, words))]);
    }

    private static ClockTest Test(JudgedTest judged, Wording words) => new(
        judged.Test.Id, judged.Test.At, judged.Test.Place, judged.Test.LowestPoint, judged.Test.Residual, judged.Test.Ph, judged.Test.Celsius, judged.Counts, judged.Gained, words.Say(judged.Why));

    private static HoldRow Row(HoldFigure row, Wording words) => new(
        row.Basis, row.Cyanurate, row.StartAt, row.Floor, row.Required, [.. row.Levels.Select(l => new LevelView(l.MilligramsPerLitre, l.Minutes, Told(l.Provenance, words)))],
        row.LowestPh, row.HighestPh, row.LowestCelsius, row.Source, Told(row.Provenance, words), row.Superseded, words.Say(Remarks(row)));

    private static IEnumerable<Reason> Remarks(HoldFigure row)
    {
        if (row.Remark is { } remark) yield return Reason.Of(remark);
        if (row.Basis is not (HoldBasis.ContactTime or HoldBasis.Minutes)) yield break;
        if (!row.ConditionsNamed) yield return Reason.Of("incident.conditions_not_named");
        if (!row.CyanurateNamed) yield return Reason.Of("incident.cyanurate_not_named");
    }

    private static Said Told(Provenance provenance, Wording words) => new(Wording.Key(provenance), Name(provenance, words));

    private static string Name<T>(T value, Wording words) where T : struct, Enum => words.Find($"name.{Wording.Key(value)}");
}
