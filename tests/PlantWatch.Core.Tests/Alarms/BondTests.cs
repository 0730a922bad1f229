using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>What hangs together in a plant, at the edges.</summary>
public sealed class BondTests
{
    private static CircuitPlan With(ProductKind doses, string? pool) => Hall.Plan with
    {
        Pumps = [new() { Id = "pump", Name = "Pump", PoolId = pool, ProductId = "product", Doses = doses, StateTopic = "hall/pump/state" }],
    };

    [Theory]
    [InlineData(ProductKind.SodiumHypochlorite, null, "main-chlorine", true)]
    [InlineData(ProductKind.SodiumHypochlorite, "main", "main-chlorine", true)]
    [InlineData(ProductKind.SodiumHypochlorite, "learner", "main-chlorine", false)]
    [InlineData(ProductKind.SodiumHypochlorite, null, "main-ph", false)]
    [InlineData(ProductKind.Coagulant, null, "main-chlorine", false)]
    [InlineData(ProductKind.Coagulant, null, "main-ph", false)]
    public void A_pump_in_the_common_return_doses_every_pool_and_coagulant_raises_nothing(ProductKind doses, string? pool, string probe, bool holds) =>
        Assert.Equal(holds, Bonds.Hold(With(doses, pool), Bond.RaisedByDosing, "circulation", probe));

    [Theory]
    [InlineData("main/free_chlorine", "main/combined_part", true)]
    [InlineData("main/combined_chlorine", "main/combined_part", true)]
    [InlineData("main/ph", "main/combined_part", false)]
    [InlineData("main/free_chlorine", "mains/combined_part", false)]
    [InlineData("main/free_chlorine", "ma/combined_part", false)]
    [InlineData("free_chlorine", "free_chlorine", false)]
    public void A_part_belongs_to_the_tests_of_its_own_pool(string test, string part, bool holds) =>
        Assert.Equal(holds, Bonds.Hold(Hall.Plan, Bond.PartOf, test, part));

    [Theory]
    [InlineData("main/ph", true)]
    [InlineData("learner/ph", false)]
    [InlineData("ph", false)]
    public void A_test_names_its_pool(string test, bool holds) => Assert.Equal(holds, Bonds.Hold(Hall.Plan, Bond.TestOf, "main-ph", test));

    [Fact]
    public void Where_a_reason_lacks_its_figures_nothing_is_explained()
    {
        var part = Reason.Of("combined.part_high", "Main pool", 1.25, 0.5, "free_chlorine");
        var test = Reason.Of("test.below_limit", "Main pool", "free_chlorine", 0.4, 1.1);
        Assert.True(CombinedShare.IsExplained(test, part));
        Assert.False(CombinedShare.IsExplained(Reason.Of("test.below_limit", "Main pool", "free_chlorine", 0.4), part));
        Assert.False(CombinedShare.IsExplained(Reason.Of("test.below_limit", "Main pool", "free_chlorine"), part));
        Assert.False(CombinedShare.IsExplained(test, Reason.Of("combined.part_high", "Main pool", 1.25, 0.5)));
    }

    [Fact]
    public void More_combined_than_total_is_no_part_that_anything_explains() =>
        Assert.False(CombinedShare.IsExplained(Reason.Of("test.below_limit", "Main pool", "free_chlorine", 0.4, 1.1), Reason.Of("combined.part_high", "Main pool", 1.2, 0.5, "total_chlorine")));
}
