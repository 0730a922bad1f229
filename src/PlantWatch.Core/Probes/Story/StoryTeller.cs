using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>Puts the figures and the signs of one pool together and says what they come to.</summary>
internal sealed class StoryTeller
{
    private const double Leans = 0.65;
    private const double Likely = 0.85;
    private const double Strong = 0.97;

    // A range narrower than any test can tell is no range.
    private const double WorthShowingPh = 0.1;
    private const double WorthShowingLog = 0.08;

    // A check of another day says nothing of the probe as it is.
    private static readonly TimeSpan Fresh = TimeSpan.FromHours(36);

    private readonly StoryInput _input;
    private readonly ImmutableArray<Witness> _witnesses;
    private readonly List<StorySign> _signs;
    private readonly StoryOdds _odds;

    public StoryTeller(StoryInput input)
    {
        var isFresh = input.SampledAt.IsSet && input.Now - input.SampledAt <= Fresh;
        _input = isFresh ? input : input with { Tests = [], Probes = [.. input.Probes.Select(p => p with { Read = default, Received = default })] };
        _witnesses = StoryBench.Call(_input);
        _signs = StorySigns.Of(_input);
        _odds = StoryOdds.Of(_witnesses, Before);
    }

    public TrustStory Tell()
    {
        var explanations = Explanations();
        var lead = explanations.FirstOrDefault(e => e.Part != StoryPart.None);
        var (answer, part, probability) = Answer(lead);
        var signs = Signs(answer is StoryAnswer.AllAgree or StoryAnswer.WaterChanged ? StoryPart.None : lead.Part);
        return new()
        {
            Answer = answer, Part = part, ProbeId = ProbeOf(part == StoryPart.None ? lead.Part : part), Probability = probability, Odds = Odds(answer, part, explanations),
            Weight = WeightOf(answer, probability), Says = Says(answer, part), Explanations = explanations, Signs = signs, Plausible = Plausible(answer),
            Steps = StorySteps.For(_input, answer, IsWrong),
        };
    }

    /// <summary>Probability that a part is wrong; of one that could not be heard, by the signs alone.</summary>
    private double IsWrong(StoryPart part) => IsCalled(part) ? _odds.IsWrong(part) : HasProbe(part) ? Before(part) / (1 + Before(part)) : 0;

    // A probe that could not be heard may be wrong all the same.
    private double Nobody()
    {
        var nobody = _odds.Nobody;
        foreach (var part in new[] { StoryPart.PhProbe, StoryPart.ChlorineProbe, StoryPart.OrpProbe })
            if (!IsCalled(part)) nobody *= 1 - IsWrong(part);
        return nobody;
    }

    private double Before(StoryPart part) => StorySigns.Before(_signs, part);

    private bool IsCalled(StoryPart part) => _witnesses.Any(w => w.Part == part);

    private bool HasProbe(StoryPart part) => _input.Probes.Any(p => StorySigns.PartOf(p) == part);

    private ImmutableArray<StoryExplanation> Explanations() =>
    [
        .. new[] { StoryPart.None, StoryPart.PhTest, StoryPart.PhProbe, StoryPart.ChlorineTest, StoryPart.ChlorineProbe, StoryPart.OrpProbe }
            .Where(part => part == StoryPart.None || IsCalled(part) || HasProbe(part))
            .Select(part => new StoryExplanation(part, part == StoryPart.None ? Nobody() : IsWrong(part)))
            .OrderByDescending(e => e.Probability),
    ];

    private (StoryAnswer Answer, StoryPart Part, double Probability) Answer(StoryExplanation lead)
    {
        if (lead.Probability >= Leans) return (lead.Part.IsTest() ? StoryAnswer.TestSuspect : StoryAnswer.ProbeDrifts, lead.Part, lead.Probability);
        var compared = StoryFigures.Compared(_witnesses);
        if (!compared) return (_input.Tests.IsEmpty || _input.Probes.IsEmpty ? StoryAnswer.CannotTell : StoryAnswer.NotComparable, StoryPart.None, 0);
        if (Nobody() < Leans) return (StoryAnswer.CannotTell, StoryPart.None, lead.Probability);
        return (StoryMoves.Together(_input) is null ? StoryAnswer.AllAgree : StoryAnswer.WaterChanged, StoryPart.None, Nobody());
    }

    private static double Odds(StoryAnswer answer, StoryPart part, ImmutableArray<StoryExplanation> all)
    {
        if (answer is StoryAnswer.NotComparable or StoryAnswer.CannotTell) return 1;
        var mine = all.FirstOrDefault(e => e.Part == part).Probability;
        var next = all.Where(e => e.Part != part).Select(e => e.Probability).DefaultIfEmpty(0).Max();
        return Math.Clamp(mine / Math.Max(next, 1e-4), 1, 1000);
    }

    private static StoryWeight WeightOf(StoryAnswer answer, double probability) => answer is StoryAnswer.CannotTell or StoryAnswer.NotComparable ? StoryWeight.None
        : probability >= Strong ? StoryWeight.Strong : probability >= Likely ? StoryWeight.Likely : StoryWeight.Leans;

