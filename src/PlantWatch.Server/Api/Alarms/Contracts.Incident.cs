using System.Text.Json.Serialization;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/incidents/plans[?pool=] : KindOfIncident[]

/// <summary>A kind of incident with what to do and what each authority asks for, apart from one another.</summary>
/// <param name="Kind">formed_stool, diarrhoeal_stool, vomit, blood, deck_spill.</param>
/// <param name="Name">In words.</param>
/// <param name="Steps">What to do, in order. Advice, never a command.</param>
/// <param name="Authorities">Who asks for what; never merged.</param>
/// <param name="Proposed">Whose plan the pool's limit pack carries for it; null when a person has to choose, or no pool was named.</param>
/// <param name="ProposedWhy">Why it is proposed, or why none is; null when no pool was named.</param>
public sealed record KindOfIncident(
    IncidentKind Kind, string Name, IReadOnlyList<Said> Steps, IReadOnlyList<AuthorityTable> Authorities, IncidentAuthority? Proposed = null, Said? ProposedWhy = null);

/// <summary>What one authority asks for.</summary>
/// <param name="Authority">Its key.</param>
/// <param name="Name">In words.</param>
/// <param name="InUse">False when all its rows were superseded: shown, and not to be chosen.</param>
/// <param name="Rows">Its rows, by rising cyanurate.</param>
public sealed record AuthorityTable(IncidentAuthority Authority, string Name, bool InUse, IReadOnlyList<HoldRow> Rows);

/// <summary>One row of an authority's table.</summary>
/// <param name="Basis">contact_time, minutes, dilute_first, none.</param>
/// <param name="Cyanurate">Cyanurate it is for, mg/L, from and to.</param>
/// <param name="StartAt">Residual through the pool that starts the clock, mg/L.</param>
/// <param name="Floor">Residual under which nothing counts, mg/L.</param>
/// <param name="Required">mg·min/L, or minutes at the first of the levels.</param>
/// <param name="Levels">Residuals with their times.</param>
/// <param name="LowestPh">Lowest pH where one is named.</param>
/// <param name="HighestPh">Highest pH.</param>
/// <param name="LowestCelsius">Lowest water temperature, degC.</param>
/// <param name="Source">Document and clause.</param>
/// <param name="Provenance">How far the row can be relied on.</param>
/// <param name="Superseded">Newer evidence took its place.</param>
/// <param name="Remarks">What has to be said beside it.</param>
public sealed record HoldRow(
    HoldBasis Basis, ValueRange Cyanurate, double StartAt, double Floor, double Required, IReadOnlyList<LevelView> Levels, double? LowestPh, double HighestPh,
    double LowestCelsius, string Source, Said Provenance, bool Superseded, IReadOnlyList<Said> Remarks);

/// <summary>A residual and how long to hold it.</summary>
/// <param name="MilligramsPerLitre">Free chlorine, mg/L as Cl2.</param>
/// <param name="Minutes">The hold.</param>
/// <param name="Provenance">How far the pair can be relied on.</param>
public sealed record LevelView(double MilligramsPerLitre, double Minutes, Said Provenance);

// ---- PUT /api/v1/incidents/{id} : DeclareIncident -> IncidentView; GET /api/v1/incidents?pool= ; GET /api/v1/incidents/{id}

/// <summary>A person declares an incident.</summary>
/// <param name="PoolId">Where.</param>
/// <param name="Kind">What.</param>
/// <param name="Authority">Whose table is counted by.</param>
/// <param name="By">Who declares it.</param>
/// <param name="Note">In words.</param>
/// <param name="HappenedAt">When; null means now.</param>
public sealed record DeclareIncident(string? PoolId, [property: JsonRequired] IncidentKind Kind, [property: JsonRequired] IncidentAuthority Authority, string? By, string? Note, Instant HappenedAt);

/// <summary>What was done or seen. PUT /api/v1/incidents/{id}/remarks/{remarkId}</summary>
public sealed record IncidentNote(string? By, string? Text);

/// <summary>A person closes it. PUT /api/v1/incidents/{id}/closing</summary>
public sealed record CloseIncident(string? By, string? Why);

