using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>The lines that a probe's bias is held against, and what has to be learned before it is.</summary>
/// <param name="MaintenanceAt">A bias beyond this asks for maintenance, in the measurand's unit.</param>
/// <param name="OutAt">A bias beyond this is out of specification.</param>
/// <param name="Learns">True when what the probe should read follows a line of its own that is learned first.</param>
/// <param name="ChecksNeeded">Checks needed before it is judged.</param>
/// <param name="DaysNeeded">Days they have to be spread over.</param>
public sealed record TrustLimits(double MaintenanceAt, double OutAt, bool Learns, int ChecksNeeded, double DaysNeeded)
{
    /// <summary>The limits of a measurand; null for what no manual check can judge.</summary>
    public static TrustLimits? Of(Measurand measurand) => TrustModel.Of(measurand) is { } m
        ? new(m.MaintenanceAt, m.OutAt, m.Learns, m.ChecksNeeded, m.DaysNeeded)
        : null;
}
