using System.Text.Json;

namespace PlantWatch.Storage.Influx;

/// <summary>One series of an answer to InfluxQL.</summary>
/// <param name="Statement">Which statement of the question it answers, from 0.</param>
/// <param name="Tags">Tags it was grouped by.</param>
/// <param name="Rows">Rows of numbers, time first; null where there is none.</param>
public sealed record InfluxTable(int Statement, IReadOnlyDictionary<string, string> Tags, IReadOnlyList<double?[]> Rows)
{
    /// <summary>Reads an answer.</summary>
    /// <exception cref="StorageException">It is a refusal.</exception>
    internal static async Task<IReadOnlyList<InfluxTable>> ReadAsync(HttpResponseMessage answer, CancellationToken cancellation)
    {
        var body = await answer.Content.ReadAsStreamAsync(cancellation).ConfigureAwait(false);
        await using var _ = body.ConfigureAwait(false);
        if (!answer.IsSuccessStatusCode && answer.Content.Headers.ContentType?.MediaType != "application/json") throw Refused($"{(int)answer.StatusCode} {answer.ReasonPhrase}");
        using var document = await JsonDocument.ParseAsync(body, default, cancellation).ConfigureAwait(false);
        if (ErrorOf(document.RootElement) is { } words) throw Refused($"{(int)answer.StatusCode} {words}");
        var found = new List<InfluxTable>();
        if (!document.RootElement.TryGetProperty("results", out var results)) return found;
        foreach (var result in results.EnumerateArray())
        {
            if (ErrorOf(result) is { } error) throw Refused(error);
            if (!result.TryGetProperty("series", out var all)) continue;
            var statement = result.TryGetProperty("statement_id", out var id) ? id.GetInt32() : 0;
            foreach (var series in all.EnumerateArray()) found.Add(new(statement, TagsOf(series), [.. series.GetProperty("values").EnumerateArray().Select(RowOf)]));
        }

        return found;
    }

    /// <summary>Time of a row in microseconds. A double holds it exactly until the year 2255.</summary>
    internal static long TimeOf(double?[] row) => (long)row[0]!.Value;

    private static StorageException Refused(string words) => new($"InfluxDB: {words}", mayPass: true);

    internal static string? ErrorOf(JsonElement element)
    {
        foreach (var name in (string[])["error", "message"])
            if (element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var said) && said.ValueKind == JsonValueKind.String) return said.GetString();
        return null;
    }

    private static Dictionary<string, string> TagsOf(JsonElement series) =>
        series.TryGetProperty("tags", out var tags) ? tags.EnumerateObject().ToDictionary(t => t.Name, t => t.Value.GetString() ?? "", StringComparer.Ordinal) : [];

    private static double?[] RowOf(JsonElement row) => [.. row.EnumerateArray().Select(cell => cell.ValueKind == JsonValueKind.Number ? cell.GetDouble() : (double?)null)];
}
