using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Alarms.Health;

/// <summary>One change of one alarm, as the record tells it.</summary>
/// <param name="At">When.</param>
/// <param name="Key">Rule and subject: what it watches.</param>
/// <param name="Rule">Number of the rule.</param>
/// <param name="Subject">What it is about.</param>
/// <param name="Priority">Its priority.</param>
/// <param name="Change">What happened.</param>
/// <param name="State">The state after it.</param>
/// <param name="Grouped">It stands as the consequence of another alarm, and makes no sound of its own.</param>
public readonly record struct AlarmHappening(Instant At, string Key, string Rule, string Subject, Priority Priority, AlarmChange Change, AlarmState State, bool Grouped)
{
    /// <summary>The change as it stands in the record.</summary>
    public static AlarmHappening Of(Instant at, AlarmRecord alarm, AlarmChange change)
    {
        ArgumentNullException.ThrowIfNull(alarm);
        return new(at, alarm.Key, alarm.Rule, alarm.Subject, alarm.Priority, change, alarm.State, alarm.ConsequenceOf is not null);
    }

    /// <summary>A person is called: raised, standing still and told anew, or off the shelf or out of suppression while it stands. What is shelved, suppressed, out of service or under its cause calls nobody.</summary>
    public bool Annunciates =>
        !Grouped && Change is AlarmChange.Raised or AlarmChange.ReAlarmed or AlarmChange.Unshelved or AlarmChange.Released or AlarmChange.ReturnedToService
        && State is AlarmState.Unacknowledged;

    /// <summary>Its condition holds after this change, whether anybody is told or not.</summary>
    public bool? Stands => Change switch
    {
        AlarmChange.Raised or AlarmChange.ReAlarmed => true,
        AlarmChange.Cleared or AlarmChange.Retired => false,
        _ => null,
    };
}
