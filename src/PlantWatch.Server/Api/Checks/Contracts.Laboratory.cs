using System.Text.Json.Serialization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Api;

// ---- PUT /api/v1/laboratory/{id} : LabRequest -> LabResultView; GET /api/v1/laboratory?pool= : LabView; POST /api/v1/laboratory/{id}/close : CloseLabResult -> LabView

/// <summary>A report as a person enters it.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Point">Where the sample was taken.</param>
/// <param name="Place">The place in words.</param>
/// <param name="SampledAt">When the sample was taken.</param>
/// <param name="ReportedAt">When the laboratory reported.</param>
/// <param name="Laboratory">Which laboratory.</param>
/// <param name="SampleNumber">Its number of the sample.</param>
/// <param name="By">Who enters it.</param>
/// <param name="Counts">The counts as they are printed.</param>
/// <param name="Note">A remark.</param>
/// <param name="Corrects">The result that it takes the place of.</param>
public sealed record LabRequest(
    string? PoolId, SamplePoint Point, string? Place, Instant SampledAt, Instant ReportedAt, string? Laboratory, string? SampleNumber, string? By,
    IReadOnlyList<LabCountRequest>? Counts, string? Note, Guid? Corrects);

/// <summary>One count.</summary>
/// <param name="Organism">colony_count, escherichia_coli, pseudomonas_aeruginosa, legionella.</param>
/// <param name="Count">The number printed.</param>
/// <param name="Sense">counted, below, above, not_detected.</param>
/// <param name="Millilitres">The volume it is printed for.</param>
public sealed record LabCountRequest([property: JsonRequired] Organism Organism, [property: JsonRequired] double Count, CountSense Sense, [property: JsonRequired] double Millilitres);

/// <summary>A person closes a result that is outside its limit.</summary>
public sealed record CloseLabResult(string? By, string? Why);

/// <summary>The laboratory's side of the plant.</summary>
/// <param name="Pools">What is in force and due, pool by pool.</param>
/// <param name="Results">Reports, the newest sample first.</param>
public sealed record LabView(IReadOnlyList<LabPoolView> Pools, IReadOnlyList<LabResultView> Results);

/// <summary>Limits and due samples of a pool.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="Name">Its name.</param>
/// <param name="Limits">What is in force; an organism without one has none, which is not normal.</param>
/// <param name="EveryDays">Planned every so many days; null when nothing is planned.</param>
/// <param name="SampleDue">When the next planned sample is due.</param>
/// <param name="ResampleDue">When a resample is due; null when nothing stands outside its limit.</param>
public sealed record LabPoolView(string PoolId, string Name, IReadOnlyList<LabLimitView> Limits, double? EveryDays, Instant? SampleDue, Instant? ResampleDue);

/// <summary>A limit in force.</summary>
/// <param name="Organism">Which.</param>
/// <param name="Name">In words.</param>
/// <param name="High">The highest count.</param>
/// <param name="Millilitres">The volume it speaks of.</param>
/// <param name="Source">Document and clause, or the row of the pack.</param>
public sealed record LabLimitView(Organism Organism, string Name, double High, double Millilitres, string Source);

/// <summary>A report with what it means now.</summary>
/// <param name="Id">Its id.</param>
/// <param name="PoolId">The pool.</param>
/// <param name="Point">Where.</param>
/// <param name="Place">In words.</param>
/// <param name="SampledAt">When sampled.</param>
/// <param name="ReportedAt">When reported.</param>
/// <param name="EnteredAt">When entered.</param>
/// <param name="Laboratory">Which laboratory.</param>
/// <param name="SampleNumber">Its number.</param>
/// <param name="By">Who entered it.</param>
/// <param name="Note">A remark.</param>
/// <param name="Counts">The counts, each against its limit of now.</param>
/// <param name="Water">The chemistry at sampling.</param>
/// <param name="Open">Something of it stands outside its limit, unanswered.</param>
/// <param name="ClosedBy">Who closed it; null when nobody did.</param>
/// <param name="ClosedWhy">Why.</param>
/// <param name="ClosedAt">When.</param>
/// <param name="CorrectedBy">The report that took its place.</param>
public sealed record LabResultView(
    Guid Id, string PoolId, SamplePoint Point, string? Place, Instant SampledAt, Instant ReportedAt, Instant EnteredAt, string Laboratory, string SampleNumber, string By, string? Note,
    IReadOnlyList<LabCountView> Counts, IReadOnlyList<LabWaterView> Water, bool Open, string? ClosedBy, string? ClosedWhy, Instant? ClosedAt, Guid? CorrectedBy);

/// <summary>A count as printed and as it is compared.</summary>
/// <param name="Organism">Which.</param>
/// <param name="Name">In words.</param>
/// <param name="Count">As printed.</param>
/// <param name="Sense">counted, below, above, not_detected.</param>
/// <param name="Millilitres">The volume it is printed for.</param>
/// <param name="PerBasis">Brought to the volume of the limits.</param>
/// <param name="BasisMillilitres">That volume.</param>
/// <param name="High">The limit of now; null when none is in force.</param>
/// <param name="Verdict">no_limit, inside, not_proven, outside.</param>
/// <param name="Open">It stands outside its limit, unanswered.</param>
public sealed record LabCountView(
    Organism Organism, string Name, double Count, CountSense Sense, double Millilitres, double PerBasis, double BasisMillilitres, double? High, LabVerdict Verdict, bool Open);

/// <summary>Chemistry at sampling.</summary>
/// <param name="Measurand">What.</param>
/// <param name="Name">In words.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Value">The value.</param>
/// <param name="At">When.</param>
/// <param name="ProbeId">The probe; null for a test by hand.</param>
public sealed record LabWaterView(Measurand Measurand, string Name, string Unit, double Value, Instant At, string? ProbeId);
