using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>Times in addresses.</summary>
internal static class Times
{
    /// <summary>A range whose ends may be left out; an end that is no time is open.</summary>
    public static (Instant From, Instant To) Open(string? from, string? to) => (Or(from), Or(to));

    private static Instant Or(string? text) => Instant.TryParse(text, out var instant) ? instant : Instant.Never;
}
