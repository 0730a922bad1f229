using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>The short form of tests/campaign: the real server in a process of its own, mosquitto's own programs around it, SIGKILL at 2000 messages a second.</summary>
public sealed class KilledInMidStreamTests
{
    [PeerFact("mosquitto", "mosquitto_pub", "stdbuf")]
    public Task Behind_an_external_broker_every_acknowledged_number_is_in_the_record_once() => PromiseIsKept(BrokerMode.External);

    [PeerFact("mosquitto_pub", "stdbuf")]
    public Task With_the_embedded_broker_every_acknowledged_number_is_in_the_record_once() => PromiseIsKept(BrokerMode.Embedded);

    private static async Task PromiseIsKept(BrokerMode mode)
    {
        var options = new CampaignOptions { Mode = mode, Kills = 2, Rate = 2000, OddOnesIn = 0, Life = (TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(2)) };
        await using var one = new Try(options);
        var findings = await one.RunAsync();
        // One broken sentence says more than the first of nine numbers.
        Assert.Empty(findings.Broken());
        Assert.Equal(findings.Said, findings.Rows);
        Assert.True(findings.Said > options.Rate, $"only {findings.Said} numbers were said");
        Directory.Delete(options.Folder, recursive: true);
    }
}
