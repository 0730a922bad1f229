using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>The month's reports of the demo's laboratory, typed in by the operator when the letter has come. Laboratory, numbers and counts are invented, and inside the plant's limits.</summary>
internal sealed class LabReports(PublicApi api, Action<string> print)
{
    // From the round with the bottles at eight to the letter two days and some hours later: a colony count alone needs two days of warmth (ISO 6222, from memory).
    private static readonly TimeSpan UntilTheLetter = TimeSpan.FromHours(51);

    private static readonly (string Pool, double Colonies)[] Counted = [("main-pool", 4), ("teaching-pool", 11), ("therapy-pool", 7)];

    /// <summary>Enters a report for every pool.</summary>
    public async Task EnterAsync(string by, DateTimeOffset now, CancellationToken cancellation)
    {
        foreach (var (pool, colonies) in Counted)
        {
            var (taken, words) = await api.PutAsync($"laboratory/{Guid.CreateVersion7(now)}", Report(pool, colonies, by, now), cancellation);
            print(taken ? $"{now:dd MMM HH:mm}  {by} enters the laboratory's report on {pool}" : $"report on {pool} refused: {words}");
        }
    }

    private static JsonObject Report(string pool, double colonies, string by, DateTimeOffset now) => new()
    {
        ["poolId"] = pool, ["point"] = "pool", ["place"] = "by the stairs", ["sampledAt"] = (now - UntilTheLetter).UtcDateTime, ["reportedAt"] = (now - TimeSpan.FromHours(3)).UtcDateTime,
        ["laboratory"] = "Water laboratory of the demo", ["sampleNumber"] = $"LB-{now:MMdd}-{pool}", ["by"] = by,
        ["counts"] = new JsonArray(
            Count("colony_count", colonies, "counted", 1), Count("escherichia_coli", 0, "not_detected", 100), Count("pseudomonas_aeruginosa", 0, "not_detected", 100)),
    };

    private static JsonObject Count(string organism, double count, string sense, double millilitres) =>
        new() { ["organism"] = organism, ["count"] = count, ["sense"] = sense, ["millilitres"] = millilitres };
}
