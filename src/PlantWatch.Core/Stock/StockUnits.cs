using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Stock;

/// <summary>What a product is counted in, and from kg to that.</summary>
public static class StockUnits
{
    /// <summary>Litres for a liquid, and for what a pump doses where the plant file says nothing of its form; kg for everything else.</summary>
    public static StockUnit Of(ProductPlan product)
    {
        ArgumentNullException.ThrowIfNull(product);
        var form = product.Form == ProductForm.Unknown ? ProductFacts.Of(product.Kind).Form : product.Form;
        return form == ProductForm.Liquid || (form == ProductForm.Unknown && product.AddedBy == DosingWay.Pump) ? StockUnit.Litre : StockUnit.Kilogram;
    }

    /// <summary>So many kg in the product's unit; null for litres of a product without density.</summary>
    public static double? FromKilograms(ProductAtHand product, double kilograms)
    {
        ArgumentNullException.ThrowIfNull(product);
        return Of(product.Plan) == StockUnit.Kilogram ? kilograms : product.KilogramsPerLitre is > 0 and var density ? kilograms / density : null;
    }

    /// <summary>Price of a unit by the plant file; null when it gives none.</summary>
    public static double? UnitPrice(ProductAtHand product)
    {
        ArgumentNullException.ThrowIfNull(product);
        if (Of(product.Plan) == StockUnit.Kilogram) return product.CostPerKilogram;
        return product.Plan.PricePerLitre ?? (product.Plan.PricePerKilogram is { } kilogram && product.KilogramsPerLitre is { } density ? kilogram * density : null);
    }
}
