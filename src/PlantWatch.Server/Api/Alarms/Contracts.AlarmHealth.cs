using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/alarm-health?month=YYYY-MM&people= : AlarmHealthView

/// <summary>A month of alarms, each figure beside the figure of the standard.</summary>
/// <param name="Month">YYYY-MM on the site's clock.</param>
/// <param name="From">Start, included: of the month, or of the record where that began later.</param>
/// <param name="To">End, excluded: the present in the running month.</param>
/// <param name="People">People on duty at a time.</param>
/// <param name="Told">How often somebody was called.</param>
/// <param name="PerHour">A person's mean in an hour of the time that was observed, from From to To.</param>
/// <param name="Figures">The figures, in the order in which they are shown.</param>
/// <param name="Days">What was told day by day.</param>
/// <param name="Busiest">The ten busiest.</param>
/// <param name="Chattering">Which chattered, with the count of the worst minute.</param>
/// <param name="Stale">Which stood over a day.</param>
/// <param name="Floods">When more was told than a person can take in.</param>
public sealed record AlarmHealthView(
    string Month, Instant From, Instant To, double People, int Told, double PerHour, IReadOnlyList<HealthFigure> Figures, IReadOnlyList<HealthDay> Days, IReadOnlyList<BusyAlarmView> Busiest,
    IReadOnlyList<BusyAlarmView> Chattering, IReadOnlyList<LongAlarmView> Stale, IReadOnlyList<Flood> Floods);

/// <summary>One figure.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Name">In words.</param>
/// <param name="Value">The value; null when there is none to give.</param>
/// <param name="Unit">Its unit, or empty.</param>
/// <param name="Target">The figure of the standard in words; empty when it has none.</param>
/// <param name="Provenance">published, secondary, from_memory, or empty without a target.</param>
/// <param name="Meets">It meets the target; null without a target or a value.</param>
public sealed record HealthFigure(string Key, string Name, double? Value, string Unit, string Target, string Provenance, bool? Meets);

/// <summary>A day on the site's clock.</summary>
/// <param name="From">Its start.</param>
/// <param name="Count">What was told.</param>
public sealed record HealthDay(Instant From, int Count);

/// <summary>A busy alarm.</summary>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Title">The rule in words.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="SubjectName">In words.</param>
/// <param name="Count">How often.</param>
/// <param name="Share">Its part of all, 0 to 1.</param>
public sealed record BusyAlarmView(string Rule, string Title, string Subject, string SubjectName, int Count, double Share);

/// <summary>An alarm that stood long.</summary>
public sealed record LongAlarmView(string Rule, string Title, string Subject, string SubjectName, Instant From, Instant To);
