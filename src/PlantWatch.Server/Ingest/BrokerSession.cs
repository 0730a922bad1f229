using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest;

/// <summary>Our session at an external broker, as far as we know. It outlives this process, as the broker's side of it does.</summary>
/// <param name="Broker">Address and client id that it belongs to.</param>
/// <param name="Name">Identifies its packets: the broker counts them anew in a new session, so a new session has a new name.</param>
/// <param name="LastHeard">When it was last known to be alive.</param>
/// <param name="Filters">Topic filters that may be subscribed in it.</param>
/// <param name="Lost">A session that the broker lost and that the circuits do not know of yet; null when all is told.</param>
internal sealed record BrokerSession(string Broker, string Name, Instant LastHeard, IReadOnlyList<string> Filters, LostSession? Lost)
{
    /// <summary>What holds after a broker answered a connect.</summary>
    /// <param name="known">What was known before; null for nothing.</param>
    /// <param name="broker">Address and client id.</param>
    /// <param name="present">Session Present of the CONNACK.</param>
    /// <param name="now">When.</param>
    /// <param name="newName">A name for a new session.</param>
    public static BrokerSession Resume(BrokerSession? known, string broker, bool present, Instant now, string newName)
    {
        // Never been there, or no longer known: nothing can be said to be lost.
        if (known is null || known.Broker != broker) return new(broker, newName, now, [], null);
        if (present) return known with { LastHeard = now };
        // A loss that is still untold began earlier.
        return new(broker, newName, now, [], known.Lost ?? new(known.Name, known.LastHeard));
    }
}

/// <summary>A session whose queue is gone.</summary>
/// <param name="Name">Which.</param>
/// <param name="Since">What the broker queued from here on is lost.</param>
internal sealed record LostSession(string Name, Instant Since);
