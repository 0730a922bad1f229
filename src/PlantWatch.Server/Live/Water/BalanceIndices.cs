using PlantWatch.Core.Chemistry;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Every index of a balance, as the pages show it: the one to go by first.</summary>
internal static class BalanceIndices
{
    public static IReadOnlyList<IndexView> Of(BalanceSheet sheet, Wording words) =>
    [
        View("speciated", sheet.Speciated, acted: true, words),
        View("handbook", sheet.Handbook, acted: false, words),
        View("closed_form", sheet.ClosedForm, acted: false, words),
        View("ionic_strength", sheet.IonicStrength, acted: false, words),
        Bare("precipitation", sheet.PrecipitationPotential),
        Bare("saturation_ph", sheet.SaturationPhMoved),
        Bare("ryznar", sheet.Ryznar),
        Bare("puckorius", sheet.Puckorius),
        Bare("larson_skold", sheet.LarsonSkold),
    ];

    private static IndexView View(string key, IndexResult index, bool acted, Wording words) => new(
        key, index.IsKnown ? index.Value : null, index.Claim, index.IsKnown ? 2 * index.Measured : null, index.IsKnown ? Wording.Key(index.Word) : null, acted,
        index.Why is { } why ? words.Say([why]) : []);

    private static IndexView Bare(string key, double? value) => new(key, value, null, null, null, false, []);
}
