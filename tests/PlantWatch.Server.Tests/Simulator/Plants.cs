using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Server.Tests.Simulator;

/// <summary>Small plants to test with: the quiet month, changed a little.</summary>
internal static class Plants
{
    public static readonly DateTimeOffset Start = new(2026, 3, 2, 0, 0, 0, TimeSpan.Zero);

    public static Scenario Quiet(Action<Scenario>? change = null)
    {
        var scenario = ScenarioFile.Load("quiet-month");
        change?.Invoke(scenario);
        return scenario;
    }

    public static SimulatedPlant Run(Scenario scenario, TimeSpan time, Cadence? cadence = null)
    {
        var plant = new SimulatedPlant(scenario, Start) { Cadence = cadence ?? Cadence.History };
        plant.AdvanceTo(Start + time);
        return plant;
    }

    public static FaultSetup Fault(string on, FaultKind kind, double size = 0, string after = "1d", string lasting = "") =>
        new() { On = on, Kind = kind, Size = size, After = after, For = lasting };
}
