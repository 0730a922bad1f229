using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>The engineer of the demo confirms the picked limit pack on the first day, every row that a pool waits for.</summary>
internal sealed class LimitDesk(PublicApi api, Action<string> print)
{
    private const string Engineer = "M. Okafor";
    private const string Document = "Guidelines for safe recreational water environments, volume 2, 2006: copy in the plant room";

    private static readonly string[] Circuits = ["main", "therapy"];

    /// <summary>Confirms all rows that concern a pool.</summary>
    public async Task ConfirmAsync(CancellationToken cancellation)
    {
        foreach (var circuit in Circuits)
        {
            var view = await api.GetAsync($"circuits/{circuit}/limits", cancellation);
            var waiting = Waiting(view);
            var taken = 0;
            foreach (var row in waiting)
                if (await ConfirmAsync(circuit, row, cancellation)) taken++;
            print($"{Engineer}: {taken} of {waiting.Length} rows of the limit pack confirmed for {circuit}");
        }
    }

    private static JsonNode[] Waiting(JsonNode? view)
    {
        var ids = view?["pools"]?.AsArray().SelectMany(p => p!["unconfirmed"]!.AsArray()).Select(r => r!.GetValue<string>()).ToHashSet() ?? [];
        return [.. view?["rows"]?.AsArray().OfType<JsonNode>().Where(r => ids.Contains(r["id"]!.GetValue<string>())) ?? []];
    }

    private async Task<bool> ConfirmAsync(string circuit, JsonNode row, CancellationToken cancellation)
    {
        var (taken, words) = await api.PostAsync($"circuits/{circuit}/limits/{row["id"]}/confirm", new JsonObject
        {
            ["digest"] = row["digest"]!.GetValue<string>(), ["by"] = Engineer, ["document"] = Document,
        }, cancellation);
        if (!taken) print($"row {row["id"]} refused: {words}");
        return taken;
    }
}
