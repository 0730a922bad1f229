using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>The figures of a story in sentences: who stands how far from whom.</summary>
internal static class StoryFigures
{
    /// <summary>True when a test and a probe, or two probes, could be held against each other.</summary>
    public static bool Compared(ImmutableArray<Witness> witnesses) =>
        (Has(witnesses, StoryPart.PhTest) && Has(witnesses, StoryPart.PhProbe)) || (Has(witnesses, StoryPart.ChlorineTest) && Has(witnesses, StoryPart.ChlorineProbe))
        || (Has(witnesses, StoryPart.OrpProbe) && (Has(witnesses, StoryPart.ChlorineTest) || Has(witnesses, StoryPart.ChlorineProbe)));

    /// <summary>The sentences, each with what that witness adds to the odds that the lead is wrong.</summary>
    public static List<StorySign> Of(StoryInput input, ImmutableArray<Witness> witnesses, StoryPart lead, Func<StoryPart, double> contribution)
    {
        List<StorySign> said = [];
        if (Find(witnesses, StoryPart.PhTest) is { } ph && Find(witnesses, StoryPart.PhProbe) is { } phProbe)
            said.Add(new(lead, Weight(lead, StoryPart.PhTest, StoryPart.PhProbe, contribution), Ph(ph, phProbe)));
        if (Find(witnesses, StoryPart.ChlorineTest) is { } cl && Find(witnesses, StoryPart.ChlorineProbe) is { } clProbe)
            said.Add(new(lead, Weight(lead, StoryPart.ChlorineTest, StoryPart.ChlorineProbe, contribution), Chlorine(input, cl, clProbe)));
        if (Find(witnesses, StoryPart.OrpProbe) is { } orp && Orp(witnesses, orp) is { } line)
            said.Add(new(lead, lead is StoryPart.None or StoryPart.OrpProbe ? 1 : contribution(StoryPart.OrpProbe), line));
        else if (input.Probe(Measurand.Orp) is { Trust.Line: null, Read.IsKnown: true }) said.Add(new(StoryPart.None, 1, Reason.Of("story.orp_has_no_line")));
        return said;
    }

    // Whoever stands against the lead speaks; of a quarrel that the lead is no part of, nothing is added.
    private static double Weight(StoryPart lead, StoryPart test, StoryPart probe, Func<StoryPart, double> contribution) =>
        lead == test ? contribution(probe) : lead == probe ? contribution(test) : 1;

    private static Reason Ph(Witness test, Witness probe)
    {
        var (apart, u) = (probe.Says - test.Says, 2 * Root(test.Sound, probe.Sound));
        return Math.Abs(apart) <= u ? Reason.Of("story.ph_agree", apart, u, "pH") : Reason.Of("story.ph_apart", probe.Says, test.Says, apart, u, "pH");
    }

    // As they were read: a witness of none is heard as one of very little.
    private static Reason Chlorine(StoryInput input, Witness test, Witness probe)
    {
        var (a, b) = (Math.Pow(10, probe.Says), input.Test(Measurand.FreeChlorine)?.Result.Value ?? 0);
        return Math.Abs(probe.Says - test.Says) <= 2 * Root(test.Sound, probe.Sound) ? Reason.Of("story.chlorine_agree", a, b, "mg/L") : Reason.Of("story.chlorine_apart", a, b, "mg/L");
    }

    // What the pool's own line leaves over, with the tested pH and with the probe's, at the chlorine of the test.
    private static Reason? Orp(ImmutableArray<Witness> witnesses, Witness orp)
    {
        if ((Find(witnesses, StoryPart.ChlorineTest) ?? Find(witnesses, StoryPart.ChlorineProbe)) is not { } chlorine) return null;
        var (test, probe) = (Find(witnesses, StoryPart.PhTest), Find(witnesses, StoryPart.PhProbe));
        var u = 2 * Root(orp.Sound, orp.PerDecade * chlorine.Sound);
        double Left(Witness ph) => orp.Says - (orp.PerPh * ph.Says) - (orp.PerDecade * chlorine.Says);
        if (test is not { } t || probe is not { } p) return (test ?? probe) is { } only ? Alone(Left(only), u) : null;
        var (byTest, byProbe) = (Left(t), Left(p));
        if (Math.Abs(byTest) <= u && Math.Abs(byProbe) <= u)
            return Math.Abs(byTest - byProbe) < u / 4 ? Alone(byTest, u) : Reason.Of("story.orp_fits_both", byProbe, byTest, u, "mV");
        if (Math.Abs(byTest) > u && Math.Abs(byProbe) > u) return Math.Abs(byTest - byProbe) < u / 4 ? Alone(byTest, u) : Reason.Of("story.orp_fits_neither", byProbe, byTest, u, "mV");
        return Math.Abs(byProbe) <= u ? Reason.Of("story.orp_fits_the_probe", byProbe, byTest, u, "mV") : Reason.Of("story.orp_fits_the_test", byTest, byProbe, u, "mV");
    }

    private static Reason Alone(double left, double u) => Math.Abs(left) <= u ? Reason.Of("story.orp_on_its_line", left, u, "mV") : Reason.Of("story.orp_off_its_line", left, u, "mV");

    private static bool Has(ImmutableArray<Witness> witnesses, StoryPart part) => Find(witnesses, part) is not null;

    private static Witness? Find(ImmutableArray<Witness> witnesses, StoryPart part)
    {
        foreach (var witness in witnesses)
            if (witness.Part == part) return witness;
        return null;
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
