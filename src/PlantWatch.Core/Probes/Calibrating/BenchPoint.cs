using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>How a reading in a solution came about.</summary>
public enum PointSource
{
    /// <summary>A person read it off and typed it.</summary>
    Typed = 0,
    /// <summary>The probe's own readings, once they had settled.</summary>
    Settled,
}

/// <summary>An electrode standing in a solution of known value: what it should read, and what it did.</summary>
public sealed record BenchPoint
{
    /// <summary>The pH buffer; unknown for a check solution, or a buffer with its own label.</summary>
    public PhBuffer Buffer { get; init; }

    /// <summary>The buffer of a quinhydrone check solution; unknown for a pH buffer, or a solution with its own label.</summary>
    public QuinhydroneBuffer Quinhydrone { get; init; }

    /// <summary>What the label says for this temperature, pH or mV, of a solution that no table here knows. A label goes before a table.</summary>
    public double? Label { get; init; }

    /// <summary>Temperature of the solution, degC.</summary>
    public double Celsius { get; init; }

    /// <summary>What the probe read, uncorrected: pH, or mV where <see cref="InMillivolts"/> says so; mV for ORP.</summary>
    public double Reading { get; init; }

    /// <summary>True for the mV of a pH electrode.</summary>
    public bool InMillivolts { get; init; }

    /// <summary>Whether it was typed or the probe's own.</summary>
    public PointSource Source { get; init; }

    /// <summary>When.</summary>
    public Instant At { get; init; }

    /// <summary>Lot of the solution, as on the bottle.</summary>
    public string? Lot { get; init; }

    /// <summary>The day the solution expires.</summary>
    public DateOnly? Expires { get; init; }

    /// <summary>What an ideal probe reads in it: pH for a pH probe, mV for ORP.</summary>
    public Figure Known(Measurand measurand)
    {
        var range = measurand == Measurand.Ph ? Buffers : Potentials;
        if (Label is { } label) return new InputCheck().Within("label", label, range, measurand.Unit()).Then(() => label);
        if (measurand == Measurand.Ph) return PhBuffers.Value(Buffer, Celsius);
        return measurand == Measurand.Orp ? OrpCheckSolution.Expected(Quinhydrone, Celsius) : Figure.Not(Reason.Of("bench.no_solution"));
    }

    // A label outside these is a slip of the pen.
    private static readonly ValueRange Buffers = new(1, 13);
    private static readonly ValueRange Potentials = new(-500, 1000);
}
