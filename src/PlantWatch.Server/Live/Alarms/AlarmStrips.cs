using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>What to draw beside an alarm: the series it is about and the limit it went over, read from its cause.</summary>
internal static class AlarmStrips
{
    /// <summary>The strip; null when nothing of the alarm is a series.</summary>
    public static AlarmStrip? Of(CircuitPlan plan, AlarmRecord alarm)
    {
        var (low, high) = Limit(alarm.Cause);
        if (plan.Probes.FirstOrDefault(p => p.Id == alarm.Subject || (p.FilterId is { } filter && filter == alarm.Subject)) is { } probe)
            return new(probe.Id, probe.PoolId, probe.Measurand, low, high);
        if (alarm.Subject.Split('/') is not [var pool, var key] || Measured(key) is not { } measurand) return null;
        var beside = plan.Probes.FirstOrDefault(p => p.Measurand == measurand && (p.PoolId ?? pool) == pool);
        return new(beside?.Id, pool, measurand, low, high);
    }

    // A sentence with a limit names it at the same place in all its kinds: name, reading, limit; or pool, measurand, result, limit.
    private static (double? Low, double? High) Limit(Reason cause)
    {
        var (at, isLow) = cause.Code switch
        {
            "limit.below" or "limit.below_stop" or "limit.below_closure" => (2, true),
            "limit.above" or "limit.above_stop" or "limit.above_closure" => (2, false),
            "test.below_limit" or "test.below_stop" or "test.below_closure" or "test.at_low_limit" => (3, true),
            "test.above_limit" or "test.above_stop" or "test.above_closure" or "test.at_high_limit" => (3, false),
            "trend.heads_low" => (1, true),
            "trend.heads_high" => (1, false),
            _ => (-1, false),
        };
        var limit = at >= 0 && at < cause.Facts.Length ? cause.Facts[at].Number : null;
        return isLow ? (limit, null) : (null, limit);
    }

    private static Measurand? Measured(string key) => Enum.GetValues<Measurand>().Where(m => m != Measurand.None && m.Key() == key).Select(m => (Measurand?)m).FirstOrDefault();
}
