using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest.Links;

namespace PlantWatch.Server.Ingest;

/// <summary>How the MQTT side stands, for the page and the health endpoint.</summary>
internal interface IBrokerStatus
{
    /// <summary>The state now.</summary>
    BrokerState State { get; }

    /// <summary>What is wrong now, and what went wrong a short while ago, the present first.</summary>
    IReadOnlyList<BrokerTrouble> Troubles { get; }
}

/// <summary>A state of the MQTT side. The words for people are looked up by <paramref name="Word"/>.</summary>
/// <param name="Kind">Embedded or external.</param>
/// <param name="Word">What holds.</param>
/// <param name="Since">Since when.</param>
/// <param name="Detail">Address, or what went wrong; for people, free of secrets.</param>
internal sealed record BrokerState(BrokerMode Kind, BrokerWord Word, Instant Since, string Detail)
{
    /// <summary>What keeps it from being well; null when nothing does.</summary>
    public BrokerTrouble? Trouble { get; init; }
}

/// <summary>What can hold of a broker. The default is <see cref="Stopped"/>.</summary>
internal enum BrokerWord
{
    /// <summary>Not started yet, or stopped on purpose.</summary>
    Stopped = 0,
    /// <summary>The embedded broker accepts connections.</summary>
    Listening,
    /// <summary>On the way to an external broker.</summary>
    Connecting,
    /// <summary>Connected and subscribed: readings arrive.</summary>
    Connected,
    /// <summary>Connected, but the broker refuses some of the topics.</summary>
    PartlySubscribed,
    /// <summary>The broker answered and refused us: name, password or rights.</summary>
    Refused,
    /// <summary>The broker does not answer.</summary>
    Unreachable,
    /// <summary>The broker answered, but what was received could not be committed; it will send again.</summary>
    NotCommitting,
}
