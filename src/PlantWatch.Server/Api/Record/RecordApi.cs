using System.Text;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>What was refused, with its bytes and the reason.</summary>
internal static class RecordApi
{
    private const int ShownBytes = 200;

    public static void MapRecord(this RouteGroupBuilder api)
    {
        MapForgotten(api);
        api.MapGet("/refusals", async (int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        {
            var take = Math.Clamp(limit ?? 100, 1, 1000);
            var all = new List<RefusalView>();
            foreach (var worker in host.Everything.ToArray())
                foreach (var refusal in await store.RefusalsAsync(worker.Partition, take, cancellation))
                    all.Add(new RefusalView(
                        refusal.Id, refusal.ReceivedAt, worker.Partition.Value, refusal.Topic, Shown(refusal.Payload.Span), refusal.Payload.Length, refusal.Reason,
                        Reader.Words.Say(refusal)));
            return Answers.Ok(all.OrderByDescending(r => r.ReceivedAt).Take(take).ToArray());
        }).Produces<IReadOnlyList<RefusalView>>();
    }

    private static void MapForgotten(RouteGroupBuilder api) =>
        api.MapGet("/refusals/forgotten", async (PlantHost host, IRecordStore store, CancellationToken cancellation) =>
        {
            var all = new List<ForgottenView>();
            foreach (var worker in host.Everything.ToArray())
                foreach (var (reason, count) in await store.ForgottenRefusalsAsync(worker.Partition, cancellation))
                    all.Add(new ForgottenView(worker.Partition.Value, reason, count));
            return Answers.Ok(all.OrderByDescending(f => f.Count).ToArray());
        }).Produces<IReadOnlyList<ForgottenView>>();

    // Foreign bytes are shown, never interpreted: what is no printable text becomes a dot, what is no text at all is shown as bytes.
    private static string Shown(ReadOnlySpan<byte> payload)
    {
        if (!ForeignBytes.IsText(payload)) return ForeignBytes.Hex(payload);
        var text = new StringBuilder();
        foreach (var rune in Encoding.UTF8.GetString(payload[..Math.Min(ShownBytes, payload.Length)]).EnumerateRunes())
            text.Append(Rune.IsControl(rune) ? "." : rune.ToString());
        return text.ToString();
    }
}
