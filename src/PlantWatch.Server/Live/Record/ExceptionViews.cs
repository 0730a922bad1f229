using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>A breach in words.</summary>
internal static class ExceptionViews
{
    public static ExceptionView Of(CircuitPlan plan, ExceptionLine line, Instant now, Wording words)
    {
        var pool = plan.Pools.FirstOrDefault(p => p.Id == line.PoolId);
        return new(
            line.Id, plan.Id, line.PoolId == plan.Id ? null : line.PoolId, pool?.Name ?? (line.PoolId == plan.Id ? plan.Name : line.PoolId), line.Quantity, words.Find($"name.{line.Quantity}"), line.Grade,
            line.Reading.Rule, words.OfRule(line.Reading.Rule, "title"), line.Reading.Source, words.Say(line.Reading.Cause), line.Reading.At, line.Reading.By, line.Reading.Withdrawn,
            line.IsOpen ? new(line.Owed.Act, line.Owed.By.OrNull(), line.Owed.IsOverdue(now), line.Owed.Who) : null, Step(line, line.Action, words), Step(line, line.Retest, words),
            line.Closing, line.ClosedAt.OrNull(), line.ClosedBy, line.ClosedWhy, line.Until(line.ClosedAt)?.TotalMinutes, [.. line.Steps.Select(s => Step(line, s, words)!)]);
    }

    private static ExceptionStepView? Step(ExceptionLine line, ExceptionStep? step, Wording words) => step is null ? null : new(
        step.Kind, step.Id, step.At, line.Until(step.At)?.TotalMinutes ?? 0, step.By, step.Word, step.What is { } what ? words.Say(what) : null, step.Text, step.Withdrawn, step.IsAction);
}
