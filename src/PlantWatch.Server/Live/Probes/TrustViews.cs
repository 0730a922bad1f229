using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The story of a pool in words.</summary>
internal static class TrustViews
{
    public static TrustStoryView Of(CircuitState state, PoolPlan plan, Instant now, ManualCheck? check, ImmutableArray<Judgement> judgements, Wording words)
    {
        var input = PoolStories.Of(state, plan, now, check, judgements);
        var story = TrustStory.Tell(input);
        var wanted = Wanted(state, plan);
        return new(
            plan.Id, input.CheckId == Guid.Empty ? null : input.CheckId, input.SampledAt.OrNull(), story.Answer, story.Part, story.ProbeId, story.Probability, story.Odds, story.Weight,
            words.Say(story.Says), [.. story.Explanations.Select(e => new ExplanationView(e.Part, e.Probability))],
            [.. story.Signs.Select(s => new SignView(s.Part, s.Ratio, words.Say(s.What)))],
            [.. story.Steps.Select(s => new StepView(s.Act, s.Part, s.ProbeId, s.Minutes, s.Settles, words.Say(s.What)))],
            [.. story.Plausible.Select(p => new PlausibleView(p.Measurand, p.Low, p.High))],
            [.. input.Probes.Select(p => Side(p, judgements.FirstOrDefault(j => j.ProbeId == p.Plan.Id)))],
            wanted?.By, wanted is null ? null : words.Say(wanted.Why));
    }

    private static WantedTest? Wanted(CircuitState state, PoolPlan plan)
    {
        var pool = state.Pools.Select(p => p.Id).ToList().IndexOf(plan.Id);
        return new[] { Measurand.Ph, Measurand.FreeChlorine }.Select(m => WantedTests.Of(state, pool, m)).Where(w => w is not null).OrderBy(w => w!.By).FirstOrDefault();
    }

    private static SideView Side(StoryProbe probe, Judgement? said)
    {
        // A bias of an ORP line is a residual and no correction of the water.
        var believed = probe.Plan.Measurand != Measurand.Orp && probe.Read.IsKnown && probe.Trust.Bias.IsKnown
            ? new WithU(probe.Read.Value - probe.Trust.Bias.Value, probe.Trust.Bias.Expanded) : null;
        return new(
            probe.Plan.Id, probe.Panel, probe.Received.OrNull(), probe.Read.OrNull(), said?.Test.OrNull(), believed,
            probe.Plan.Origin == SignalOrigin.PanelScaled && probe.Panel is { } panel && PanelStory.Differs(probe.Plan.Measurand, panel, probe.Received));
    }
}
