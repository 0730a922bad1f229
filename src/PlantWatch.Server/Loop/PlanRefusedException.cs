namespace PlantWatch.Server.Loop;

/// <summary>A plant file is well-formed and all the same must not come into force as the plant stands now. The one before stays; it is tried again.</summary>
/// <param name="message">Why, in words for whoever wrote the file.</param>
internal sealed class PlanRefusedException(string message) : Exception(message);
