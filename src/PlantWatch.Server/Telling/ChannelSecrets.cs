using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Server.Telling;

/// <summary>Finds the secret of a channel. It is looked for anew each time, so that a changed file needs no restart, and it is kept nowhere.</summary>
internal sealed class ChannelSecrets(PlantWatchOptions options)
{
    /// <summary>The secret; null when there is none.</summary>
    /// <exception cref="IOException">The file is there and cannot be read.</exception>
    public string? Find(ChannelPlan channel) => Find(options.Telling.Secrets, channel.Id, channel.Id);

    /// <summary>The address of a webhook that is kept apart; null when there is none.</summary>
    /// <exception cref="IOException">The file is there and cannot be read.</exception>
    public string? FindAddress(ChannelPlan channel) => Find(options.Telling.Addresses, channel.Id, channel.Id + ".url")?.Trim();

    private string? Find(IDictionary<string, string> settings, string id, string name)
    {
        if (settings.TryGetValue(id, out var secret) || settings.TryGetValue(id.Replace('-', '_'), out secret)) return OrNull(secret);
        if (options.Telling.SecretsFolder is not { Length: > 0 } folder) return null;
        // Ids are of a-z, 0-9, - and _: none leads out of the folder.
        var file = Path.Combine(folder, name);
        return File.Exists(file) ? OrNull(File.ReadAllText(file).Trim('\r', '\n')) : null;
    }

    private static string? OrNull(string text) => text.Length == 0 ? null : text;
}
