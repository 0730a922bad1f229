using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>What limits say of a calibration.</summary>
public enum BenchVerdict
{
    /// <summary>Nothing was measured.</summary>
    Unknown = 0,
    /// <summary>Within the limits of the plant file.</summary>
    Within,
    /// <summary>Beyond at least one of them.</summary>
    Outside,
}

/// <summary>The sheet of a calibration at the bench, as it is signed: what was found, what was done, what was left. Kept with the calibration for ever.</summary>
public sealed record BenchSheet
{
    /// <summary>When the probe left its cell.</summary>
    public Instant StartedAt { get; init; }

    /// <summary>When it stood in it again; never means when it was signed.</summary>
    public Instant EndedAt { get; init; }

    /// <summary>As found, before anything was touched; empty when it could not be taken.</summary>
    public ImmutableArray<BenchPoint> AsFound { get; init; } = [];

    /// <summary>What the calibration rests on; the same as found when nothing was touched.</summary>
    public ImmutableArray<BenchPoint> Points { get; init; } = [];

    /// <summary>Measured afterwards; empty when the points themselves stand for it.</summary>
    public ImmutableArray<BenchPoint> AsLeft { get; init; } = [];

    /// <summary>Limits in force then. Filled in by PlantWatch.</summary>
    public CarePlan Limits { get; init; } = CarePlan.Usual;

    /// <summary>Slope in force before. Filled in by PlantWatch.</summary>
    public double HeldSlope { get; init; } = 1;

    /// <summary>Offset in force before. Filled in by PlantWatch.</summary>
    public double HeldOffset { get; init; }

    /// <summary>Slope of the electrode as a share of the ideal; null when one point, or none, was measured. Filled in by PlantWatch.</summary>
    public double? SlopeShare { get; init; }

    /// <summary>Offset of the electrode in mV: at pH 7 for pH, in the solution for ORP. Filled in by PlantWatch.</summary>
    public double? OffsetMillivolts { get; init; }

    /// <summary>Error as found under the correction then in force: what the plant believed less what was true; the largest of the points. Filled in by PlantWatch.</summary>
    public double? FoundError { get; init; }

    /// <summary>Error as left, likewise. Filled in by PlantWatch.</summary>
    public double? LeftError { get; init; }

    /// <summary>What the limits say. Filled in by PlantWatch.</summary>
    public BenchVerdict Verdict { get; init; }

    /// <summary>In words, most important first. Filled in by PlantWatch.</summary>
    public ImmutableArray<Reason> Why { get; init; } = [];

    /// <summary>True when a person wrote the same on both.</summary>
    internal bool IsWrittenAs(BenchSheet other) =>
        StartedAt == other.StartedAt && EndedAt == other.EndedAt && AsFound.AsSpan().SequenceEqual(other.AsFound.AsSpan())
        && Points.AsSpan().SequenceEqual(other.Points.AsSpan()) && AsLeft.AsSpan().SequenceEqual(other.AsLeft.AsSpan());
}
