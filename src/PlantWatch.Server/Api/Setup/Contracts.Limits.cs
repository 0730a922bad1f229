using PlantWatch.Core.Quantities;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Server.Api;

// ---- GET  /api/v1/limit-packs                          PackInfo[]
//      GET  /api/v1/circuits/{id}/limits                 CircuitLimitsView
//      POST /api/v1/circuits/{id}/limits/{row}/confirm   ConfirmRow -> CircuitLimitsView
//      POST /api/v1/circuits/{id}/limits/{row}/revoke    RevokeRow -> CircuitLimitsView

/// <summary>A pack that can be picked.</summary>
public sealed record PackInfo(string Id, string Authority, string Edition, bool Superseded, int Rows, int FromMemory, int Sentences);

/// <summary>The limits of a circuit: the picked pack row by row, and what holds in each pool now.</summary>
public sealed record CircuitLimitsView(
    string Circuit, PackInfo? Pack, IReadOnlyList<PackRowView> Rows, IReadOnlyList<PoolBoundsView> Pools, IReadOnlyList<string> MayConfirm, IReadOnlyList<StopView> Stops);

/// <summary>A stop that always holds, as the plant has it. Beside these the bottom of the pool has to be seen.</summary>
/// <param name="Low">Lowest value; null where there is no lower stop.</param>
/// <param name="UsualLow">Lowest value where nobody edits it.</param>
/// <param name="Why">Why the plant edited it; null where it did not.</param>
/// <param name="By">Who stands for it where it is looser.</param>
public sealed record StopView(PackQuantity Quantity, string Name, string Unit, double? Low, double High, double? UsualLow, double UsualHigh, string? Why, string? By);

/// <summary>A row of the picked pack.</summary>
/// <param name="Digest">What is confirmed: sent back with the confirmation.</param>
/// <param name="ToJudge">What a person has to judge; null when the row decides by itself.</param>
/// <param name="Pools">For which pools it holds now: yes, unknown or no.</param>
/// <param name="Confirmed">Who confirmed it as it stands now; null while nobody did.</param>
/// <param name="ChangedSince">It was confirmed with other figures and waits anew.</param>
public sealed record PackRowView(
    string Id, string Digest, PackQuantity Quantity, string Name, string Unit, RowGrade Grade, double? Low, double? High, double? RaisesLowBy, string Says, string? ToJudge,
    string Source, RowProvenance Provenance, string? Certainty, IReadOnlyList<RowPoolView> Pools, ConfirmationView? Confirmed, bool ChangedSince);

/// <summary>Whether a row holds for a pool now.</summary>
/// <param name="Measured">False where only a probe tells the quantity, the pool has none, and the authority does not demand one: the row waits for nothing.</param>
public sealed record RowPoolView(string Pool, Holds Holds, bool Measured);

/// <summary>A confirmation.</summary>
public sealed record ConfirmationView(string By, Instant At, string Document, bool Applies);

/// <summary>What holds in a pool now.</summary>
/// <param name="NotMeasured">Rows about what the pool has no probe for.</param>
/// <param name="Turned">Rows in mV that are watched against the electrode of the pool's probe.</param>
public sealed record PoolBoundsView(
    string Pool, LimitsWord Word, IReadOnlyList<BoundView> Bounds, IReadOnlyList<string> Unconfirmed, IReadOnlyList<UndecidedView> Undecided, IReadOnlyList<string> NotMeasured, IReadOnlyList<TurnedRow> Turned);

/// <summary>A bound with the rows its ends come from; an empty row is the plant's own limit.</summary>
/// <param name="ByBalance">No test by itself: it is held against the balance that a full set of tests gives.</param>
public sealed record BoundView(PackQuantity Quantity, string Name, string Unit, RowGrade Grade, double? Low, string LowFrom, double? High, string HighFrom, bool ByBalance);

/// <summary>A row that cannot be decided, and what is missing.</summary>
public sealed record UndecidedView(string Row, string Needs);

/// <summary>A person confirms a row.</summary>
public sealed record ConfirmRow(string? Digest, string? By, string? Document, bool? Applies);

/// <summary>A person takes a confirmation back.</summary>
public sealed record RevokeRow(string? By, string? Why);
