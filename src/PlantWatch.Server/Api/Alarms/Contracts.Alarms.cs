using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>A shelving.</summary>
/// <param name="By">Who.</param>
/// <param name="Why">Why.</param>
/// <param name="Minutes">For how long; of a one-shot at most how long, and 0 is the longest there is.</param>
/// <param name="OneShot">The shelf ends when the alarm next clears.</param>
public sealed record Shelve(string? By, string? Why, double Minutes, bool OneShot = false);

/// <summary>Out of service and back. The alarm need not stand: it is named by its rule and what that watches.</summary>
/// <param name="Rule">Number of the rule, such as R-010.</param>
/// <param name="Subject">Pool, probe, pump, or test as pool/measurand.</param>
/// <param name="By">Who: maintenance or above where the plant file names its people.</param>
/// <param name="Why">Why; must be said to take it out.</param>
/// <param name="Until">It returns by itself then; null when a person is to return it. Not read when it is returned.</param>
public sealed record OutOfService(string? Rule, string? Subject, string? By, string? Why, Instant? Until = null);
