using PlantWatch.Core.Plans;
using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Hosting;

/// <summary>A copy of the plant file that was last in force, so that a start with a broken one leaves the old one in force, as a reload does.</summary>
internal static class LastGoodPlan
{
    /// <summary>Keeps the file as the last good one, and the plant's own limit packs with it. The copy is renamed into place, so it is never half there.</summary>
    public static void Keep(PlantWatchOptions options)
    {
        KeepPacks(PlantFileSource.PacksBeside(options.PlantFile), PacksIn(options.Data));
        var fresh = PathIn(options.Data) + ".new";
        File.Copy(options.PlantFile, fresh, overwrite: true);
        File.Move(fresh, PathIn(options.Data), overwrite: true);
    }

    /// <summary>The plan that was last in force; null when there never was one.</summary>
    public static PlantPlan? Find(PlantWatchOptions options) => Source(options.Data).Understand().Plan;

    /// <summary>The copy in a data folder, with its packs.</summary>
    public static PlantFileSource Source(string data) => PlantFileSource.Read(PathIn(data), PacksIn(data));

    /// <summary>Where it lies in a data folder.</summary>
    public static string PathIn(string data) => Path.Combine(data, "plant.in-force.yaml");

    private static string PacksIn(string data) => Path.Combine(data, "plant.in-force.packs");

    private static void KeepPacks(string from, string to)
    {
        string[] files = Directory.Exists(from) ? [.. OwnPackFiles.Paths(from)] : [];
        if (files.Length == 0 && !Directory.Exists(to)) return;
        var fresh = to + ".new";
        if (Directory.Exists(fresh)) Directory.Delete(fresh, recursive: true);
        Directory.CreateDirectory(fresh);
        foreach (var file in files) File.Copy(file, Path.Combine(fresh, Path.GetFileName(file)));
        if (Directory.Exists(to)) Directory.Delete(to, recursive: true);
        Directory.Move(fresh, to);
    }
}
