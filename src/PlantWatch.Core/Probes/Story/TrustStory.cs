using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>One story out of many signs: which to believe, how sure that is, what speaks for it and what to do next. Advice, never a command.</summary>
public sealed record TrustStory
{
    /// <summary>The answer.</summary>
    public StoryAnswer Answer { get; init; }

    /// <summary>The part it is about; none when all agree or nothing can be told.</summary>
    public StoryPart Part { get; init; }

    /// <summary>The probe that part is, or that is held against the test; null when there is none.</summary>
    public string? ProbeId { get; init; }

    /// <summary>Probability of the answer, 0 to 1, under the stated evidence rules.</summary>
    public double Probability { get; init; }

    /// <summary>Odds of the answer against the next explanation, as a ratio from 1 up.</summary>
    public double Odds { get; init; }

    /// <summary>The same in words.</summary>
    public StoryWeight Weight { get; init; }

    /// <summary>The answer in a sentence, with what has to be said beside it; never empty.</summary>
    public ImmutableArray<Reason> Says { get; init; } = [];

    /// <summary>How likely each part is to be wrong, likeliest first.</summary>
    public ImmutableArray<StoryExplanation> Explanations { get; init; } = [];

    /// <summary>What was seen, weightiest first.</summary>
    public ImmutableArray<StorySign> Signs { get; init; } = [];

    /// <summary>What to do next, most useful first; empty when there is nothing to settle.</summary>
    public ImmutableArray<StoryStep> Steps { get; init; } = [];

    /// <summary>Between what the water may lie while this is not settled. The worse end stands.</summary>
    public ImmutableArray<PlausibleRange> Plausible { get; init; } = [];

    /// <summary>Tells the story of a pool.</summary>
    public static TrustStory Tell(StoryInput input) => new StoryTeller(input).Tell();
}

/// <summary>How likely a part is to be wrong.</summary>
/// <param name="Part">The part; none stands for nobody.</param>
/// <param name="Probability">0 to 1.</param>
public readonly record struct StoryExplanation(StoryPart Part, double Probability);

/// <summary>Between what a figure may lie.</summary>
/// <param name="Measurand">pH or free chlorine.</param>
/// <param name="Low">Lowest plausible, in the measurand's unit.</param>
/// <param name="High">Highest plausible.</param>
public readonly record struct PlausibleRange(Measurand Measurand, double Low, double High);
