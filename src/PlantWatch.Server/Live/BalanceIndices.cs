using PlantWatch.Core.Chemistry;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Every index of a measured water, as the pages show it.</summary>
internal static class BalanceIndices
{
    public static IReadOnlyList<IndexView> Of(Water water, Wording words)
    {
        var result = Equilibrium.Speciate(water);
        var sayings = words.Say(ImaginedReasons.Saying(result));
        var known = result.IsKnown ? result.Value : null;
        double? index = known is { SaturationIndex: var si } && double.IsFinite(si) ? si : null;
        var table = HandbookIndex.Of(new BalanceWater(water.Ph, water.Temperature, water.Alkalinity, water.Calcium, water.Solids, water.Cyanurate));
        return
        [
            new("speciated", index, 0.1, null, index is { } i ? Wording.Key(IndexWords.Of(i)) : null, true, sayings),
            new("handbook", table.IsKnown ? table.Value : null, table.Claim, null, table.IsKnown ? Wording.Key(table.Word) : null, false, table.Saying() is { } s ? words.Say([s]) : []),
            new("precipitation", known is null ? null : Calcite.PrecipitationPotential(known), null, null, null, false, []),
            new("saturation_ph", known is null ? null : Calcite.SaturationPh(known), null, null, null, false, []),
        ];
    }
}
