using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What a series did around a sample, read from storage by the shell and put into the event, so that a check typed hours late pairs at its sample time.</summary>
/// <param name="Series">Which series.</param>
/// <param name="From">Start of the window.</param>
/// <param name="To">End of the window.</param>
/// <param name="Count">Good readings inside.</param>
/// <param name="Excluded">Readings inside that were no good: no flow, suspect.</param>
/// <param name="Mean">Mean of the good raw readings; meaningless when <paramref name="Count"/> is 0.</param>
/// <param name="StandardDeviation">Their standard deviation.</param>
/// <param name="PerHour">Least-squares slope of the good raw readings, units an hour.</param>
public sealed record ProbeWindow(
    string Series, Instant From, Instant To, int Count, int Excluded, double Mean, double StandardDeviation, double PerHour);