    private ImmutableArray<Reason> Says(StoryAnswer answer, StoryPart part) => answer switch
    {
        StoryAnswer.AllAgree => [Reason.Of("story.all_agree"), .. Unheard()],
        StoryAnswer.WaterChanged => [Reason.Of("story.water_changed"), StoryMoves.Together(_input)!],
        StoryAnswer.TestSuspect when part == StoryPart.PhTest && _input.LotOff(Measurand.Ph) is { Off: var off } => [Reason.Of("story.ph_lot_suspect", off.Value, off.Expanded, Measurand.Ph.Unit())],
        StoryAnswer.TestSuspect => [part == StoryPart.PhTest ? Reason.Of("story.ph_test_suspect") : Reason.Of("story.chlorine_test_suspect")],
        StoryAnswer.ProbeDrifts => [Reason.Of("story.probe_drifts", NameOf(part))],
        StoryAnswer.NotComparable => [Reason.Of("story.not_comparable"), .. _input.Probes.Select(p => p.WhyNot).OfType<Reason>().Distinct()],
        _ when !_input.SampledAt.IsSet => [Reason.Of("story.cannot_tell"), Reason.Of("story.no_check")],
        _ when _input.Tests.IsEmpty => [Reason.Of("story.cannot_tell"), Reason.Of("story.check_is_old", (_input.Now - _input.SampledAt).TotalHours)],
        _ => [Reason.Of("story.cannot_tell"), .. NilOrBleached() ? [Reason.Of("story.nil_or_bleached")] : ImmutableArray<Reason>.Empty],
    };

    // Agreement of the others is none of a probe that the check was not held against.
    private IEnumerable<Reason> Unheard() => _input.Probes
        .Where(p => !p.Read.IsKnown && StorySigns.PartOf(p) != StoryPart.None && _input.Test(p.Plan.Measurand) is not null)
        .Select(p => Reason.Of("story.probe_unheard", p.Plan.Measurand.Key()));

    // A doubted nil that nothing else speaks to: an empty pool or a bleached dye, and no range lies between the two.
    private bool NilOrBleached() => _input.Test(Measurand.FreeChlorine) is { Suspect: true, Result.Value: <= StorySteps.Nil }
        && !IsCalled(StoryPart.ChlorineProbe) && !IsCalled(StoryPart.OrpProbe);

    private ImmutableArray<StorySign> Signs(StoryPart lead) =>
    [
        .. _signs.Concat(StoryFigures.Of(_input, _witnesses, lead, removed => lead == StoryPart.None ? 1 : Contribution(lead, removed)))
            .OrderByDescending(s => Math.Abs(Math.Log(s.Ratio))).ThenBy(s => s.What.Code, StringComparer.Ordinal),
    ];

    // What one witness adds to the odds that a part is wrong: with it, and without it.
    private double Contribution(StoryPart lead, StoryPart removed)
    {
        var without = StoryOdds.Of([.. _witnesses.Where(w => w.Part != removed)], Before);
        return Math.Clamp(Ratio(_odds.IsWrong(lead)) / Ratio(without.IsWrong(lead)), 0.001, 1000);
    }

    private static double Ratio(double p) => Math.Clamp(p, 1e-6, 1 - 1e-6) is var q ? q / (1 - q) : 0;

    private ImmutableArray<PlausibleRange> Plausible(StoryAnswer answer)
    {
        if (answer is StoryAnswer.AllAgree or StoryAnswer.WaterChanged || _witnesses.IsEmpty) return [];
        var (lowPh, highPh, lowLog, highLog) = _odds.Range();
        // What a test found stays in view however little speaks for it: only a repeat takes it away.
        foreach (var test in _witnesses)
        {
            if (test.Part == StoryPart.PhTest) (lowPh, highPh) = (Math.Min(lowPh, test.Says), Math.Max(highPh, test.Says));
            if (test.Part == StoryPart.ChlorineTest) (lowLog, highLog) = (Math.Min(lowLog, test.Says), Math.Max(highLog, test.Says));
        }

        var ranges = ImmutableArray.CreateBuilder<PlausibleRange>(2);
        if (IsCalled(StoryPart.PhTest) || IsCalled(StoryPart.PhProbe)) Add(ranges, Measurand.Ph, lowPh, highPh, highPh - lowPh > WorthShowingPh);
        if ((IsCalled(StoryPart.ChlorineTest) || IsCalled(StoryPart.ChlorineProbe)) && !NilOrBleached())
            Add(ranges, Measurand.FreeChlorine, Math.Min(Math.Pow(10, lowLog), Tested(Measurand.FreeChlorine)), Math.Pow(10, highLog), highLog - lowLog > WorthShowingLog);
        return ranges.DrainToImmutable();
    }

    // Below what a witness can tell the test still stands as it was read.
    private double Tested(Measurand measurand) => _input.Test(measurand)?.Result.Value ?? double.MaxValue;

    private static void Add(ImmutableArray<PlausibleRange>.Builder ranges, Measurand measurand, double low, double high, bool isWide)
    {
        if (isWide) ranges.Add(new(measurand, low, high));
    }

    private string NameOf(StoryPart part) => _input.Probes.FirstOrDefault(p => StorySigns.PartOf(p) == part)?.Plan.Measurand.Key() ?? "";

    private string? ProbeOf(StoryPart part) => part switch
    {
        StoryPart.PhTest or StoryPart.PhProbe => _input.Probe(Measurand.Ph)?.Plan.Id,
        StoryPart.ChlorineTest or StoryPart.ChlorineProbe => _input.Probe(Measurand.FreeChlorine)?.Plan.Id ?? _input.Probe(Measurand.Orp)?.Plan.Id,
        StoryPart.OrpProbe => _input.Probe(Measurand.Orp)?.Plan.Id,
        _ => null,
    };
}
