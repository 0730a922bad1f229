using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Server.PlantFile;

/// <summary>What a schema cannot say of a product: whether its per cent, its days and its price make sense for what it is.</summary>
internal static class ProductChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        foreach (var product in root["products"].Items) Product(product, complaints);
        foreach (var circuit in root["circuits"].Items)
        {
            IsDay(circuit["balance_tank_confirmed"]["on"], complaints);
            foreach (var pool in circuit["pools"].Items) IsDay(pool["volume_confirmed"]["on"], complaints);
        }
    }

    private static void Product(Place product, Complaints complaints)
    {
        IsDay(product["strength_on"], complaints);
        IsDay(product["assayed_on"], complaints);
        With(product, "strength_on", "strength_percent", complaints);
        With(product, "assayed_on", "assay_percent", complaints);
        With(product, "assay_percent", "assayed_on", complaints);
        if (product["price_per_kg"].Exists && product["price_per_l"].Exists)
            complaints.Add(product["price_per_l"], "expected a price by the kg or by the litre, found both");
        if (EnumWords<ProductKind>.Find(product["kind"].String) is not { } kind) return;
        Meaning(product, kind, complaints);
        Possible(product, "strength_percent", kind, complaints);
        Possible(product, "assay_percent", kind, complaints);
    }

    private static void Meaning(Place product, ProductKind kind, Complaints complaints)
    {
        var means = product["strength_means"];
        if (means.String is "trade" or "sodium_hypochlorite" && kind != ProductKind.SodiumHypochlorite)
            complaints.Add(means, "only liquid sodium hypochlorite is sold by trade per cent or as sodium hypochlorite; expected weight, or no meaning");
    }

    // A drum of trichlor that says 99 % counts the substance; its available chlorine is 90 %.
    private static void Possible(Place product, string key, ProductKind kind, Complaints complaints)
    {
        var facts = ProductFacts.Of(kind);
        var most = kind == ProductKind.SodiumHypochlorite ? 25 : facts.Basis == GradeBasis.AvailableChlorine ? 100 * facts.AvailableChlorineOfPure : 100;
        if (product[key].Number is { } percent && percent > most + 0.05)
            complaints.Add(product[key], kind == ProductKind.SodiumHypochlorite
                ? $"expected the strength of a hypochlorite solution, up to {Text.Number(most)} %, found {Text.Number(percent)}"
                : $"expected per cent of available chlorine, at most {most:0.#} for the pure substance, found {Text.Number(percent)}");
    }

    private static void With(Place product, string key, string needed, Complaints complaints)
    {
        if (product[key].Exists && !product[needed].Exists) complaints.Add(product[key], $"{key} says nothing without {needed}");
    }

    private static void IsDay(Place day, Complaints complaints)
    {
        if (day.String is { } text && Dates.Find(text) is null) complaints.Add(day, $"expected a day such as \"2026-03-01\", found '{Text.Short(text)}'");
    }
}
