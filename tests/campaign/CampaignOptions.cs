using PlantWatch.Server;

namespace PlantWatch.Campaign;

/// <summary>One try: how the server is hurt and how fast it is fed.</summary>
internal sealed record CampaignOptions
{
    public BrokerMode Mode { get; init; } = BrokerMode.External;

    /// <summary>How often the server is killed.</summary>
    public int Kills { get; init; } = 20;

    /// <summary>Messages a second, over all devices.</summary>
    public int Rate { get; init; } = 2000;

    /// <summary>Devices, each with a connection and a probe of its own.</summary>
    public int Devices { get; init; } = 20;

    /// <summary>Of how many kills one falls into a start and one into an orderly stop; 0 for none. The others come in mid-stream.</summary>
    public int OddOnesIn { get; init; } = 5;

    /// <summary>How often the very first start, that makes the record, is killed before the try begins. Each time the next start must come through.</summary>
    public int Births { get; init; }

    /// <summary>Whether a kill in mid-stream hits the external broker too. What it had acknowledged and not yet written is lost then, and that is counted, not judged.</summary>
    public bool BrokerToo { get; init; }

    /// <summary>Whether a kill in mid-stream waits until no more than ten seconds of numbers wait at the broker. Without, the queue may grow from kill to kill.</summary>
    public bool CatchesUp { get; init; } = true;

    /// <summary>Shortest and longest time between "ready" and a kill in mid-stream.</summary>
    public (TimeSpan Least, TimeSpan Most) Life { get; init; } = (TimeSpan.FromSeconds(0.2), TimeSpan.FromSeconds(4));

    /// <summary>The moments of the kills follow from it.</summary>
    public int Seed { get; init; } = 1;

    /// <summary>Where a record, its logs and the broker's queue are made; removed after a clean try.</summary>
    public string Folder { get; init; } = Path.Combine(Path.GetTempPath(), $"plantwatch-campaign-{Guid.NewGuid():N}");
}
