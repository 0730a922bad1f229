using PlantWatch.Simulator;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class IndependenceTests
{
    // Truth and estimate must not share a formula: an error in it would be invisible.
    [Fact]
    public void The_simulator_refers_to_no_other_project_of_the_house() => Assert.DoesNotContain(
        typeof(Runner).Assembly.GetReferencedAssemblies(), a => a.Name!.StartsWith("PlantWatch.", StringComparison.Ordinal));
}
