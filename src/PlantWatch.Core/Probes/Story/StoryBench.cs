using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Probes;

/// <summary>Calls the witnesses: what each says of pH and chlorine, how sure it is while sound, and how far off it may be when not.</summary>
internal sealed class StoryBench
{
    // How far a spoilt test or a faulty probe may be off, as standard deviations (common practice): a wrong phenol red test by some tenths,
    // a bleached DPD test by a decade, a probe by what a fault does before somebody sees it.
    private const double PhOff = 0.6;
    private const double ChlorineTestOff = 0.8;
    private const double ChlorineProbeOff = 0.4;
    private const double OrpOff = 80;

    // Nil by DPD, and every witness of less: below this nobody can tell, so all that say so say the same, give or take a factor of two.
    private const double LeastChlorine = 0.05;
    private const double WidestLog = 0.25;

    // What a sample from the pool may differ from the water in the cell, and what a dose that is still mixing makes of it.
    private const double MixingPh = 0.03;
    private const double MixingLog = 0.03;
    private const double UnmixedPh = 0.2;
    private const double UnmixedLog = 0.2;

    private readonly StoryInput _input;
    private readonly ImmutableArray<Witness>.Builder _called = ImmutableArray.CreateBuilder<Witness>(5);

    private StoryBench(StoryInput input) => _input = input;

    /// <summary>The witnesses of a story.</summary>
    public static ImmutableArray<Witness> Call(StoryInput input)
    {
        var bench = new StoryBench(input);
        bench.Tests();
        bench.PhProbe();
        bench.ChlorineProbe();
        bench.Orp();
        return bench._called.ToImmutable();
    }

    /// <summary>True while the newest dose had not mixed when the sample was taken.</summary>
    public static bool IsUnmixed(StoryInput input) => input.MixedAt.IsSet && input.SampledAt.IsSet && input.SampledAt < input.MixedAt;

    private void Tests()
    {
        if (TestOf(Measurand.Ph) is { IsKnown: true } ph)
            _called.Add(new(StoryPart.PhTest, ph.Value, 1, 0, Root(ph.StandardUncertainty, IsUnmixed(_input) ? UnmixedPh : _input.Point == SamplePoint.Cell ? 0 : MixingPh), PhTestOff()));
        if (TestOf(Measurand.FreeChlorine) is not { IsKnown: true } free) return;
        var (log, u) = Logarithm(free);
        _called.Add(new(StoryPart.ChlorineTest, log, 0, 1, Root(u, IsUnmixed(_input) ? UnmixedLog : _input.Point == SamplePoint.Cell ? 0 : MixingLog), ChlorineTestOff));
    }

    // A lot that is known to be off is off by what is known of it, and not by just anything.
    private double PhTestOff() => _input.LotOff(Measurand.Ph) is { Off: var off } ? Root(off.Value, off.StandardUncertainty) : PhOff;

    private void PhProbe()
    {
        if (_input.Probe(Measurand.Ph) is not { Read.IsKnown: true } probe) return;
        var said = Unbiased(probe);
        _called.Add(new(StoryPart.PhProbe, said.Value, 1, 0, said.StandardUncertainty, PhOff));
    }

    private void ChlorineProbe()
    {
        if (_input.Probe(Measurand.FreeChlorine) is not { Read.IsKnown: true } probe) return;
        var (log, u) = Logarithm(Unbiased(probe));
        _called.Add(new(StoryPart.ChlorineProbe, log, 0, 1, u, ChlorineProbeOff));
    }

    // The line is linear in log10[HOCl]; its share of free chlorine is taken along the straight between the two pH that stand against each other.
    private void Orp()
    {
        if (_input.Probe(Measurand.Orp) is not { Read.IsKnown: true, Trust.Line: { } line } probe) return;
        if (Shares() is not var (at, share, perPh)) return;
        var said = Unbiased(probe);
        var constant = line.Level.Value + (line.Slope.Value * (share - (perPh * at) - line.Reference));
        var away = Math.Abs(Chlorine() + share - line.Reference);
        var u = Root(said.StandardUncertainty, Root(line.Level.StandardUncertainty, line.Slope.StandardUncertainty * away));
        var (perDecade, says) = (line.Slope.Value, said.Value - constant);
        // An electrode in water without chlorine goes anywhere below its line; it is heard as one more that finds none.
        var least = (perDecade * perPh * at) + (perDecade * Math.Log10(LeastChlorine));
        _called.Add(new(StoryPart.OrpProbe, perDecade > 0 ? Math.Max(says, least) : says, perDecade * perPh, perDecade, u, OrpOff));
    }

