namespace PlantWatch.Storage.Influx;

/// <summary>Where the series go.</summary>
/// <param name="Url">Address of the server.</param>
/// <param name="Database">Database of 1.x and 3.x (<c>db</c> or <c>db/retention</c>), bucket of 2.x.</param>
/// <param name="Organisation">Organisation of 2.x; others do not ask.</param>
/// <param name="Token">Finds the token, or <c>user:password</c> for 1.x; null when none is needed. Asked at each request and kept nowhere.</param>
public sealed record InfluxPlace(Uri Url, string Database, string? Organisation, Func<string?> Token);
