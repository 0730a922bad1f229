using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>What is asked of a replay of the plant's own record.</summary>
/// <param name="From">Start of the time that is compared, included.</param>
/// <param name="To">Its end, excluded.</param>
/// <param name="Data">Folder of the record.</param>
/// <param name="Plant">The plant file to replay under; null for the one in force.</param>
/// <param name="Out">Where the tables go.</param>
internal sealed record StoreReplayRequest(Instant From, Instant To, string Data, string? Plant, string Out)
{
    // The clock ticks through all of it: a year typed wrong must not keep it ticking for centuries.
    private static readonly TimeSpan Longest = TimeSpan.FromDays(3660);

    /// <summary>Reads the words of the command line; null when they are not understood.</summary>
    public static StoreReplayRequest? Of(IReadOnlyList<string> words)
    {
        var given = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i + 1 < words.Count; i += 2)
            if (!given.TryAdd(words[i], words[i + 1])) return null;
        if (words.Count % 2 != 0 || given.Keys.Except(["--from", "--to", "--data", "--plant", "--out"]).Any()) return null;
        return Instant.TryParse(given.GetValueOrDefault("--from"), out var from) && Instant.TryParse(given.GetValueOrDefault("--to"), out var to) && IsReplayable(from, to) && given.TryGetValue("--out", out var tables)
            ? new(from, to, given.GetValueOrDefault("--data") ?? new PlantWatchOptions().Data, given.GetValueOrDefault("--plant"), tables) : null;
    }

    private static bool IsReplayable(Instant from, Instant to) => from < to && to - from <= Longest && Times.IsReckonable(from) && Times.IsReckonable(to);
}
