using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/instruments                              InstrumentView[]: what the plant tests with, and how each stands
//      PUT  /api/v1/instruments/verifications/{id}           VerifyRequest -> VerificationView: a person held one against a standard

/// <summary>An instrument was held against a standard.</summary>
/// <param name="InstrumentId">The instrument.</param>
/// <param name="Measurand">What the standard stands for.</param>
/// <param name="Standard">Which standard, with its number.</param>
/// <param name="Nominal">What it should read.</param>
/// <param name="Tolerance">How far it may be off on either side.</param>
/// <param name="Reading">What it read.</param>
/// <param name="VerifiedAt">When.</param>
/// <param name="By">Who.</param>
public sealed record VerifyRequest(string? InstrumentId, Measurand Measurand, string? Standard, double Nominal, double Tolerance, double Reading, Instant VerifiedAt, string? By);

/// <summary>A verification.</summary>
/// <param name="Id">Its id.</param>
/// <param name="InstrumentId">The instrument.</param>
/// <param name="Measurand">What the standard stands for.</param>
/// <param name="Unit">Unit of the figures.</param>
/// <param name="Standard">Which standard.</param>
/// <param name="Nominal">What it should have read.</param>
/// <param name="Tolerance">How far it may be off.</param>
/// <param name="Reading">What it read.</param>
/// <param name="VerifiedAt">When.</param>
/// <param name="By">Who.</param>
/// <param name="Word">What it says.</param>
public sealed record VerificationView(
    Guid Id, string InstrumentId, Measurand Measurand, string Unit, string Standard, double Nominal, double Tolerance, double Reading, Instant VerifiedAt, string By, VerificationWord Word);

/// <summary>How an instrument stands for one measurand.</summary>
/// <param name="Measurand">What is tested.</param>
/// <param name="Word">How it stands.</param>
/// <param name="DueAt">When the next verification is due; never while there was none.</param>
public sealed record InstrumentTestView(Measurand Measurand, InstrumentWord Word, Instant DueAt);

/// <summary>An instrument.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">How it tests.</param>
/// <param name="EveryDays">Longest time between two verifications.</param>
/// <param name="Tests">How it stands for each test.</param>
/// <param name="Verifications">The newest, newest first.</param>
public sealed record InstrumentView(string Id, string Name, InstrumentKind Kind, double EveryDays, IReadOnlyList<InstrumentTestView> Tests, IReadOnlyList<VerificationView> Verifications);
