namespace PlantWatch.Core.Plans.Telling;

/// <summary>Hours on the wall, the start included and the end not. An end that is not after the start is on the next day, so that equal times are a whole day. The default is every hour of the day.</summary>
/// <param name="From">Start.</param>
/// <param name="To">End.</param>
public readonly record struct WallHours(TimeOnly From, TimeOnly To);
