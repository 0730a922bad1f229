using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/rules : RuleView[] in the order of docs/rules.md, whose words they are

/// <summary>A rule, as docs/rules.md says it, with what it did here lately.</summary>
/// <param name="Number">Number, such as R-010.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Sentence">When it holds.</param>
/// <param name="Cause">What usually lies behind it.</param>
/// <param name="Consequence">What follows if nothing is done.</param>
/// <param name="Action">What to do.</param>
/// <param name="TimeToRespond">How long there is.</param>
/// <param name="Priority">By severity and time to respond.</param>
/// <param name="OnDelay">How long its condition must hold, in words.</param>
/// <param name="OffDelay">How long it must be gone, in words.</param>
/// <param name="Deadband">How far a value must come back, in words.</param>
/// <param name="Suppressed">What suppresses it by design.</param>
/// <param name="Clears">By what it clears.</param>
/// <param name="Provenance">How it is known.</param>
/// <param name="Latches">It stays until a person resets it.</param>
/// <param name="Shelvable">A person may shelve it.</param>
/// <param name="MayLeaveService">A person may take it out of service.</param>
/// <param name="ReAlarmMinutes">After how many minutes it speaks again while it stands; null when it never does.</param>
/// <param name="Rang">How often it called somebody in the last 30 days.</param>
/// <param name="LastRang">When it did last, in these days.</param>
/// <param name="Standing">How many of its alarms stand now.</param>
/// <param name="Subjects">What it can be about here; empty for what cannot leave service.</param>
/// <param name="OutOfService">What is out of service now.</param>
public sealed record RuleView(
    string Number, string Title, string Sentence, string Cause, string Consequence, string Action, string TimeToRespond, Priority Priority,
    string OnDelay, string OffDelay, string Deadband, string Suppressed, string Clears, string Provenance,
    bool Latches, bool Shelvable, bool MayLeaveService, double? ReAlarmMinutes, int Rang, Instant? LastRang, int Standing,
    IReadOnlyList<SubjectView> Subjects, IReadOnlyList<OutOfServiceView> OutOfService);

/// <summary>What an alarm can be about.</summary>
/// <param name="Subject">Pool, probe, pump, filter, or test as pool/quantity.</param>
/// <param name="Name">What people call it.</param>
public sealed record SubjectView(string Subject, string Name);

/// <summary>An alarm that a person took out of service.</summary>
/// <param name="Id">The alarm.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Name">What people call it.</param>
/// <param name="By">Who took it out.</param>
/// <param name="At">When.</param>
/// <param name="Why">Why.</param>
/// <param name="Until">It returns by itself then; null when a person is to return it.</param>
public sealed record OutOfServiceView(Guid Id, string Subject, string Name, string? By, Instant? At, string? Why, Instant? Until);
