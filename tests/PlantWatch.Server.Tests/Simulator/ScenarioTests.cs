using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Server.Tests.Simulator;

public sealed class ScenarioTests
{
    public static TheoryData<string> Shipped => [.. ScenarioFile.Names()];

    [Fact]
    public void The_scenarios_of_the_readme_are_there() =>
        Assert.Subset(ScenarioFile.Names().ToHashSet(), new HashSet<string> { "quiet-month", "drifting-ph", "poisoned-orp", "lost-prime", "busy-weekend", "demo" });

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_scenario_runs_a_day(string name)
    {
        var plant = new SimulatedPlant(ScenarioFile.Load(name), Plants.Start) { Cadence = Cadence.History };
        var happened = plant.AdvanceTo(Plants.Start.AddDays(1));
        Assert.NotEmpty(happened.Messages);
        Assert.NotEmpty(happened.Checks);
        foreach (var circuit in plant.Circuits)
            Assert.All(circuit.Setup.Pools, p => Assert.InRange(circuit.View(p.Id).Ph, 6.8, 8.2));
    }

    [Fact]
    public void The_same_seed_gives_the_same_plant() => Assert.Equal(Story(7), Story(7));

    [Fact]
    public void Another_seed_gives_another() => Assert.NotEqual(Story(7), Story(8));

    [Fact]
    public void How_often_the_plant_is_asked_changes_nothing()
    {
        var (once, often) = (new SimulatedPlant(Plants.Quiet(), Plants.Start), new SimulatedPlant(Plants.Quiet(), Plants.Start));
        once.AdvanceTo(Plants.Start.AddHours(10));
        for (var minute = 1; minute <= 600; minute++) often.AdvanceTo(Plants.Start.AddMinutes(minute));
        Assert.Equal(once.Circuits[0].View("main-pool"), often.Circuits[0].View("main-pool"));
    }

    [Theory]
    [InlineData("name: x\nsedd: 3\n", "line 2")]
    [InlineData("name: x\n", "no circuits")]
    [InlineData("circuits:\n  - id: a\n    pools: [ { id: p } ]\nfaults: [ { on: nobody, kind: drift, after: 1d } ]\n", "nobody")]
    [InlineData("circuits:\n  - id: a\n    pools: [ { id: p } ]\nfaults: [ { on: a, kind: clock, after: soon } ]\n", "soon")]
    [InlineData("circuits:\n  - id: a\n    pools: [ { id: p } ]\npeople:\n  rounds: [ { pool: p, at: [\"7 in the morning\"], tests: [ph] } ]\n", "time of day")]
    public void A_scenario_that_is_not_understood_says_where(string yaml, string expected) =>
        Assert.Contains(expected, Assert.Throws<ScenarioException>(() => ScenarioFile.Parse(yaml)).Message);

    [Theory]
    [InlineData("90s", 90)]
    [InlineData("2d6h30m", 196_200)]
    [InlineData("", null)]
    [InlineData("5", null)]
    [InlineData("h", null)]
    public void Durations_are_read_as_written(string text, int? seconds) => Assert.Equal(seconds, Span.TryRead(text)?.TotalSeconds is { } s ? (int)s : null);

    private static string Story(int seed)
    {
        var plant = new SimulatedPlant(Plants.Quiet(s => s.Seed = seed), Plants.Start) { Cadence = Cadence.History };
        var happened = plant.AdvanceTo(Plants.Start.AddDays(1));
        return string.Join('\n', happened.Messages.Select(m => m.Topic + " " + System.Text.Encoding.UTF8.GetString(m.Payload))
            .Concat(happened.Checks.Select(c => System.Text.Encoding.UTF8.GetString(c.Body()) + c.Id)));
    }
}
