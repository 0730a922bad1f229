using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Plant.Fold;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Plant;

/// <summary>The whole of PlantWatch as one pure function: what a circuit becomes when things happen to it.</summary>
/// <remarks>
/// Same state and same events, same result, to the byte: live, from a snapshot or from zero. How events are cut into batches
/// changes nothing, except that the shell closes a batch with a tick, and that tick is an event like any other.
/// </remarks>
public static class Step
{
    /// <summary>Folds a batch of events into a state.</summary>
    /// <param name="state">The circuit before.</param>
    /// <param name="batch">What happened, in order of receipt.</param>
    /// <returns>The circuit after, and all that must be committed and told.</returns>
    public static StepResult Run(CircuitState state, IReadOnlyList<PlantEvent> batch)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(batch);
        var draft = new Draft(state, batch.Count);
        var items = new List<DecodedItem>();
        var outcomes = new Outcome[batch.Count];
        for (var i = 0; i < batch.Count; i++)
        {
            var before = draft.EntryCount;
            outcomes[i] = One(draft, batch[i], items);
            ExceptionFold.Follow(draft, batch[i], before);
            draft.Alarms.Group();
        }

        return draft.Close(outcomes);
    }

    private static Outcome One(Draft draft, PlantEvent happening, List<DecodedItem> items)
    {
        switch (happening)
        {
            case MessageArrived message:
                MessageFold.Fold(draft, message, items);
                return Outcome.Done.Instance;
            case ClockTicked tick:
                TickFold.Fold(draft, tick.At);
                return Outcome.Done.Instance;
            case CheckEntered check:
                return CheckFold.Enter(draft, check);
            case CalibrationProposed said:
                return CalibrationFold.Propose(draft, said);
            case CalibrationDecided said:
                return CalibrationFold.Decide(draft, said);
            case CalibrationReviewed said:
                return ReviewFold.Review(draft, said);
            case ProbeWorkBegun said:
                return WorkFold.Begin(draft, said);
            case ProbeWorkEnded said:
                return WorkFold.End(draft, said);
            case CorrectionMade said:
                return CorrectionFold.Make(draft, said);
            case CorrectionWithdrawn said:
                return CorrectionFold.Withdraw(draft, said);
            case AlarmAcknowledged said:
                return draft.Alarms.Acknowledge(said);
            case AlarmShelved said:
                return draft.Alarms.Shelve(said);
            case AlarmUnshelved said:
                return draft.Alarms.Unshelve(said);
            case AlarmReset said:
                return draft.Alarms.Reset(said);
            case PlantMadeSafe said:
                return MakeSafe(draft, said);
            case AlarmTakenOutOfService said:
                return draft.Alarms.TakeOut(said);
            case AlarmReturnedToService said:
                return draft.Alarms.Return(said);
            case JobWritten said:
                return JobFold.Write(draft, said);
            case IncidentDeclared said:
                return IncidentFold.Declare(draft, said);
            case IncidentNoted said:
                return IncidentFold.Note(draft, said);
            case IncidentClosed said:
                return IncidentFold.Close(draft, said);
            case DoseGiven said:
                return DoseFold.Give(draft, said);
            case PackRowConfirmed said:
                return PackFold.Confirm(draft, said);
            case PackRowRevoked said:
                return PackFold.Revoke(draft, said);
            case LabResultEntered said:
                return LabFold.Enter(draft, said);
            case LabResultClosed said:
                return LabFold.Close(draft, said);
            case ChannelStateSaid said:
                return ChannelFold.Say(draft, said);
            case PoolStateSet said:
                return OperationFold.Set(draft, said);
            case ExceptionNoted said:
                return ExceptionFold.Note(draft, said);
            case FilterWashed said:
                return FilterFold.Wash(draft, said);
            case ReagentOpened said:
                return ReagentFold.Note(draft, said);
            case InstrumentVerified said:
                return InstrumentFold.Verify(draft, said);
            case PlantRoundDone said:
                return RoundFold.Walk(draft, said);
            case StockMoved said:
                return StockFold.Write(draft, said);
            case BathersCounted said:
                return BathersFold.Count(draft, said);
            case StockOutlookSaid said:
                return OutlookFold.Say(draft, said);
            case HandoverWritten said:
                return HandoverFold.Write(draft, said);
            case HandoverSigned said:
                return HandoverFold.Sign(draft, said);
            case NoteWritten said:
                return NoteFold.Write(draft, said);
            case BackwashBegun said:
                return BackwashFold.Begin(draft, said);
            case BackwashEnded said:
                return BackwashFold.End(draft, said);
            case PlanLoaded said:
                return PlanFold.Load(draft, said);
            case SessionLost said:
                return GapFold.SessionLost(draft, said);
            default:
                throw new ArgumentException($"{happening.GetType().Name} has no fold");
        }
    }

    private static Outcome MakeSafe(Draft draft, PlantMadeSafe said)
    {
        var outcome = draft.Alarms.MakeSafe(said);
        TankFold.MadeSafe(draft, said.At);
        return outcome;
    }
}
