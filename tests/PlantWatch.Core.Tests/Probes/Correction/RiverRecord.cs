using System.Globalization;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Correction;

/// <summary>
/// A pH probe in a river with its services: Logan River Observatory, published with Jones, Jones and Horsburgh, Environmental Modelling and Software (2022),
/// doi 10.1016/j.envsoft.2022.105364. The data lie outside this repository; the folder is named by the environment variable PLANTWATCH_RIVER_PH.
/// </summary>
internal static class RiverRecord
{
    public const string Variable = "PLANTWATCH_RIVER_PH";

    public static string? Folder => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } folder && Directory.Exists(folder) ? folder : null;

    public sealed record Row(Instant At, double Ph, double Corrected, string Label);

    public static IEnumerable<Row> Rows() =>
        from line in File.ReadLines(Path.Combine(Folder!, "main_street_2019.csv")).Skip(1)
        let f = line.Split(',')
        where f.Length >= 7 && f[4].Length > 0 && f[5].Length > 0
        select new Row(At(f[0]), Number(f[4]), Number(f[5]), f[6]);

    public static IEnumerable<RecordCorrection> Services() =>
        from line in File.ReadLines(Path.Combine(Folder!, "main_street_ph_services.csv")).Skip(1)
        let f = line.Split(',')
        where f.Length == 3
        select Between(At(f[0]), At(f[1]), Number(f[2]));

    public static RecordCorrection Between(Instant from, Instant to, double gap) => new()
    {
        Id = TimeOrderedId.Derive(to, "river"), ProbeId = "river", From = from, To = to, Drift = gap, GapU = 0.02, MadeBy = "R. Example", Why = "services",
    };

    // The logger keeps local standard time, UTC-7.
    public static Instant At(string local) =>
        Instant.From(new DateTimeOffset(DateTime.ParseExact(local, "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture), TimeSpan.FromHours(-7)));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}

/// <summary>A test that reads the river's data; skipped, with the reason, where they are not.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class RiverFactAttribute : FactAttribute
{
    public RiverFactAttribute()
    {
        if (RiverRecord.Folder is null) Skip = $"the river's data are not here: {RiverRecord.Variable} names no folder";
    }
}
