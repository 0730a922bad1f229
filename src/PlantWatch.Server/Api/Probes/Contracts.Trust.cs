using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>GET /api/v1/pools/{id}/trust: which to believe, the probe or the test, told from all signs together.</summary>
/// <param name="PoolId">The pool.</param>
/// <param name="CheckId">The newest check, which the story is about; null without one.</param>
/// <param name="SampledAt">When its sample was taken.</param>
/// <param name="Answer">The answer.</param>
/// <param name="Part">Whom it is about.</param>
/// <param name="ProbeId">The probe that part is, or that stands against the test.</param>
/// <param name="Probability">Probability of the answer under the stated rules, 0 to 1.</param>
/// <param name="Odds">Odds against the next explanation, from 1 up; 1000 stands for as many and more.</param>
/// <param name="Weight">How sure, in a word.</param>
/// <param name="Says">The answer in sentences.</param>
/// <param name="Explanations">How likely each part is to be wrong, likeliest first; none stands for nobody.</param>
/// <param name="Signs">What was seen, weightiest first.</param>
/// <param name="Steps">What to do next, most useful first.</param>
/// <param name="Plausible">Between what the water may lie while this is open; the worse end stands.</param>
/// <param name="Sides">Panel, received value, test and believed value of each probe, side by side, of that check.</param>
/// <param name="TestBy">Until when a test by hand is wanted to settle a doubt; null when none is.</param>
/// <param name="TestWhy">Why.</param>
public sealed record TrustStoryView(
    string PoolId, Guid? CheckId, Instant? SampledAt, StoryAnswer Answer, StoryPart Part, string? ProbeId, double Probability, double Odds, StoryWeight Weight,
    IReadOnlyList<Said> Says, IReadOnlyList<ExplanationView> Explanations, IReadOnlyList<SignView> Signs, IReadOnlyList<StepView> Steps,
    IReadOnlyList<PlausibleView> Plausible, IReadOnlyList<SideView> Sides, Instant? TestBy, Said? TestWhy);

/// <summary>How likely a part is to be wrong.</summary>
public sealed record ExplanationView(StoryPart Part, double Probability);

/// <summary>What was seen.</summary>
/// <param name="Part">Whose soundness it speaks of; none for what is only worth knowing.</param>
/// <param name="Ratio">How many times likelier it was to be seen were that part wrong; below 1 it speaks for the part.</param>
/// <param name="What">In words.</param>
public sealed record SignView(StoryPart Part, double Ratio, Said What);

/// <summary>A step.</summary>
/// <param name="Act">What kind.</param>
/// <param name="Part">Whom it is about.</param>
/// <param name="ProbeId">The probe; null for a test.</param>
/// <param name="Minutes">About how long it takes.</param>
/// <param name="Settles">How much of the question it answers on average, in bits.</param>
/// <param name="What">What to do, then what it would tell.</param>
public sealed record StepView(StoryAct Act, StoryPart Part, string? ProbeId, double Minutes, double Settles, IReadOnlyList<Said> What);

/// <summary>Between what a figure may lie.</summary>
public sealed record PlausibleView(Measurand Measurand, double Low, double High);

/// <summary>One probe beside its test.</summary>
/// <param name="ProbeId">The probe.</param>
/// <param name="Panel">What the panel showed at the sample; null when it was not read.</param>
/// <param name="Received">What was received of the probe at the sample, as it came.</param>
/// <param name="Corrected">The same under the calibration in force.</param>
/// <param name="Test">What the test says it should have read; of ORP what the pool's own line expects.</param>
/// <param name="Believed">What the probe says of the water once its bias is taken off; null for ORP and while unknown.</param>
/// <param name="PanelDiffers">True when panel and received value differ by more than rounding.</param>
public sealed record SideView(string ProbeId, double? Panel, WithU? Received, WithU? Corrected, WithU? Test, WithU? Believed, bool PanelDiffers);
