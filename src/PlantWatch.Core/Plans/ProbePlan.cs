using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>Whose calibration a probe's number carries.</summary>
public enum SignalOrigin
{
    /// <summary>The probe's own signal; PlantWatch may hold a calibration for it.</summary>
    Raw = 0,
    /// <summary>What the plant's controller shows and doses by; a correction belongs on the panel, never here as well.</summary>
    PanelScaled,
}

/// <summary>How a topic's payload is read.</summary>
public enum PayloadFormat
{
    /// <summary>A plain decimal number as text.</summary>
    Number = 0,
    /// <summary>SenML JSON (RFC 8428).</summary>
    SenmlJson,
    /// <summary>SenML CBOR (RFC 8428 section 6).</summary>
    SenmlCbor,
}

/// <summary>One inline probe.</summary>
public sealed record ProbePlan
{
    /// <summary>Stable key, unique in the plant; also the series key.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed; its history follows.</summary>
    public string? Was { get; init; }

    /// <summary>The pool whose water it sees; null when it sees the mixed return of the circuit.</summary>
    public string? PoolId { get; init; }

    /// <summary>What it measures.</summary>
    public required Measurand Measurand { get; init; }

    /// <summary>Raw or as scaled by the plant's panel.</summary>
    public SignalOrigin Origin { get; init; }

    /// <summary>MQTT topic.</summary>
    public required string Topic { get; init; }

    /// <summary>How the payload is read.</summary>
    public PayloadFormat Format { get; init; }

    /// <summary>The resolved SenML record name that is this probe's; null for a plain number.</summary>
    public string? RecordName { get; init; }

    /// <summary>Unit of the incoming number, one of the units that readings understand; null means the measurand's own unit.</summary>
    public string? Unit { get; init; }

    /// <summary>Physical range of the instrument in the measurand's own unit; outside it a number is refused and kept.</summary>
    public required ValueRange Range { get; init; }

    /// <summary>How often a reading is expected.</summary>
    public TimeSpan Every { get; init; } = TimeSpan.FromSeconds(10);

    /// <summary>Time the water takes from the pool to the sample cell.</summary>
    public TimeSpan SampleDelay { get; init; }

    /// <summary>How far the instrument's own filter lags behind the water in the cell: the time constant of a first-order filter, 0 to 10 minutes.</summary>
    public TimeSpan FilterLag { get; init; }

    /// <summary>Time from one stroke of the dosing pumps to the next as the cell sees it, 0 to an hour; 0 when they do not pulse. A test is compared with the mean over whole cycles.</summary>
    public TimeSpan DosingCycle { get; init; }

    /// <summary>Reference electrode of an ORP probe, such as "Ag/AgCl 3 M"; an ORP figure without it is incomplete.</summary>
    public string? ReferenceElectrode { get; init; }

    /// <summary>The flow switch that guards this probe's sample cell; null when it has none.</summary>
    public string? FlowSwitchId { get; init; }

    /// <summary>The filter whose pressure it measures; null for every other measurand.</summary>
    public string? FilterId { get; init; }

    /// <summary>How it is looked after.</summary>
    public CarePlan Care { get; init; } = CarePlan.Usual;
}
