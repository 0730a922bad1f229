using System.Globalization;

namespace PlantWatch.Server.PlantFile;

/// <summary>Days as a plant file writes them: 2026-03-01.</summary>
internal static class Dates
{
    /// <summary>The day; null for anything that is none.</summary>
    public static DateOnly? Find(string? text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;
}
