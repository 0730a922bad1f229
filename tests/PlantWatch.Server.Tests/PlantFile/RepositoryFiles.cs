namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>Finds files of the repository from wherever the tests were built to.</summary>
internal static class RepositoryFiles
{
    public static string Root { get; } = FindRoot();

    public static string DemoPlant => Path.Combine(Root, "simulators", "PlantWatch.Demo", "plant.yaml");

    public static string Here => Path.Combine(Root, "tests", "PlantWatch.Server.Tests", "PlantFile");

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PlantWatch.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
