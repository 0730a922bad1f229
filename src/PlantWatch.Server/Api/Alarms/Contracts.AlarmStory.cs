using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/alarms/{id} : AlarmStory, of an alarm that stands and of one of the record

/// <summary>One alarm with all that is known of it.</summary>
/// <param name="Alarm">As it stands now; of one that is over, as the record saw it last.</param>
/// <param name="Live">It is among the alarms of now.</param>
/// <param name="SubjectName">What people call the thing it is about.</param>
/// <param name="NewerId">The alarm of the same rule and subject that stands now instead of this one; null when there is none.</param>
/// <param name="Sentence">When its rule holds.</param>
/// <param name="UsualCause">What usually lies behind it.</param>
/// <param name="Clears">By what it clears.</param>
/// <param name="Strip">What to draw beside it; null when nothing of it is a series.</param>
/// <param name="Cause">The alarm it follows from, live; null when it stands for itself.</param>
/// <param name="Consequences">Live alarms that follow from it, first out first.</param>
/// <param name="Changes">What happened to it, oldest first, with who and why.</param>
/// <param name="Earlier">When the same rule rang for the same thing in the 30 days before, newest first.</param>
public sealed record AlarmStory(
    AlarmView Alarm, bool Live, string SubjectName, Guid? NewerId, string Sentence, string UsualCause, string Clears, AlarmStrip? Strip,
    AlarmView? Cause, IReadOnlyList<AlarmView> Consequences, IReadOnlyList<AlarmChangeView> Changes, IReadOnlyList<EarlierAlarm> Earlier);

/// <summary>What to draw beside an alarm.</summary>
/// <param name="ProbeId">The probe; null when only tests by hand measure it.</param>
/// <param name="PoolId">The pool whose tests stand on it; null for what all pools share.</param>
/// <param name="Measurand">What it measures.</param>
/// <param name="Low">The low limit that was crossed, in the measurand's unit; null when it was the other end or none.</param>
/// <param name="High">The high limit that was crossed.</param>
public sealed record AlarmStrip(string? ProbeId, string? PoolId, Measurand Measurand, double? Low, double? High);

/// <summary>An earlier time that it rang.</summary>
/// <param name="Id">That alarm.</param>
/// <param name="RaisedAt">When.</param>
/// <param name="Cause">Its cause, in words.</param>
public sealed record EarlierAlarm(Guid Id, Instant RaisedAt, string Cause);
