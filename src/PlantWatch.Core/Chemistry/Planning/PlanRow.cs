namespace PlantWatch.Core.Chemistry;

/// <summary>One end of a band as a linear condition on the amounts: value + slopes x amounts is at least 0.</summary>
/// <param name="Aim">The band.</param>
/// <param name="IsLow">Which end.</param>
/// <param name="Must">True for what must hold, false for the margin that is wanted.</param>
/// <param name="Value">Room to the end with no amounts at all, in steps of the figure.</param>
/// <param name="Slopes">What a unit of each means adds to it.</param>
internal sealed record PlanRow(Aim? Aim, bool IsLow, bool Must, double Value, double[] Slopes);
