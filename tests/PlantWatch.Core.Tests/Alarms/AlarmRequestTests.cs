using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>What is said to a person whose request about an alarm is turned down: which field, and why.</summary>
public sealed class AlarmRequestTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 5, 5, 8);
    private static readonly Instant Hence = Now + TimeSpan.FromHours(8);
    private static readonly PersonPlan Maintenance = new("m", "M. Invented", PersonRole.Maintenance);

    private static readonly AlarmRecord Gas = new()
    {
        Key = "R-033/acid", Rule = "R-033", Subject = "acid", Priority = Priority.Critical, Cause = Reason.Of("dosing.without_circulation"), Active = true, IsAcknowledged = false,
    };

    private static (string, string)? Said(Objection? objection) => objection is null ? null : (objection.Field, objection.Why.Code);

    [Fact]
    public void The_shelf_wants_a_reason_and_holds_eight_hours_at_most()
    {
        Assert.Null(AlarmRequests.ToShelve(RuleBook.AboveLimit, Now, Hence, "the pump is being changed"));
        Assert.Equal(("why", "field.required"), Said(AlarmRequests.ToShelve(RuleBook.AboveLimit, Now, Hence, " ")));
        Assert.Equal(("minutes", "alarm.shelf_too_long"), Said(AlarmRequests.ToShelve(RuleBook.AboveLimit, Now, Hence + TimeSpan.FromSeconds(1), "why")));
        Assert.Equal(("minutes", "alarm.shelf_too_long"), Said(AlarmRequests.ToShelve(RuleBook.AboveLimit, Now, Now, "why")));
        Assert.Equal(("", "alarm.never_shelved"), Said(AlarmRequests.ToShelve(RuleBook.StopPh, Now, Hence, "why")));
    }

    [Fact]
    public void The_shelf_holds_for_all_of_its_eight_hours_and_one_that_no_shelving_can_have_set_is_none()
    {
        var shelved = Gas with { Rule = "R-011", Priority = Priority.Medium, ShelvedUntil = Hence };
        Assert.Equal(AlarmState.Shelved, AlarmLife.Wait(shelved, RuleBook.AboveLimit, Now).Next.State);
        Assert.Equal(AlarmState.Unacknowledged, AlarmLife.Wait(shelved, RuleBook.AboveLimit, Now - TimeSpan.FromSeconds(1)).Next.State);
    }

    [Theory]
    [InlineData(false, true, true, "bathersOut")]
    [InlineData(true, false, true, "pumpsIsolated")]
    [InlineData(true, true, false, "circulationHeld")]
    public void Of_making_safe_the_act_that_was_not_done_is_named(bool bathers, bool pumps, bool circulation, string field)
    {
        var objection = AlarmRequests.ToMakeSafe(Gas, new(bathers, pumps, circulation))!;
        Assert.Equal((field, false), (objection.Field, objection.IsOfState));
        Assert.Null(AlarmRequests.ToMakeSafe(Gas, new(true, true, true)));
    }

    [Fact]
    public void Out_of_service_wants_a_reason_a_time_ahead_and_a_person_who_may()
    {
        Assert.Null(AlarmRequests.ToTakeOut(RuleBook.AboveLimit, [Maintenance], Now, Hence, "M. Invented", "cell away"));
        Assert.Null(AlarmRequests.ToTakeOut(RuleBook.AboveLimit, [Maintenance], Now, Instant.Never, "M. Invented", "cell away"));
        Assert.Equal(("why", "field.required"), Said(AlarmRequests.ToTakeOut(RuleBook.AboveLimit, [Maintenance], Now, Hence, "M. Invented", "")));
        Assert.Equal(("until", "alarm.until_past"), Said(AlarmRequests.ToTakeOut(RuleBook.AboveLimit, [Maintenance], Now, Now, "M. Invented", "cell away")));
        Assert.Equal(("by", "field.required"), Said(AlarmRequests.ToReturn([Maintenance], " ")));
        Assert.Equal(("by", "alarm.needs_maintenance"), Said(AlarmRequests.ToReturn([Maintenance], "O. Invented")));
    }
}
