using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Hosting;

/// <summary>A copy of the plant file that was last in force, so that a start with a broken one leaves the old one in force, as a reload does.</summary>
internal static class LastGoodPlan
{
    /// <summary>Keeps the file as the last good one. The copy is renamed into place, so it is never half there.</summary>
    public static void Keep(PlantWatchOptions options)
    {
        var fresh = PathIn(options.Data) + ".new";
        File.Copy(options.PlantFile, fresh, overwrite: true);
        File.Move(fresh, PathIn(options.Data), overwrite: true);
    }

    /// <summary>The plan that was last in force; null when there never was one.</summary>
    public static PlantPlan? Find(PlantWatchOptions options) => PlantFileSource.Read(PathIn(options.Data)).Understand().Plan;

    /// <summary>Where it lies in a data folder.</summary>
    public static string PathIn(string data) => Path.Combine(data, "plant.in-force.yaml");
}
