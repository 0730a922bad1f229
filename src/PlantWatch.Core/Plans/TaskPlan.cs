namespace PlantWatch.Core.Plans;

/// <summary>Work that comes round: a pump's tube, a probe's cleaning, a strainer.</summary>
/// <param name="Id">Key in the plant file, unique in its circuit.</param>
/// <param name="Name">What is to be done.</param>
/// <param name="Asset">Id of the pump, probe, filter, pool or circuit it is done on.</param>
/// <param name="Every">Longest time between two times.</param>
public sealed record TaskPlan(string Id, string Name, string Asset, TimeSpan Every)
{
    /// <summary>The day it was last done before PlantWatch kept count; null when not known, and then it counts from when the plant file named it.</summary>
    public DateOnly? LastDone { get; init; }
}
