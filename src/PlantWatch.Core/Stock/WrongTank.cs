using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Stock;

/// <summary>A product in the tank of another: whether it is, and what the two do together.</summary>
/// <remarks>Standard hazards (common practice); the safety data sheets and the emergency services come first. What is not known here is not called harmless.</remarks>
public static class WrongTank
{
    /// <summary>True when a product does not belong into a tank. Two products of one kind may share it: only their strength can differ.</summary>
    public static bool Is(StockMove move, PumpPlan tank)
    {
        ArgumentNullException.ThrowIfNull(move);
        ArgumentNullException.ThrowIfNull(tank);
        if (!move.FillsTank || move.ProductId == tank.ProductId) return false;
        return move.Kind != tank.Doses || move.Kind == ProductKind.Unknown;
    }

    /// <summary>What it comes to, with the names of product, tank and what the tank is for.</summary>
    /// <param name="product">Name of what went in.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="tank">What people call the tank: its pump.</param>
    /// <param name="holds">What the tank is for.</param>
    public static Reason Cause(string product, ProductKind kind, string tank, ProductPlan holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        return Reason.Of(CodeOf(ProductHazards.Apart(kind, holds)?.Code), product, tank, holds.Name);
    }

    private static string CodeOf(string? apart) => apart switch
    {
        "apart.chlorine_gas" => "wrong_tank.chlorine_gas",
        "apart.heat_and_gas" or "apart.chlorine_products" => "wrong_tank.heat_and_gas",
        "apart.fire_and_explosion" => "wrong_tank.fire_and_explosion",
        "apart.oxidiser_and_reducer" or "apart.oxidisers" => "wrong_tank.oxidisers",
        "apart.acid_and_base" => "wrong_tank.acid_and_base",
        "apart.sulfur_dioxide" => "wrong_tank.sulfur_dioxide",
        _ => "wrong_tank.not_known",
    };
}
