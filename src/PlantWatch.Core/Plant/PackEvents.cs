using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant;

/// <summary>A person confirmed a row of the picked pack with the document in hand.</summary>
/// <param name="At">When.</param>
/// <param name="PackId">The pack.</param>
/// <param name="RowId">The row.</param>
/// <param name="Digest">What was on the screen: it has to be what the plan says now.</param>
/// <param name="By">Who.</param>
/// <param name="Document">The document and clause that lay on the table.</param>
/// <param name="Applies">False when the row, which a person has to judge, does not concern this plant.</param>
public sealed record PackRowConfirmed(Instant At, string PackId, string RowId, string Digest, string By, string Document, bool Applies = true) : PlantEvent(At);

/// <summary>A person took a confirmation back, and says why.</summary>
public sealed record PackRowRevoked(Instant At, string PackId, string RowId, string By, string Why) : PlantEvent(At);
