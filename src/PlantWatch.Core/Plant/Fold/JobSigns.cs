using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Which alarms speak of the fault that a job is about, and what they say now.</summary>
internal static class JobSigns
{
    // Of the families of probes, pumps and circulation these speak of the stock, of another thing, or of the calendar.
    private static readonly string[] NoDefect = [RuleBook.TankLow.Number, RuleBook.PumpsFollowWrongValue.Number, RuleBook.BackwashOverdue.Number];

    /// <summary>Keys of the alarms that stand now: the one that the job answers, and those on a defect of its thing.</summary>
    public static IEnumerable<string> Of(Draft draft, Job job) =>
        draft.Alarms.All.Where(a => a.Active && (a.Id == job.AlarmId || (a.Subject == job.Asset && IsDefect(a.Rule)))).Select(a => a.Key);

    public static Hearing Hear(Draft draft, JobWatch watch)
    {
        var deaf = !CouldSpeak(draft, watch);
        foreach (var key in watch.Signs)
        {
            if (draft.Alarms.Find(key) is not { } alarm) continue;
            if (alarm.OutOfService || alarm.Suppressed) deaf = true;
            else if (alarm.Active) return Hearing.Speaks;
        }

        return deaf ? Hearing.Deaf : Hearing.Quiet;
    }

    // R-02x speak of probes, R-03x of pumps, R-05x of circulation and filters.
    private static bool IsDefect(string rule) => (rule[..4] is "R-02" or "R-03" or "R-05") && !NoDefect.Contains(rule);

    // A pump that has not run since proves nothing, and neither does a probe that has not been heard.
    private static bool CouldSpeak(Draft draft, JobWatch watch)
    {
        if (draft.Index.Pump(watch.Job.Asset) is >= 0 and var pump)
            return draft.Pumps[pump] is var p && p.HeardAt > watch.DoneAt && (p.Activity == PumpActivity.Running || p.Since > watch.DoneAt);
        if (draft.Index.Probe(watch.Job.Asset) is >= 0 and var probe)
            return draft.Probes[probe].Last.ReceivedAt > watch.DoneAt && !draft.Alarms.IsActive(draft.Index.SilentKeys[probe]);
        return true;
    }
}
