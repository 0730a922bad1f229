using PlantWatch.Simulator.Wire;

namespace PlantWatch.Demo;

/// <summary>The closing sums after the history, as the server states them and as the gateways saw them.</summary>
internal static class Closing
{
    /// <summary>The sums in words.</summary>
    public static async Task<string> WordsAsync(PublicApi api, Gateways gateways, TimeSpan took, CancellationToken cancellation)
    {
        var ledger = (await api.GetAsync("health-view", cancellation))?["ledger"];
        long Sum(string name) => ledger?[name]?.GetValue<long>() ?? -1;
        return $"""
            History in after {took.TotalSeconds:0} s: {gateways.Acknowledged} messages acknowledged over {gateways.Count} connections, {gateways.Retries} sent again.
              received {Sum("received")} = stored {Sum("stored")} + duplicates {Sum("duplicates")} + refused {Sum("refused")} + in flight {Sum("inFlight")}
            """;
    }
}
