using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant;

/// <summary>A person opened a lot of a reagent and noted it. Every circuit of the plant is told: they share the test kit.</summary>
/// <param name="At">When it was noted.</param>
/// <param name="ReagentId">The reagent.</param>
/// <param name="Lot">The lot.</param>
public sealed record ReagentOpened(Instant At, string ReagentId, ReagentLot Lot) : PlantEvent(At);

/// <summary>A lot of a reagent was opened.</summary>
/// <param name="ReagentId">The reagent.</param>
/// <param name="Lot">The lot, with who noted it.</param>
public sealed record ReagentEntry(string ReagentId, ReagentLot Lot) : EntryBody
{
    /// <inheritdoc/>
    [JsonIgnore]
    public override string Kind => "reagent_opened";
}
