using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>One sign of a story: what was seen, and how much it speaks for a part being wrong.</summary>
/// <param name="Part">Whose soundness it speaks of; none when it bears on no part, such as a thing to know.</param>
/// <param name="Ratio">Likelihood ratio: how many times likelier this was to be seen were the part wrong than were it right. Below 1 it speaks for the part.</param>
/// <param name="What">What was seen, in words.</param>
public sealed record StorySign(StoryPart Part, double Ratio, Reason What);
