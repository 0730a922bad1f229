using PlantWatch.Core.Plant;

namespace PlantWatch.Server.History;

/// <summary>Folds a batch as a whole, and event by event where a standing changes in it: what is written then is the state of that moment and not of the end of the batch. How events are cut changes nothing else.</summary>
internal static class FineSteps
{
    /// <summary>Folds; each result is handed over with its state in it, in order.</summary>
    public static CircuitState Run(CircuitState state, IReadOnlyList<PlantEvent> batch, Action<StepResult> take)
    {
        var whole = Step.Run(state, batch);
        if (batch.Count == 1 || !whole.Entries.Any(e => e.Body is StandingEntry))
        {
            take(whole);
            return whole.Next;
        }

        foreach (var happening in batch)
        {
            var one = Step.Run(state, [happening]);
            state = one.Next;
            take(one);
        }

        return state;
    }
}
