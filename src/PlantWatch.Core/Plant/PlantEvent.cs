using System.Collections.Immutable;
using System.Text.Json.Serialization;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>Everything that can happen to a circuit. The journal holds these and nothing else, so a replay needs nothing else.</summary>
/// <param name="At">When it came in at the door.</param>
public abstract record PlantEvent(Instant At);

/// <summary>An MQTT message as it came, not yet decoded.</summary>
/// <param name="At">Receive time, strictly rising within a circuit.</param>
/// <param name="Topic">MQTT topic.</param>
/// <param name="Payload">The bytes.</param>
/// <param name="Retained">The RETAIN flag: a last value, not a new sample.</param>
/// <param name="Packet">What identifies the packet; null at QoS 0.</param>
public sealed record MessageArrived(Instant At, string Topic, ReadOnlyMemory<byte> Payload, bool Retained, PacketIdentity? Packet) : PlantEvent(At);

/// <summary>A manual check was entered.</summary>
/// <param name="At">Arrival; sample and entry time are in the check.</param>
/// <param name="Check">The check.</param>
/// <param name="Windows">What the circuit's series did around the sample, read by the shell.</param>
public sealed record CheckEntered(Instant At, ManualCheck Check, ImmutableArray<ProbeWindow> Windows) : PlantEvent(At);

/// <summary>A calibration was proposed. Only the proposer's fields are read.</summary>
public sealed record CalibrationProposed(Instant At, Calibration Proposal) : PlantEvent(At);

/// <summary>An engineer decided on a proposal, or reported the panel adjusted.</summary>
/// <param name="At">When.</param>
/// <param name="CalibrationId">The proposal.</param>
/// <param name="Decision">Approved, Rejected or Adjusted.</param>
/// <param name="HoldsFrom">The time from which it holds; never means now.</param>
/// <param name="By">Who.</param>
/// <param name="Why">In words.</param>
public sealed record CalibrationDecided(Instant At, Guid CalibrationId, CalibrationStatus Decision, Instant HoldsFrom, string By, string? Why) : PlantEvent(At);

/// <summary>A second person looked over a calibration that holds by the signature of who did it.</summary>
/// <param name="At">When.</param>
/// <param name="CalibrationId">The calibration.</param>
/// <param name="Accepted">False takes it back, from its beginning.</param>
/// <param name="By">Who.</param>
/// <param name="Why">In words.</param>
public sealed record CalibrationReviewed(Instant At, Guid CalibrationId, bool Accepted, string By, string? Why) : PlantEvent(At);

/// <summary>A person takes a probe out of its cell or begins to work on it: until the end its readings are no pool water.</summary>
public sealed record ProbeWorkBegun(Instant At, Guid WorkId, string ProbeId, string By) : PlantEvent(At);

/// <summary>The probe is back in its cell.</summary>
public sealed record ProbeWorkEnded(Instant At, Guid WorkId, string ProbeId, string By) : PlantEvent(At);

/// <summary>A person corrected the record between two services of a probe. Only the maker's fields are read.</summary>
public sealed record CorrectionMade(Instant At, RecordCorrection Correction) : PlantEvent(At);

/// <summary>A person withdrew a correction of the record, and says why.</summary>
public sealed record CorrectionWithdrawn(Instant At, Guid CorrectionId, string By, string Why) : PlantEvent(At);

/// <summary>A person acknowledged an alarm.</summary>
public sealed record AlarmAcknowledged(Instant At, Guid AlarmId, string By, string? Comment) : PlantEvent(At);

/// <summary>A person shelved an alarm until a time, or until it clears when that is sooner.</summary>
public sealed record AlarmShelved(Instant At, Guid AlarmId, Instant Until, string By, string Why, bool OneShot = false) : PlantEvent(At);

/// <summary>A person took an alarm off the shelf.</summary>
public sealed record AlarmUnshelved(Instant At, Guid AlarmId, string By) : PlantEvent(At);

/// <summary>A person reset the latch of an alarm.</summary>
public sealed record AlarmReset(Instant At, Guid AlarmId, string By, string? Comment) : PlantEvent(At);

