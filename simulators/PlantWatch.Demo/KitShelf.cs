using System.Text.Json.Nodes;

namespace PlantWatch.Demo;

/// <summary>The test kit of the demo: its operator notes the lots that are open when the history begins. Lots are invented; one runs out some days after the demo goes live.</summary>
internal sealed class KitShelf(PublicApi api, Action<string> print)
{
    // Days from the begin of the history to the last printed day.
    private static readonly (string Reagent, string Lot, int Days)[] Open = [("dpd-1", "K-4407", 200), ("dpd-3", "K-4391", 21), ("phenol-red", "K-4120", 310), ("alkalinity", "T-0098", 150), ("calcium", "T-0103", 400)];

    /// <summary>Notes every lot.</summary>
    public async Task NoteAsync(string by, DateTimeOffset now, CancellationToken cancellation)
    {
        foreach (var (reagent, lot, days) in Open)
        {
            var (taken, words) = await api.PostAsync($"reagents/{reagent}/opened", new JsonObject
            {
                ["id"] = Guid.CreateVersion7(now), ["lot"] = lot, ["lastDay"] = now.AddDays(days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
                ["openedAt"] = now.AddDays(-9).UtcDateTime, ["by"] = by,
            }, cancellation);
            if (!taken) print($"lot {lot} of {reagent} refused: {words}");
        }
        print($"{now:dd MMM HH:mm}  {by} notes {Open.Length} reagents of the test kit");
    }
}
