using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What a check found of the quantity of a breach.</summary>
internal static class BreachWords
{
    /// <summary>What a check found of a quantity; null for a ratio, whose parts stand in the check.</summary>
    public static Reason? Tested(ManualCheck check, string key)
    {
        var quantity = key[(key.LastIndexOf('/') + 1)..];
        if (quantity == BreachKeys.Bottom) return Reason.Of("exception.bottom_seen");
        foreach (var result in check.Results)
            if (result.Measurand.Key() == quantity) return ActFigures.Tested(result);
        return quantity == Measurand.CombinedChlorine.Key() && CombinedOfCheck.TryOf(check, out var combined) && combined.IsKnown
            ? Reason.Of("exception.tested", quantity, combined.Value.MilligramsPerLitre, Measurand.CombinedChlorine.Unit()) : null;
    }
}
