using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Commands;

/// <summary>Checks a plant file from the command line, so that it can be put right before it comes into force.</summary>
internal static class CheckPlantCommand
{
    /// <summary>Prints every error, or what was understood. Returns 0 when the file is good and 1 when it is not.</summary>
    public static int Run(string path, TextWriter output)
    {
        var result = PlantFileSource.Read(path).Understand();
        foreach (var error in result.Errors) output.WriteLine(error);
        if (result.Plan is { } plan)
        {
            Summarise(plan, output);
            return 0;
        }
        output.WriteLine(result.Errors.Count == 1 ? "1 error: this file would not come into force" : $"{result.Errors.Count} errors: this file would not come into force");
        return 1;
    }

    private static void Summarise(PlantPlan plan, TextWriter output)
    {
        output.WriteLine($"{plan.Site.Name}, clock of {plan.Site.TimeZone}");
        foreach (var circuit in plan.Circuits) Circuit(circuit, output);
        output.WriteLine($"products: {Listed(plan.Products.Select(product => product.Name))}");
        output.WriteLine("no errors");
    }

    private static void Circuit(CircuitPlan circuit, TextWriter output)
    {
        output.WriteLine($"circuit {circuit.Id}: {circuit.Name}{Renamed(circuit.Was)}");
        foreach (var pool in circuit.Pools) output.WriteLine($"  pool {pool.Id}: {pool.Name}, {Text.Number(pool.VolumeCubicMetres)} m3{Renamed(pool.Was)}, limits on {Listed(pool.Limits.Select(Limit))}");
        foreach (var probe in circuit.Probes) output.WriteLine($"  probe {probe.Id}: {Word(probe.Measurand)} from {probe.Topic}{Record(probe)}{Renamed(probe.Was)}");
        foreach (var pump in circuit.Pumps) output.WriteLine($"  pump {pump.Id}: {pump.ProductId}, state from {pump.StateTopic}{Renamed(pump.Was)}");
    }

    private static string Limit(LimitPlan limit) => (limit.Low, limit.High) switch
    {
        ({ } low, { } high) => $"{Word(limit.Measurand)} {Text.Number(low)} to {Text.Number(high)}",
        ({ } low, _) => $"{Word(limit.Measurand)} from {Text.Number(low)}",
        _ => $"{Word(limit.Measurand)} up to {Text.Number(limit.High ?? 0)}",
    };

    private static string Word(Measurand measurand) => EnumWords<Measurand>.Word(measurand);

    private static string Record(ProbePlan probe) => probe.RecordName is { } name ? $", record {name}" : "";

    private static string Renamed(string? was) => was is null ? "" : $" (was {was})";

    private static string Listed(IEnumerable<string> names) => string.Join(", ", names) is { Length: > 0 } list ? list : "none";
}
