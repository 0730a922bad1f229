namespace PlantWatch.Server.Telling;

/// <summary>What telling people needs and a plant file must not hold.</summary>
public sealed class TellingOptions
{
    /// <summary>Passwords and keys by channel id; where an id has a hyphen an underscore may stand for it, as names in the environment ask. For a mail server the password, for a webhook the key that requests are signed with.</summary>
    public IDictionary<string, string> Secrets { get; set; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>Addresses of webhooks that carry a token, by channel id; they are asked for where the plant file says that they are kept apart.</summary>
    public IDictionary<string, string> Addresses { get; set; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>A folder with a file for each channel, named by its id, that holds nothing but the secret; looked into where <see cref="Secrets"/> has none; an address stands in a file of the id with <c>.url</c> behind it.</summary>
    public string? SecretsFolder { get; set; }
}
