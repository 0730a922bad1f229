using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Ingest.Links;

/// <summary>Something that is wrong with the MQTT side, or was a short while ago.</summary>
/// <param name="Failure">What.</param>
/// <param name="Since">Since when; of what is over, when it last happened.</param>
/// <param name="Address">Of the broker.</param>
/// <param name="Detail">What the sentence needs: a name, a date, a code. Free of secrets.</param>
internal sealed record BrokerTrouble(BrokerFailure Failure, Instant Since, string Address, string Detail)
{
    /// <summary>Topics or topic filters that it is about, each as it is to be read.</summary>
    public IReadOnlyList<string> Topics { get; init; } = [];
}