    private double Chlorine()
    {
        foreach (var witness in _called)
            if (witness.Part is StoryPart.ChlorineTest or StoryPart.ChlorineProbe) return witness.Says;
        return 0;
    }

    private (double At, double LogShare, double PerPh)? Shares()
    {
        double? one = null, other = null;
        foreach (var witness in _called)
            if (witness.Part is StoryPart.PhTest or StoryPart.PhProbe) (one, other) = (one ?? witness.Says, witness.Says);
        if (one is not { } a || other is not { } b) return null;
        // Two equal ones still need a slope: a tenth to either side.
        var (low, high) = Math.Abs(a - b) < 0.05 ? (((a + b) / 2) - 0.1, ((a + b) / 2) + 0.1) : (Math.Min(a, b), Math.Max(a, b));
        return HoclOfStory.LogShare(_input, low) is { } s1 && HoclOfStory.LogShare(_input, high) is { } s2 ? (low, s1, (s2 - s1) / (high - low)) : null;
    }

    private Estimate TestOf(Measurand measurand) => _input.Test(measurand) is { } test ? MethodUncertainty.Of(test.Result) : default;

    // A probe that its checks call good is taken at what they leave of it; one that they call wrong at its word, for it is the word that is in question.
    private Estimate Unbiased(StoryProbe probe)
    {
        var model = TrustModel.Of(probe.Plan.Measurand)!;
        var isCalledWrong = _input.IsCalledWrong(probe);
        if (isCalledWrong || probe.Trust.Standing == Standing.Unknown || !probe.Trust.Bias.IsKnown)
            return new(probe.Read.Value, Root(probe.Read.StandardUncertainty, isCalledWrong ? model.MaintenanceAt / 2 : model.UncheckedSd));
        var bias = Reconciliation.BiasAt(probe.Plan, probe.Trust, _input.SampledAt);
        return new(probe.Read.Value - bias.Value, Root(Root(probe.Read.StandardUncertainty, bias.StandardUncertainty), model.OwnScatter));
    }

    private static (double Log, double U) Logarithm(Estimate chlorine)
    {
        var value = Math.Max(chlorine.Value, LeastChlorine);
        return (Math.Log10(value), Math.Min(WidestLog, chlorine.StandardUncertainty / (value * Math.Log(10))));
    }

    private static double Root(double a, double b) => Math.Sqrt((a * a) + (b * b));
}

/// <summary>The share of hypochlorous acid at a pH, by the one solver of the house.</summary>
internal static class HoclOfStory
{
    // What cyanurate holds back depends on how much chlorine there is; without a figure that of a usual pool is taken.
    private const double UsualChlorine = 1.5;

    /// <summary>log10 of the share; null where it cannot be worked out.</summary>
    public static double? LogShare(StoryInput input, double ph)
    {
        var celsius = Math.Clamp(input.Celsius ?? 27, HoclShare.ValidCelsius.Low, HoclShare.ValidCelsius.High);
        var free = input.Test(Measurand.FreeChlorine) is { Suspect: false, Result: { Censoring: Censoring.None, Value: > 0 } } test ? test.Result.Value : UsualChlorine;
        if (!Quantity.TryFrom(ph, out Ph p) || !Quantity.TryFrom(celsius, out Celsius t) || !Quantity.TryFrom(free, out FreeChlorine f)) return null;
        CyanuricAcid? cyanurate = input.Cyanurate is > 0 and { } c && Quantity.TryFrom(c, out CyanuricAcid acid) ? acid : null;
        var sheet = ChlorineSplit.Of(new(p, t, f, cyanurate) { Disinfectant = input.Pool.Disinfectant });
        return sheet.IsKnown ? Math.Log10(sheet.Value.Share) : null;
    }
}
