using PlantWatch.Server.Loop;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Loop;

/// <summary>A circuit changes its name while its probes go on speaking.</summary>
public sealed class RenamedCircuitTests
{
    [Fact]
    public async Task A_circuit_renamed_in_mid_stream_refuses_nothing_and_keeps_its_history()
    {
        await using var server = await WholeServer.StartAsync();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        var (sent, after) = (0, 0);
        for (; after < 50; sent++)
        {
            if (sent == 50)
                await File.WriteAllTextAsync(Path.Combine(server.Folder, "plant.yaml"), WholeServer.Plant.Replace("- id: hall\n", "- id: baths\n    was: hall\n", StringComparison.Ordinal), patience.Token);
            await SendAsync(server.Host, patience.Token);
            if (server.Host.Find("baths") is not null) after++;
        }

        var sums = await server.SumsAsync();
        Assert.Equal((0L, (long)sent, 0L), (sums.Refused, sums.Stored, sums.InFlight));
        Assert.Null(server.Host.Find("hall"));
    }

    // As a device does: what was not acknowledged is sent again.
    private static async Task SendAsync(PlantHost host, CancellationToken cancellation)
    {
        while (true)
        {
            try
            {
                await await host.MessageAsync(new IncomingMessage("hall/ph", "7.4"u8.ToArray(), false, "feed", 0, false), cancellation);
                return;
            }
            catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
            {
                await Task.Yield();
            }
        }
    }
}
