using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>A judgement with the sample time of its check.</summary>
internal readonly record struct Judged(Judgement Judgement, Instant SampledAt);

/// <summary>A judgement in words.</summary>
internal static class JudgementViews
{
    public static JudgementView Of(Judged judged) => Of(judged.Judgement, judged.SampledAt);

    public static JudgementView Of(Judgement j, Instant sampledAt) => new(
        j.CheckId, j.ProbeId, j.Measurand, j.Verdict, j.Probe.OrNull(), j.Test.OrNull(), Difference(j), j.Bias.OrNull(), j.Standing,
        Reader.Words.Say(j.Reasons), sampledAt);

    private static WithU? Difference(Judgement j) => j.Probe.IsKnown && j.Test.IsKnown
        ? new WithU(j.Probe.Value - j.Test.Value, 2 * Math.Sqrt((j.Probe.StandardUncertainty * j.Probe.StandardUncertainty) + (j.Test.StandardUncertainty * j.Test.StandardUncertainty)))
        : null;
}
