using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/pumps/{id}?hours=24 : a dosing pump by what the water does, with its past on one axis

/// <summary>A dosing pump by what the water does.</summary>
/// <param name="Id">Id of the plant file.</param>
/// <param name="Lacks">Why it is not supervised by the water; empty when it is.</param>
/// <param name="Insight">What was learned of it; null while nothing was.</param>
/// <param name="Verdicts">What stands, newest first; empty while it does what its strokes say, as far as that is known.</param>
/// <param name="TodayLitres">What it was driven to deliver today; null where its rate is not known.</param>
/// <param name="DailyLimitLitres">The most that is plausible in a day; null when nobody said.</param>
/// <param name="TankFellLitres">By how much its tank fell over the span shown, refills left out; null where it is not measured.</param>
/// <param name="DrivenLitres">What it was driven to deliver over the span shown; null where that is not known.</param>
/// <param name="Course">Its past.</param>
/// <param name="Marks">Alarms and jobs in that span.</param>
public sealed record PumpPage(
    string Id, IReadOnlyList<Said> Lacks, PumpInsightView? Insight, IReadOnlyList<PumpVerdictView> Verdicts, double? TodayLitres, double? DailyLimitLitres, double? TankFellLitres, double? DrivenLitres,
    PumpCourseView Course, IReadOnlyList<PumpMark> Marks);

/// <summary>What was learned of a pump.</summary>
/// <param name="Since">Since when.</param>
/// <param name="DaysLearned">Days of every hour.</param>
/// <param name="DaysWanted">Days before the water judges it.</param>
/// <param name="LagMinutes">Minutes from stroke to probe.</param>
/// <param name="FullLitresPerHour">What it is driven to when it runs flat out; null until it was seen to.</param>
/// <param name="Suspicion">How likely the likeliest trouble is, from 0 to 1.</param>
public sealed record PumpInsightView(Instant Since, double DaysLearned, double DaysWanted, double LagMinutes, double? FullLitresPerHour, double Suspicion);

/// <summary>A trouble that stands.</summary>
/// <param name="Trouble">Which.</param>
/// <param name="Text">In words.</param>
/// <param name="SaidAt">When it was said.</param>
/// <param name="Since">From when it seems to hold; null where its samples say it.</param>
/// <param name="Litres">Litres that are missing by now, or came unasked when negative; null likewise.</param>
/// <param name="Expected">By how much pH, or the chlorine controller's asking in mg/L of free chlorine, should have moved; null likewise.</param>
/// <param name="Observed">By how much it moved.</param>
/// <param name="Certainty">From 0 to 1; null where its samples say it.</param>
/// <param name="AlarmId">Its alarm; null when it has none.</param>
/// <param name="Action">What to do, of its rule.</param>
public sealed record PumpVerdictView(
    string Trouble, string Text, Instant? SaidAt, Instant? Since, double? Litres, double? Expected, double? Observed, double? Certainty, Guid? AlarmId, Priority Priority, string Action);

/// <summary>A pump's past in spans of five minutes.</summary>
/// <param name="T">Start of each span, Unix milliseconds.</param>
/// <param name="Driven">What it was driven to, L/h; null where it is not known.</param>
/// <param name="Usual">What the pool usually asks of the chlorine pump at that hour, L/h; null while nothing was learned, and for acid, which is asked for by how much chlorine is dosed.</param>
/// <param name="ProbeId">The probe of the value its controller holds; null when there is none.</param>
/// <param name="Seen">That value as it was seen.</param>
/// <param name="Expected">The same as the strokes should have made it; null where that is not known.</param>
/// <param name="Tank">Content of its tank in L.</param>
public sealed record PumpCourseView(
    IReadOnlyList<long> T, IReadOnlyList<double?> Driven, IReadOnlyList<double?>? Usual, string? ProbeId, IReadOnlyList<double?> Seen, IReadOnlyList<double?>? Expected, IReadOnlyList<double?>? Tank);

/// <summary>Something on the time axis.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">alarm, cleared or job.</param>
/// <param name="Text">In words.</param>
public sealed record PumpMark(Instant At, string Kind, string Text);
