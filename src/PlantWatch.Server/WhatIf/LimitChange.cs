using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.WhatIf;

/// <summary>A limit as it might be: the pool's own limit on one measurand, in the words of the plant file.</summary>
/// <param name="Pool">The pool.</param>
/// <param name="Limit">The limit as it would stand in the plant file.</param>
internal sealed record LimitChange(string Pool, LimitPlan Limit)
{
    /// <summary>What is limited.</summary>
    public Measurand Measurand => Limit.Measurand;
}
