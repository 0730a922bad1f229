using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>Where these tests find their files.</summary>
internal static class Folders
{
    public static string DemoPlant { get; } = Repository.PathOf("simulators", "PlantWatch.Demo", "plant.yaml");

    public static string Here { get; } = Repository.PathOf("tests", "PlantWatch.Server.Tests", "PlantFile");
}
