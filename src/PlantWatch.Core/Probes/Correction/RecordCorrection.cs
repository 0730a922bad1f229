using System.Text.Json.Serialization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>
/// A correction of the record between two services of a probe: nothing at the first, all of the gap found at the second, growing linearly in time between (the practice of
/// USGS TM 1-D3 for continuous monitors). A layer over the readings: neither they nor the calibrations are touched, and withdrawing it leaves no trace but its own rows.
/// </summary>
public sealed record RecordCorrection
{
    /// <summary>UUIDv7 made by whoever proposed it.</summary>
    public required Guid Id { get; init; }

    /// <summary>The probe.</summary>
    public required string ProbeId { get; init; }

    /// <summary>The service after which the probe was right.</summary>
    public Instant From { get; init; }

    /// <summary>The service that found the gap; what is read from then on is not corrected.</summary>
    public Instant To { get; init; }

    /// <summary>The part of the gap that cleaning removed, to be added at the end, in the measurand's unit: value after cleaning less before. 0 where it was not told apart.</summary>
    public double Fouling { get; init; }

    /// <summary>The part that calibration found, to be added at the end to a value of <see cref="Pivot"/>.</summary>
    public double Drift { get; init; }

    /// <summary>How much that part grows for each unit above the pivot: 0 where an offset was found, not 0 where two points told a slope.</summary>
    public double DriftSlope { get; init; }

    /// <summary>The value at which <see cref="Drift"/> was found; of no account without a slope.</summary>
    public double Pivot { get; init; }

    /// <summary>Standard uncertainty of the whole gap, above 0: what buffers or tests can tell.</summary>
    public double GapU { get; init; }

    /// <summary>Variance a day by which a probe of this kind strays from a straight line between two services.</summary>
    public double WanderPerDay { get; init; }

    /// <summary>The calibration that the correction starts at; null when a person named the time.</summary>
    public Guid? FromService { get; init; }

    /// <summary>The calibration that found the gap; null when a person named the time.</summary>
    public Guid? ToService { get; init; }

    /// <summary>Who made it.</summary>
    public required string MadeBy { get; init; }

    /// <summary>When it entered the record.</summary>
    public Instant MadeAt { get; init; }

    /// <summary>Why, in the maker's words.</summary>
    public required string Why { get; init; }

    /// <summary>Who withdrew it; null while it is in force.</summary>
    public string? WithdrawnBy { get; init; }

    /// <summary>When; never while it is in force.</summary>
    public Instant WithdrawnAt { get; init; }

    /// <summary>Why it was withdrawn.</summary>
    public string? WithdrawnWhy { get; init; }

    /// <summary>True until it is withdrawn.</summary>
    [JsonIgnore]
    public bool IsInForce => !WithdrawnAt.IsSet;

    /// <summary>True within its time: the end belongs to what comes after the service.</summary>
    public bool Covers(Instant at) => at >= From && at < To;

    /// <summary>The share of the gap that has grown by a time: 0 at the first service, 1 at the second.</summary>
    public double ShareAt(Instant at) => Math.Clamp((at - From) / (To - From), 0, 1);

    /// <summary>The whole gap at the end for a value: what must be added to it.</summary>
    public double GapAt(double value) => Fouling + Drift + (DriftSlope * (value - Pivot));

    /// <summary>How much the correction changes a value at a time, its two parts taken without sign: what TM 1-D3 rates a record by.</summary>
    public double SizeAt(Instant at, double value) => ShareAt(at) * (Math.Abs(Fouling) + Math.Abs(Drift + (DriftSlope * (value - Pivot))));

    /// <summary>Standard uncertainty that the correction itself brings in at a time: the gap's, as far as it has grown, and that nobody saw the probe between its services (a Brownian bridge).</summary>
    public double UncertaintyAt(Instant at)
    {
        var share = ShareAt(at);
        return Math.Sqrt((share * share * GapU * GapU) + (WanderPerDay * (To - From).TotalDays * share * (1 - share)));
    }
}
