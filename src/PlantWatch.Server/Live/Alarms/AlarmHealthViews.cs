using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The health of the alarms beside the figures of ISA-18.2, IEC 62682 and EEMUA 191, each marked by how it is known.</summary>
/// <remarks>The documents themselves were not seen: chattering and fleeting stand in a published article on them, the other figures were met secondhand or are remembered.</remarks>
internal static class AlarmHealthViews
{
    private const string Published = "published";
    private const string Secondary = "secondary";
    private const string FromMemory = "from_memory";

    public static AlarmHealthView Of(AlarmHealth health, string month, IReadOnlyList<HealthDay> days, IEnumerable<CircuitPlan> plans, Wording words)
    {
        CircuitPlan[] known = [.. plans];
        BusyAlarmView Busy(BusyAlarm b) => new(b.Rule, words.OfRule(b.Rule, "title"), b.Subject, SubjectNames.Of(known, b.Subject, words), b.Count, b.Share);
        return new(
            month, health.From, health.To, health.People, health.Told, health.PerHour, Figures(health, words), days, [.. health.Busiest.Select(Busy)], [.. health.Chattering.Select(Busy)],
            [.. health.Stale.Select(s => new LongAlarmView(s.Rule, words.OfRule(s.Rule, "title"), s.Subject, SubjectNames.Of(known, s.Subject, words), s.From, s.To))], health.Floods);
    }

    internal static HealthFigure[] Figures(AlarmHealth h, Wording words) =>
    [
        One("mean", h.PerTenMinutes, "", Secondary, h.PerTenMinutes <= 1, words),
        One("most", h.MostInTenMinutes, "", FromMemory, h.MostInTenMinutes <= 10, words),
        One("floods", h.Floods.Length, "", "", null, words),
        One("flood_share", 100 * h.FloodShare, "%", Secondary, h.FloodShare < 0.01, words),
        One("standing", h.Standing, "", Secondary, h.Standing < 10, words),
        One("most_standing", h.MostStanding, "", Secondary, h.MostStanding < 10, words),
        One("stale", h.Stale.Length, "", FromMemory, h.Stale.Length < 5, words),
        One("chattering", h.Chattering.Length, "", Published, h.Chattering.IsEmpty, words),
        One("fleeting", h.Fleeting, "", Published, h.Fleeting == 0, words),
        One("busiest_share", h.Told == 0 ? null : 100 * h.BusiestShare, "%", FromMemory, h.BusiestShare <= 0.05, words),
        Share(h, "low", p => p is Priority.Low or Priority.Note, 80, words),
        Share(h, "medium", p => p == Priority.Medium, 15, words),
        Share(h, "high", p => p is Priority.High or Priority.Critical, 5, words),
        One("ack_median", h.AcknowledgedMedian?.TotalMinutes, "min", "", null, words),
        One("ack_ninetieth", h.AcknowledgedNinetieth?.TotalMinutes, "min", "", null, words),
        One("not_acknowledged", h.NotAcknowledged, "", "", null, words),
        One("shelved", h.Shelved, "", "", null, words),
        One("out_of_service", h.OutOfService, "", "", null, words),
    ];

    // A handful of alarms has no distribution: the part is shown beside the figure and not judged.
    private static HealthFigure Share(AlarmHealth h, string key, Func<Priority, bool> counts, double about, Wording words) =>
        One($"share_{key}", h.Told == 0 ? null : 100.0 * h.ByPriority.Where(p => counts(p.Key)).Sum(p => p.Value) / h.Told, "%", about > 0 ? Secondary : "", null, words);

    private static HealthFigure One(string key, double? value, string unit, string provenance, bool? meets, Wording words) =>
        new(key, words.Find($"health.{key}"), value, unit, provenance.Length > 0 ? words.Find($"health.{key}.target") : "", provenance, value is null ? null : meets);
}
