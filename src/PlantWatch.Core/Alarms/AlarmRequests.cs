using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Alarms;

/// <summary>Why a request about an alarm is turned down.</summary>
/// <param name="Field">Field of the request that is at fault; empty when none is.</param>
/// <param name="Why">In words.</param>
/// <param name="IsOfState">The request is well formed, and the rule or the state of the alarm does not allow it.</param>
public sealed record Objection(string Field, Reason Why, bool IsOfState);

/// <summary>What people may do with an alarm. Null is yes.</summary>
public static class AlarmRequests
{
    /// <summary>Shelving: with a reason, for a time, and never what is about people's safety.</summary>
    public static Objection? ToShelve(Rule rule, Instant at, Instant until, string? why)
    {
        ArgumentNullException.ThrowIfNull(rule);
        if (!rule.Shelvable) return OfState("", Reason.Of("alarm.never_shelved", rule.Number));
        if (string.IsNullOrWhiteSpace(why)) return OfField("why", Reason.Of("field.required"));
        return until <= at || until - at > AlarmLife.LongestShelf ? OfField("minutes", Reason.Of("alarm.shelf_too_long", AlarmLife.LongestShelf.TotalHours)) : null;
    }

    /// <summary>A latch is reset when what set it is gone and somebody has seen it.</summary>
    public static Objection? ToReset(AlarmRecord alarm)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        if (!alarm.LatchHeld) return OfState("", Reason.Of("alarm.not_latched"));
        if (alarm.Active) return OfState("", Reason.Of("alarm.still_active"));
        if (alarm.MadeSafe is null && MustBeMadeSafe(alarm)) return OfState("", Reason.Of("alarm.make_safe_first"));
        return alarm.IsAcknowledged ? null : OfState("", Reason.Of("alarm.acknowledge_first"));
    }

    /// <summary>Making safe is recorded as a whole: each of its acts was done. Pipes that were dosed into and a tank with a wrong product ask for different ones.</summary>
    public static Objection? ToMakeSafe(AlarmRecord alarm, SafeActs acts)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        ArgumentNullException.ThrowIfNull(acts);
        if (!MustBeMadeSafe(alarm)) return OfState("", Reason.Of("alarm.nothing_to_make_safe", alarm.Rule));
        return RuleBook.All[alarm.Rule].OfOneTank ? OfTank(acts) : OfPipes(acts);
    }

    private static Objection? OfPipes(SafeActs acts)
    {
        if (!acts.BathersOut) return OfField("bathersOut", Reason.Of("alarm.bathers_out_first"));
        if (!acts.PumpsIsolated) return OfField("pumpsIsolated", Reason.Of("alarm.isolate_pumps_first"));
        return acts.CirculationHeld ? null : OfField("circulationHeld", Reason.Of("alarm.hold_circulation"));
    }

    private static Objection? OfTank(SafeActs acts)
    {
        if (!acts.RoomLeft) return OfField("roomLeft", Reason.Of("alarm.leave_room_first"));
        if (!acts.PumpsIsolated) return OfField("pumpsIsolated", Reason.Of("alarm.isolate_tank_pump_first"));
        return acts.TankDealtWith ? null : OfField("tankDealtWith", Reason.Of("alarm.deal_with_tank"));
    }

    private static bool MustBeMadeSafe(AlarmRecord alarm) => RuleBook.All.TryGetValue(alarm.Rule, out var rule) && rule.MustBeMadeSafe;

    /// <summary>Out of service: with a reason, for a time that lies ahead where one is given, by maintenance or above where the plan names its people, and never what is about people's safety.</summary>
    public static Objection? ToTakeOut(Rule rule, ImmutableArray<PersonPlan> people, Instant at, Instant until, string? by, string? why)
    {
        ArgumentNullException.ThrowIfNull(rule);
        if (!rule.MayLeaveService) return OfState("", Reason.Of("alarm.never_out_of_service", rule.Number));
        if (string.IsNullOrWhiteSpace(why)) return OfField("why", Reason.Of("field.required"));
        if (until.IsSet && until <= at) return OfField("until", Reason.Of("alarm.until_past"));
        return ToReturn(people, by);
    }

    /// <summary>Back to service: by those who may take it out.</summary>
    public static Objection? ToReturn(ImmutableArray<PersonPlan> people, string? by)
    {
        if (string.IsNullOrWhiteSpace(by)) return OfField("by", Reason.Of("field.required"));
        return people.IsDefaultOrEmpty || people.Named(by) is { Role: >= PersonRole.Maintenance } ? null : OfState("by", Reason.Of("alarm.needs_maintenance", by.Trim()));
    }

    private static Objection OfField(string field, Reason why) => new(field, why, IsOfState: false);

    private static Objection OfState(string field, Reason why) => new(field, why, IsOfState: true);
}