/// <summary>An incident with its clock as it stands.</summary>
/// <param name="Id">Its id.</param>
/// <param name="PoolId">Where.</param>
/// <param name="Kind">What.</param>
/// <param name="KindName">In words.</param>
/// <param name="Authority">Whose table.</param>
/// <param name="AuthorityName">In words.</param>
/// <param name="HappenedAt">When it happened.</param>
/// <param name="DeclaredAt">When it was declared.</param>
/// <param name="DeclaredBy">By whom.</param>
/// <param name="Note">In words.</param>
/// <param name="Clock">The clock; of one that is closed as it stood then.</param>
/// <param name="Cyanurate">Newest cyanurate by hand, mg/L; null without.</param>
/// <param name="Remarks">What people noted.</param>
/// <param name="BeforeOpening">What a person looks at before opening.</param>
/// <param name="Closed">When, by whom and why it was closed; null while it is open.</param>
/// <param name="Plan">Whether the plan it is counted by is that of the pool's limit pack; null of one that is closed.</param>
/// <param name="Others">The clocks of the other pools of the water, each by its own tests; empty of one that is closed, or where only the deck is concerned.</param>
public sealed record IncidentView(
    Guid Id, string PoolId, IncidentKind Kind, string KindName, IncidentAuthority Authority, string AuthorityName, Instant HappenedAt, Instant DeclaredAt, string DeclaredBy,
    string? Note, ClockView? Clock, double? Cyanurate, IReadOnlyList<IncidentRemark> Remarks, IReadOnlyList<Said> BeforeOpening, ClosedView? Closed,
    Said? Plan, IReadOnlyList<PoolClockView> Others);

/// <summary>How an incident stands in another pool of the same water.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Name">Its name.</param>
/// <param name="Cyanurate">Newest cyanurate by hand there, mg/L; null without.</param>
/// <param name="Clock">Its clock.</param>
public sealed record PoolClockView(string PoolId, string Name, double? Cyanurate, ClockView Clock);

/// <summary>The end of an incident.</summary>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
/// <param name="Why">Why.</param>
/// <param name="Word">How the clock stood.</param>
/// <param name="Share">The part of the hold that the tests supported, 0 to 1.</param>
/// <param name="Others">How it stood in the other pools of the water.</param>
public sealed record ClosedView(Instant At, string? By, string? Why, HoldWord Word, double Share, IReadOnlyList<PoolHoldView> Others);

/// <summary>How a closed incident stood in another pool.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Word">How its clock stood.</param>
/// <param name="Share">The part of the hold that the tests there supported, 0 to 1.</param>
public sealed record PoolHoldView(string PoolId, HoldWord Word, double Share);

/// <summary>The clock of a hold: what the tests support, never more.</summary>
/// <param name="Word">refused, not_started, running, paused, test_missing, reached.</param>
/// <param name="Why">Why it stands so, and what to do next.</param>
/// <param name="Row">The row it counts by; null when refused.</param>
/// <param name="Credited">What the tests support, mg·min/L or minutes.</param>
/// <param name="Required">What must be reached.</param>
/// <param name="Share">The part that is done, 0 to 1.</param>
/// <param name="MinutesLeft">Minutes of the hold that no test supports yet, at the residual last measured; null when that is not known.</param>
/// <param name="StartedAt">When the residual was measured through the pool.</param>
/// <param name="LastCountedAt">Newest counted test.</param>
/// <param name="LastResidual">Its residual, mg/L.</param>
/// <param name="EarliestEnd">When a test can prove the hold at the earliest, should the residual stay. No promise.</param>
/// <param name="NextTestBy">When the next test is due.</param>
/// <param name="ReachedAt">The test that proved it.</param>
/// <param name="Tests">Every test since the incident, in the order of sampling.</param>
public sealed record ClockView(
    HoldWord Word, IReadOnlyList<Said> Why, HoldRow? Row, double Credited, double Required, double Share, double? MinutesLeft, Instant? StartedAt, Instant? LastCountedAt,
    double? LastResidual, Instant? EarliestEnd, Instant? NextTestBy, Instant? ReachedAt, IReadOnlyList<ClockTest> Tests);

/// <summary>A test as the clock took it.</summary>
/// <param name="CheckId">The check.</param>
/// <param name="At">When it was sampled.</param>
/// <param name="Place">Where.</param>
/// <param name="LowestPoint">At the lowest point.</param>
/// <param name="Residual">Free chlorine that can be relied on, mg/L.</param>
/// <param name="Ph">pH by meter.</param>
/// <param name="Celsius">Water temperature, degC.</param>
/// <param name="Counts">It stands at an end of counted time.</param>
/// <param name="Gained">What the time before it added.</param>
/// <param name="Why">Why it does not count, or adds nothing.</param>
public sealed record ClockTest(Guid CheckId, Instant At, string Place, bool LowestPoint, double? Residual, double? Ph, double? Celsius, bool Counts, double Gained, IReadOnlyList<Said> Why);
