using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Probes;

/// <summary>A fault with its hours resolved, in hours since the start of the scenario.</summary>
/// <param name="Kind">What.</param>
/// <param name="From">Start.</param>
/// <param name="Until">End.</param>
/// <param name="Size">How much; its meaning depends on the kind.</param>
internal sealed record Fault(FaultKind Kind, double From, double Until, double Size)
{
    /// <summary>The faults of one asset.</summary>
    public static IReadOnlyList<Fault> Of(Scenario scenario, string asset) =>
        [.. scenario.Faults.Where(f => f.On == asset).Select(f => Resolve(f))];

    /// <summary>True while it holds.</summary>
    public bool Holds(double hours) => hours >= From && hours < Until;

    private static Fault Resolve(FaultSetup setup)
    {
        var from = Span.Read(setup.After).TotalHours;
        return new(setup.Kind, from, setup.For.Length == 0 ? double.PositiveInfinity : from + Span.Read(setup.For).TotalHours, setup.Size);
    }
}

/// <summary>Questions to a list of faults.</summary>
internal static class Faults
{
    /// <summary>The fault of a kind that holds now; null for none.</summary>
    public static Fault? Now(this IReadOnlyList<Fault> faults, FaultKind kind, double hours)
    {
        foreach (var fault in faults)
            if (fault.Kind == kind && fault.Holds(hours)) return fault;
        return null;
    }

    /// <summary>True when a fault of the kind holds now.</summary>
    public static bool Has(this IReadOnlyList<Fault> faults, FaultKind kind, double hours) => faults.Now(kind, hours) is not null;
}
