using PlantWatch.Benchmarks.Kit;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>How old a number is when the page gets it.</summary>
internal sealed class PublishToPage : IBenchmark
{
    public string Name => "page";

    public string Title => "Publish to page at 50 readings a second";

    public string Method =>
        "Ten devices at 5 Hz on the embedded broker, QoS 1; a SignalR client as the page has it. Milliseconds from the device's publish to the message in the client. "
        + "Readings leave in beats of 100 ms, so 50 ms of the median are intended. Baseline: the PUBACK of the same publishes, which is the commit's share.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        await using var server = await ServerUnderTest.StartAsync(bench.NewFolder("server"), Plants.File(10, only: "conductivity"));
        await using var page = await PageWatch.ConnectAsync(server.Address);
        await using var load = await PubackLoad.ConnectAsync(server.MqttPort, 10);
        var devices = new PacedDevices(load, 10, probesEach: 1, aSecondEach: 5);
        await devices.RunAsync(TimeSpan.FromSeconds(2), page.Note);
        page.Forget();
        await devices.RunAsync(TimeSpan.FromSeconds(bench.Of(30, 5)), page.Note);
        await Task.Delay(300);
        var (seen, acknowledged) = (page.Milliseconds, devices.Acknowledged);
        return [
            new Row("SignalR client, ms", Say.Tails(seen), $"PUBACK: {Say.Tails(acknowledged)}", Say.Ratio(Percentile.Median(seen) / Percentile.Median(acknowledged)), "p99 ≤ 250 ms"),
            new Row("Readings seen of those published", $"{seen.Count} of {acknowledged.Count}; the rest were overtaken by a newer one of their series within a beat"),
        ];
    }
}
