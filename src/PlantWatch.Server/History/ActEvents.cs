using System.Collections.Immutable;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.History;

/// <summary>The event that made a row of the record, as it can be told to a state that may have come out otherwise.</summary>
internal static class ActEvents
{
    // Declared longer ago than the fold takes, an incident that is open still is one.
    private static readonly TimeSpan OldestIncident = TimeSpan.FromDays(6);

    /// <summary>The event; null where there is none, such as an acknowledgement of an alarm that does not stand here.</summary>
    /// <param name="act">The act.</param>
    /// <param name="now">When it is done again.</param>
    /// <param name="state">The state it is told to.</param>
    /// <param name="windows">Reads what the probes did around a check.</param>
    public static PlantEvent? Of(RecordedAct act, Instant now, CircuitState state, Func<ManualCheck, ImmutableArray<ProbeWindow>> windows) => act.Row.Body switch
    {
        CheckEntry said => new CheckEntered(now, said.Check, windows(said.Check)),
        CalibrationEntry said => OfCalibration(said.Calibration, now, state),
        WorkEntry { Change: WorkChange.Begun } said => new ProbeWorkBegun(now, said.Window.Id, said.ProbeId, said.By ?? ""),
        WorkEntry { Change: WorkChange.Ended } said => new ProbeWorkEnded(now, said.Window.Id, said.ProbeId, said.By ?? ""),
        DoseEntry said => new DoseGiven(now, said.Dose),
        PackRowEntry { Change: RowChange.Confirmed } said => new PackRowConfirmed(now, said.Confirmation.PackId, said.Confirmation.RowId, said.Confirmation.Digest, said.By, said.Confirmation.Document, said.Confirmation.Applies),
        PackRowEntry said => new PackRowRevoked(now, said.Confirmation.PackId, said.Confirmation.RowId, said.By, said.Why ?? ""),
        // What counts from when it was done keeps its own time, also where it lies before the start.
        LabResultEntry said => new LabResultEntered(act.Row.At, said.Result, said.Water),
        LabClosedEntry said => new LabResultClosed(act.Row.At, said.ResultId, said.By, said.Why),
        ReagentEntry said => new ReagentOpened(act.Row.At, said.ReagentId, said.Lot),
        InstrumentEntry said => new InstrumentVerified(act.Row.At, said.InstrumentId, said.Verification),
        StockEntry said => new StockMoved(act.Row.At, said.Move),
        BathersEntry said => new BathersCounted(act.Row.At, said.Count),
        JobEntry said => new JobWritten(act.Row.At, said.Job),
        FilterEntry said => new FilterWashed(act.Row.At, said.WashId, said.FilterId, said.By) { CubicMetres = said.IsUsual ? null : said.CubicMetres },
        BackwashEntry { Change: BackwashChange.Begun } said => new BackwashBegun(now, said.Window.Id, said.FilterId, said.By ?? "") { Why = said.Why },
        BackwashEntry said => new BackwashEnded(now, said.Window.Id, said.FilterId, said.By ?? ""),
        IncidentEntry { Change: IncidentChange.Declared } said => new IncidentDeclared(now, said.Incident with { HappenedAt = Instant.Later(said.Incident.HappenedAt, now - OldestIncident) }),
        IncidentEntry said => new IncidentClosed(now, said.Incident.Id, said.By ?? "", said.Comment ?? ""),
        PoolStateEntry said => new PoolStateSet(now, said.Operation.ActId, act.Row.Subject, said.Operation.State, said.Operation.By ?? "", said.Operation.Why, said.Operation.ForCause, said.Refilled && act.Row.At == act.At),
        AlarmEntry said => OfAlarm(said, now, state),
        _ => null,
    };

    // A sheet that was signed is in force at once: it is proposed and decided in one.
    private static PlantEvent OfCalibration(Calibration said, Instant now, CircuitState state)
    {
        var known = state.Calibrations.FirstOrDefault(c => c.Id == said.Id);
        if (known is null && (said.Status == CalibrationStatus.Proposed || said.Sheet is not null)) return new CalibrationProposed(now, said);
        return known is { WaitsForReview: true } && said.ReviewedBy is { } by
            ? new CalibrationReviewed(now, said.Id, !said.Objected, by, said.Review)
            : new CalibrationDecided(now, said.Id, said.Status, said.HoldsFrom, said.DecidedBy ?? "", said.Decision);
    }

    // By what it watches: the occurrence has another id in each telling.
    private static PlantEvent? OfAlarm(AlarmEntry said, Instant now, CircuitState state)
    {
        var (by, why) = (said.By ?? "", said.Comment ?? "");
        if (said.Change == AlarmChange.TakenOutOfService) return new AlarmTakenOutOfService(now, said.Alarm.Key, by, why, said.Alarm.OutOfServiceUntil);
        if (said.Change == AlarmChange.ReturnedToService) return new AlarmReturnedToService(now, said.Alarm.Key, by, said.Comment);
        if (!state.Alarms.TryGetValue(said.Alarm.Key, out var live)) return null;
        return said.Change switch
        {
            AlarmChange.Acknowledged => new AlarmAcknowledged(now, live.Id, by, said.Comment),
            AlarmChange.Shelved => new AlarmShelved(now, live.Id, said.Alarm.ShelvedUntil, by, why, said.Alarm.OneShot),
            AlarmChange.Unshelved => new AlarmUnshelved(now, live.Id, by),
            AlarmChange.Reset => new AlarmReset(now, live.Id, by, said.Comment),
            // It is taken down only when all three are so.
            AlarmChange.MadeSafe => new PlantMadeSafe(now, live.Id, true, true, true, by, said.Comment) { RoomLeft = true, TankDealtWith = true },
            _ => null,
        };
    }
}
