using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>Sends a test message at once and says what became of it. It is not written down: who asked for it is looking.</summary>
internal sealed class Tester(Sender sender, Channels channels, TimeProvider clock)
{
    public async Task<TestMessageAnswer> TestAsync(PlantPlan plan, ChannelPlan channel, string by, CancellationToken cancellation)
    {
        var people = channel.SpeaksToPersons ? Asked(plan) : [];
        var failed = "";
        foreach (var person in channel.SpeaksToPersons ? people.Cast<PersonPlan?>() : [null])
        {
            var delivery = await sender.AttemptAsync(channels.Of(channel, plan.Site), new(Of(plan, by), person, null), cancellation);
            if (!delivery.IsDelivered) failed = delivery.Trouble;
        }

        if (channel.SpeaksToPersons && people.Length == 0) failed = "nobody is on call and nobody stands in";
        if (failed.Length == 0) sender.Hurry(channel.Id);
        return new(failed.Length == 0, [.. people.Select(person => person.Name)], failed.Length == 0 ? null : failed);
    }

    // Whoever would be told of an alarm now.
    private PersonPlan[] Asked(PlantPlan plan)
    {
        var ids = new Duty(plan.Telling, plan.Site.TimeZone).At(0, Now);
        return [.. plan.People.Where(person => ids.Contains(person.Id))];
    }

    private Message Of(PlantPlan plan, string by) => new(
        Guid.CreateVersion7(clock.GetUtcNow()), NoticeKind.Raised, Priority.Note, 0, Guid.Empty, "", "test", plan.Site.Name,
        plan.Circuits.IsEmpty ? "" : plan.Circuits[0].Id, plan.Site.Name, null, null,
        Wording.Of(plan.Site).Find("telling.test_title"), Wording.Of(plan.Site).Text(Reason.Of("telling.test_cause", by)), Now, "", "", "", null, null, []);

    private Instant Now => Instant.From(clock.GetUtcNow());
}