/// <summary>A person recorded that the plant was made safe: after dosing into standing water, which holds for every such alarm of the circuit, or after a wrong product went into a tank, which holds for that tank.</summary>
/// <param name="At">When.</param>
/// <param name="AlarmId">One of the alarms.</param>
/// <param name="BathersOut">Bathers are out of the water.</param>
/// <param name="PumpsIsolated">Both dosing pumps are isolated.</param>
/// <param name="CirculationHeld">The circulation is not started before the lines are made safe.</param>
/// <param name="By">Who.</param>
/// <param name="Comment">Words to it.</param>
public sealed record PlantMadeSafe(Instant At, Guid AlarmId, bool BathersOut, bool PumpsIsolated, bool CirculationHeld, string By, string? Comment) : PlantEvent(At)
{
    /// <summary>Of a wrong product in a tank: everybody left the room, and nobody went back in before the air was known to be clear.</summary>
    public bool RoomLeft { get; init; }

    /// <summary>Of a wrong product in a tank: whoever is competent dealt with its content.</summary>
    public bool TankDealtWith { get; init; }

    /// <summary>What was done.</summary>
    [JsonIgnore]
    public SafeActs Acts => new(BathersOut, PumpsIsolated, CirculationHeld, RoomLeft, TankDealtWith);
}

/// <summary>A person took an alarm out of service, whether it stands or not.</summary>
/// <param name="At">When.</param>
/// <param name="Key">Rule number and subject, such as <c>R-010/main-ph</c>.</param>
/// <param name="By">Who.</param>
/// <param name="Why">Why.</param>
/// <param name="Until">It returns by itself then; never means that a person returns it.</param>
public sealed record AlarmTakenOutOfService(Instant At, string Key, string By, string Why, Instant Until = default) : PlantEvent(At);

/// <summary>A person returned an alarm to service.</summary>
public sealed record AlarmReturnedToService(Instant At, string Key, string By, string? Why) : PlantEvent(At);

/// <summary>A job of maintenance was written or changed. Journals know it as a note.</summary>
public sealed record JobWritten(Instant At, [property: JsonPropertyName("note")] Job Job) : PlantEvent(At);

/// <summary>A person declared a contamination incident. What the plant adds to it, times, tests and remarks, is not read.</summary>
public sealed record IncidentDeclared(Instant At, Incident Incident) : PlantEvent(At);

/// <summary>A person noted what was done or seen in the course of an incident.</summary>
public sealed record IncidentNoted(Instant At, Guid IncidentId, Guid RemarkId, string By, string Text) : PlantEvent(At);

/// <summary>A person closed an incident, and says why.</summary>
public sealed record IncidentClosed(Instant At, Guid IncidentId, string By, string Why) : PlantEvent(At);

/// <summary>A person gave a dose, or corrects what was entered of one.</summary>
/// <param name="At">When.</param>
/// <param name="Dose">What was given, with what the shell predicted of it.</param>
public sealed record DoseGiven(Instant At, GivenDose Dose) : PlantEvent(At);

/// <summary>The plant file was read, at start or again. A broken file never becomes an event: the old one stays in force.</summary>
/// <param name="At">When.</param>
/// <param name="Plan">The circuit as it now is.</param>
public sealed record PlanLoaded(Instant At, CircuitPlan Plan) : PlantEvent(At)
{
    /// <summary>What no circuit can know by itself: that pools, probes or pumps of it came from another circuit or went to one.</summary>
    public ImmutableArray<Reason> Moves { get; init; } = [];

    /// <summary>Likewise, what came with the pools that were in another circuit before.</summary>
    public Arrival Arrival { get; init; } = Arrival.Nothing;

    /// <summary>Who saved the plant file, where it was saved on the page; null when it was edited elsewhere.</summary>
    public string? By { get; init; }

    /// <summary>Why, in words; null when nothing was said.</summary>
    public string? Why { get; init; }
}

/// <summary>The broker no longer knew our session: what it held for us is lost, and that is a gap in the record.</summary>
/// <param name="At">When the connection came back.</param>
/// <param name="Since">When it had been lost.</param>
/// <param name="Session">Which session.</param>
public sealed record SessionLost(Instant At, Instant Since, string Session) : PlantEvent(At);

/// <summary>Time went on and nothing else happened.</summary>
public sealed record ClockTicked(Instant At) : PlantEvent(At);
