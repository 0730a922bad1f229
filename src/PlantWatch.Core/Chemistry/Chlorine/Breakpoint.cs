using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What it would take to oxidise combined chlorine, by two ways of reckoning that are never mixed.</summary>
/// <param name="Stoichiometric">mg/L of free chlorine that the equation asks for, were all of it monochloramine.</param>
/// <param name="RuleOfThumbLevel">mg/L of free chlorine that the ten-times rule would raise the pool to. Named, never acted on.</param>
/// <param name="RuleOfThumbRise">mg/L above the free chlorine there is, by that rule.</param>
/// <param name="Says">What has to be said beside them.</param>
public sealed record BreakpointNeed(double Stoichiometric, double RuleOfThumbLevel, double RuleOfThumbRise, ImmutableArray<Reason> Says);

/// <summary>Breakpoint chlorination: chlorine against ammonia and against what has become of it.</summary>
public static class Breakpoint
{
    /// <summary>Chlorine to ammonia nitrogen by mass, 2 NH3 + 3 HOCl -> N2: 7.6 (published; computed 3 x 70.906/(2 x 14.007)).</summary>
    public const double ToAmmoniaNitrogen = 3 * 70.906 / (2 * 14.007);

    /// <summary>The same as practice finds it: 10 to 15 (published, handbook of environmental mathematics, ch. 4).</summary>
    public static ValueRange ToAmmoniaNitrogenInPractice { get; } = new(10, 15);

    /// <summary>2 NH2Cl + HOCl -> N2: half of the combined chlorine, which is counted as Cl2 and is chlorinated already (computed).</summary>
    public const double ToMonochloramine = 0.5;

    /// <summary>Operators' handbooks: raise free chlorine to ten times the combined (common practice). It takes combined chlorine for ammonia and holds for no organic chloramine.</summary>
    public const double RuleOfThumb = 10;

    /// <summary>Both figures for a combined chlorine; null when there is none, its pair having been rejected.</summary>
    public static BreakpointNeed? Of(CombinedResult combined, FreeChlorine free)
    {
        if (!combined.IsKnown) return null;
        var cc = combined.Value.MilligramsPerLitre;
        var (need, level) = (ToMonochloramine * cc, RuleOfThumb * cc);
        return new(need, level, Math.Max(0, level - free.MilligramsPerLitre), [.. Says(combined, need, level)]);
    }

    private static List<Reason> Says(CombinedResult combined, double need, double level)
    {
        List<Reason> says = combined.IsToldFromZero ? [] : [Reason.Of("combined.not_told_from_zero", 2 * combined.StandardUncertainty)];
        says.Add(Reason.Of("breakpoint.stoichiometric", need));
        says.Add(Reason.Of("breakpoint.rule_of_thumb", level));
        says.Add(Reason.Of("breakpoint.dilute_first"));
        return says;
    }

    /// <summary>Chlorine in mg/L as Cl2 that ammonia asks for by the equation.</summary>
    /// <param name="ammoniaNitrogen">Ammonia in mg/L as N, 0 to 50.</param>
    public static Figure ForAmmonia(double ammoniaNitrogen) => new InputCheck()
        .Within("ammonia", ammoniaNitrogen, new(0, 50), "mg/L").Then(() => ToAmmoniaNitrogen * ammoniaNitrogen);
}
