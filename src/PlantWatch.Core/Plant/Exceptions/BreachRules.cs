using System.Collections.Frozen;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Exceptions;

/// <summary>Which rules a breach is a breach of, and what speaks in them.</summary>
public static class BreachRules
{
    private static readonly FrozenDictionary<string, BreachGrade> Grades = Of(
        (BreachGrade.Operating, [RuleBook.BelowLimit, RuleBook.AboveLimit, RuleBook.TestOutsideLimit, RuleBook.CombinedPart]),
        (BreachGrade.Closure, [RuleBook.OutsideClosure, RuleBook.TestOutsideClosure]),
        (BreachGrade.Stop, [RuleBook.StopPh, RuleBook.StopFreeChlorine, RuleBook.StopTemperature, RuleBook.StopBottom, RuleBook.TestOutsideStop]),
        (BreachGrade.Laboratory, [RuleBook.LaboratoryOutside]));

    private static readonly FrozenSet<string> LiveLimits = Numbers(RuleBook.BelowLimit, RuleBook.AboveLimit);
    private static readonly FrozenSet<string> LiveStops = Numbers(RuleBook.StopPh, RuleBook.StopFreeChlorine, RuleBook.StopTemperature, RuleBook.OutsideClosure);

    /// <summary>The grade of a breach of a rule; unknown for a rule whose alarm is no breach of the water.</summary>
    public static BreachGrade GradeOf(string rule) => Grades.GetValueOrDefault(rule);

    /// <summary>A probe speaks in it, of an operating limit: only a believed one begins a breach, and a test by hand outweighs it.</summary>
    public static bool IsLiveLimit(string rule) => LiveLimits.Contains(rule);

    /// <summary>A probe speaks in it, of a stop or a closure limit: it counts whatever the probe's standing, and no test closes the line while it stands.</summary>
    public static bool IsLiveStop(string rule) => LiveStops.Contains(rule);

    private static FrozenDictionary<string, BreachGrade> Of(params (BreachGrade Grade, Rule[] Rules)[] all) =>
        all.SelectMany(g => g.Rules.Select(r => (r.Number, g.Grade))).ToFrozenDictionary(p => p.Number, p => p.Grade, StringComparer.Ordinal);

    private static FrozenSet<string> Numbers(params Rule[] rules) => rules.Select(r => r.Number).ToFrozenSet(StringComparer.Ordinal);
}
