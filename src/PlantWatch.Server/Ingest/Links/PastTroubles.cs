using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>What went wrong and is over, told for a while: a session that was lost, a connection that was taken over.</summary>
internal sealed class PastTroubles
{
    /// <summary>How long it is told. A night shift that comes in the morning finds the rest in the log and in the record.</summary>
    public static readonly TimeSpan Told = TimeSpan.FromHours(12);

    private readonly Lock _gate = new();
    private readonly Dictionary<BrokerFailure, BrokerTrouble> _last = [];

    /// <summary>Takes note; of each failure the newest is kept.</summary>
    public void Note(BrokerTrouble trouble)
    {
        lock (_gate) _last[trouble.Failure] = trouble;
    }

    /// <summary>What is still told.</summary>
    public IReadOnlyList<BrokerTrouble> At(Instant now)
    {
        lock (_gate) return [.. _last.Values.Where(t => now - t.Since <= Told).OrderBy(t => t.Failure)];
    }
}
