using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Series;

/// <summary>An InfluxDB server that gets the series beside the record. Without an address there is none.</summary>
public sealed class InfluxOptions
{
    /// <summary>Address, such as http://127.0.0.1:8086; left out, no series leave the record.</summary>
    public string? Url { get; set; }

    /// <summary>Database of 1.x and 3.x, with a retention policy as <c>db/policy</c> where one is meant; bucket of 2.x. It must be there.</summary>
    public string Database { get; set; } = "plantwatch";

    /// <summary>Organisation of 2.x.</summary>
    public string? Organisation { get; set; }

    /// <summary>Token that may write and read the database; for 1.x <c>user:password</c>.</summary>
    public string? Token { get; set; }

    /// <summary>A file that holds nothing but the token; read at each request, so that a changed one needs no restart.</summary>
    public string? TokenFile { get; set; }

    /// <summary>Where that is; null when nobody asked for it.</summary>
    /// <exception cref="IOException">The address is none.</exception>
    internal InfluxPlace? Place => Url is not { Length: > 0 } ? null
        : Uri.TryCreate(Url, UriKind.Absolute, out var url) && url.Scheme is "http" or "https" ? new(url, Database, Organisation, FindToken)
        : throw new IOException("PlantWatch__Influx__Url is no http address");

    private string? FindToken()
    {
        if (Token is { Length: > 0 }) return Token;
        return TokenFile is { Length: > 0 } && File.Exists(TokenFile) ? File.ReadAllText(TokenFile).Trim() : null;
    }
}
