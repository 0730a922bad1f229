using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Probes.Story;

/// <summary>An invented pool at 27 degC whose story is told: healthy probes with a learned ORP line, one check, and what was wrong with it.</summary>
internal sealed record ToldPool
{
    public static readonly Instant Sampled = Instant.FromUtc(2026, 5, 4, 8);

    private static readonly Guid Check = TimeOrderedId.Derive(Sampled, "check");

    public double? PhTest { get; init; } = 7.4;
    public double? ChlorineTest { get; init; } = 1.5;
    public bool ChlorineSuspect { get; init; }
    public bool PhSuspect { get; init; }
    public double Dilution { get; init; } = 1;
    public double? PhRead { get; init; } = 7.4;
    public double? ChlorineRead { get; init; }
    public double? OrpRead { get; init; }
    public Standing PhChecks { get; init; } = Standing.Good;
    public double PhBias { get; init; }
    public SignalHealth PhSignal { get; init; } = SignalHealth.New with { Standing = Standing.Good };
    public SignalOrigin Origin { get; init; }
    public double? Panel { get; init; }
    public ImmutableArray<StoryPump> Pumps { get; init; } = [];
    public Instant MixedAt { get; init; }
    /// <summary>What else the checks made of the pH probe.</summary>
    public Func<ProbeTrust, ProbeTrust> PhTrust { get; init; } = trust => trust;

    public TestMethod PhMethod { get; init; } = TestMethod.Photometer;
    public PairedCheck? PhBefore { get; init; }
    public TimeSpan Later { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>What a healthy ORP probe of this pool shows: 700 mV at 0.8 mg/L of hypochlorous acid, 60 mV a decade.</summary>
    public static double OrpAt(double ph, double chlorine)
    {
        Assert.True(Chemistry_Share(ph, out var share));
        return 700 + (60 * Math.Log10(chlorine * share / 0.8));
    }

    private static bool Chemistry_Share(double ph, out double share) => Core.Chemistry.HoclShare.TryOf(Ph.From(ph), Celsius.From(27), out share);

    public TrustStory Tell() => TrustStory.Tell(Input());

    public StoryInput Input() => new()
    {
        Pool = new() { Id = "main", Name = "Main", Disinfectant = Disinfectant.Chlorine },
        Now = Sampled + Later, CheckId = Check, SampledAt = Sampled, Point = SamplePoint.Cell, Celsius = 27, MixedAt = MixedAt, Pumps = Pumps,
        Tests = [.. Tests()], Probes = [.. Probes()],
    };

    private IEnumerable<StoryTest> Tests()
    {
        if (PhTest is { } ph) yield return new(new(Measurand.Ph, ph, PhMethod), PhSuspect);
        if (ChlorineTest is { } chlorine) yield return new(new(Measurand.FreeChlorine, chlorine, TestMethod.Photometer, Dilution: Dilution), ChlorineSuspect);
    }

    private IEnumerable<StoryProbe> Probes()
    {
        var read = PhRead is { } ph ? new Estimate(ph, 0.01) : default;
        yield return new()
        {
            Plan = Plan("main-ph", Measurand.Ph), Signal = PhSignal, Read = read, Received = read, Panel = Panel,
            Trust = PhTrust(new() { Standing = PhChecks, Bias = new(PhBias, 0.05), Taken = 8, JudgedAt = Sampled, Pairs = [.. Pairs(read)] }),
        };
        if (ChlorineRead is { } chlorine)
            yield return new() { Plan = Plan("main-cl", Measurand.FreeChlorine), Read = new(chlorine, 0.02), Trust = new() { Standing = Standing.Good, Bias = new(0.01, 0.05), Taken = 8, JudgedAt = Sampled } };
        if (OrpRead is { } orp)
            yield return new()
            {
                Plan = Plan("main-orp", Measurand.Orp), Read = new(orp, 1.5),
                Trust = new() { Standing = Standing.Good, Bias = new(0.5, 3), Taken = 20, JudgedAt = Sampled, Line = new(Math.Log10(0.8), new(700, 2), new(60, 6)) },
            };
    }

    private IEnumerable<PairedCheck> Pairs(Estimate read)
    {
        if (PhBefore is not { } before) yield break;
        yield return before;
        yield return new(Check, Sampled, read, new(PhTest!.Value, 0.08), false);
    }

    private ProbePlan Plan(string id, Measurand measurand) => new() { Id = id, Name = id, PoolId = "main", Measurand = measurand, Origin = Origin, Topic = id, Range = measurand.Possible() };
}
