using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans.Packs;

/// <summary>A person read a row beside the document and confirmed it for this circuit. It holds for the very figures that were confirmed: a row that changes waits to be confirmed anew.</summary>
/// <param name="PackId">The pack.</param>
/// <param name="RowId">The row.</param>
/// <param name="Digest">What was confirmed: a hash of the row's figures and conditions.</param>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Document">The document and clause that lay on the table.</param>
public sealed record RowConfirmation(string PackId, string RowId, string Digest, string By, Instant At, string Document)
{
    /// <summary>False when the person found that the row does not concern this plant: only a row that a person has to judge can be set aside so.</summary>
    public bool Applies { get; init; } = true;
}
