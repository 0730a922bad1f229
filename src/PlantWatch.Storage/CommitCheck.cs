namespace PlantWatch.Storage;

/// <summary>Refuses a programmer's mistake before anything is written.</summary>
public static class CommitCheck
{
    /// <exception cref="ArgumentException">A reading has no number: Core lets none through.</exception>
    public static void Throw(IReadOnlyList<Commit> commits)
    {
        ArgumentNullException.ThrowIfNull(commits);
        foreach (var commit in commits)
            foreach (ref readonly var reading in commit.Result.Readings.AsSpan())
                if (!double.IsFinite(reading.Raw)) throw new ArgumentException($"{reading.Series} at {reading.MeasuredAt}: {reading.Raw} is not a number to store", nameof(commits));
    }
}
