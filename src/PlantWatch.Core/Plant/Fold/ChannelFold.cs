using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A way by which people are told works or does not. The circuit remembers it as an alarm and as nothing else.</summary>
internal static class ChannelFold
{
    public static Outcome Say(Draft draft, ChannelStateSaid said)
    {
        var (key, plan) = (RuleBook.ChannelFails.KeyFor(said.Channel), draft.Plan.Telling.Channels.FirstOrDefault(channel => channel.Id == said.Channel));
        if (plan is null) return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "channel", Reason.Of("channel.unknown", said.Channel));
        draft.Alarms.Look(RuleBook.ChannelFails, key, said.Channel, !said.Delivers, said.At, () => Reason.Of("channel.fails", plan.Name, said.Trouble), renew: true);
        return Outcome.Done.Instance;
    }
}
