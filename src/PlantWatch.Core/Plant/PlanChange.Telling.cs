using System.Collections.Immutable;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    // The people of the plant are told of every circuit in the same way, so each says it.
    private static void Telling(string circuit, TellingPlan old, TellingPlan next, ImmutableArray<Reason>.Builder effects)
    {
        foreach (var (before, now) in PlanLineage.Pair(old.Channels, next.Channels, channel => channel.Id, _ => null))
            if (before is null) effects.Add(Reason.Of("plan.channel_added", circuit, now!.Id, now.Name));
            else if (now is null) effects.Add(Reason.Of("plan.channel_removed", circuit, before.Id, before.Name));
            else if (before != now) effects.Add(Reason.Of("plan.channel_changed", circuit, now.Id, now.Name));
        if (!Bytes(old.Roster).AsSpan().SequenceEqual(Bytes(next.Roster))) effects.Add(Reason.Of("plan.roster_changed", circuit));
        if (old.Quiet != next.Quiet) effects.Add(Reason.Of(next.Quiet is null ? "plan.quiet_hours_gone" : "plan.quiet_hours_changed", circuit, Hour(next.Quiet?.From), Hour(next.Quiet?.To)));
        if (!Bytes(old.Sheets).AsSpan().SequenceEqual(Bytes(next.Sheets))) effects.Add(Reason.Of("plan.sheets_changed", circuit));
        if (!old.Escalation.AsSpan().SequenceEqual(next.Escalation.AsSpan())) effects.Add(Reason.Of("plan.escalation_changed", circuit));
    }

    private static Fact Hour(TimeOnly? time) => Name(time?.ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture));
}
