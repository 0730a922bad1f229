using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What a payload said, before anything is known about it: a number in the measurand's own unit, and when.</summary>
/// <param name="Name">The resolved record name for SenML; empty for a plain number.</param>
/// <param name="DeviceTime">The time the device put on it; <see cref="Instant.Never"/> when it gave none.</param>
/// <param name="Value">The number as sent; finite.</param>
/// <param name="Unit">The unit the payload names; null when it names none.</param>
public readonly record struct RawSample(string Name, Instant DeviceTime, double Value, string? Unit);

/// <summary>A stored reading of one series. Raw is never changed; corrected values are computed from it and the calibration in force.</summary>
/// <param name="Series">Probe id, or a pump's state or tank series.</param>
/// <param name="MeasuredAt">Device time where the payload carries one, else the receive time.</param>
/// <param name="ReceivedAt">When it came in at the door.</param>
/// <param name="Raw">The number in the measurand's own unit.</param>
/// <param name="Quality">Facts about it.</param>
/// <param name="Order">Whether it follows the newest of its series.</param>
public readonly record struct Reading(string Series, Instant MeasuredAt, Instant ReceivedAt, double Raw, Quality Quality, Order Order);

/// <summary>Where a reading stands in its series.</summary>
public enum Order : byte
{
    /// <summary>Not known.</summary>
    Unknown = 0,
    /// <summary>Newer than every reading of its series so far: it can be no duplicate.</summary>
    Newest,
    /// <summary>At or before the newest of its series: only storage can tell whether it is there already.</summary>
    BackFill,
}
