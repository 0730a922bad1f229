using System.Xml.Linq;

namespace PlantWatch.Server.Tests.House;

/// <summary>The house as drawn: who may refer to whom, and what stands at the top of the repository.</summary>
public sealed class DrawingOfTheHouseTests
{
    [Theory]
    [InlineData("src/PlantWatch.Core", "")]
    [InlineData("src/PlantWatch.Storage", "PlantWatch.Core")]
    [InlineData("src/PlantWatch.Server", "PlantWatch.Core PlantWatch.Storage")]
    // Truth and estimate must not share a formula: the simulator has its own physics.
    [InlineData("simulators/PlantWatch.Simulator", "")]
    public void Each_project_refers_only_to_whom_the_drawing_allows(string project, string allowed)
    {
        var references = ProjectsReferredToBy(project);
        Assert.Equal(allowed.Split(' ', StringSplitOptions.RemoveEmptyEntries), references);
    }

    [Theory]
    [InlineData("PlantWatch.Core.dll", "")]
    [InlineData("PlantWatch.Storage.dll", "PlantWatch.Core")]
    [InlineData("PlantWatch.Server.dll", "PlantWatch.Core PlantWatch.Storage")]
    public void What_was_compiled_agrees_with_the_drawing(string assembly, string allowed)
    {
        var ours = Assemblies.ReferencesOf(Path.Combine(AppContext.BaseDirectory, assembly)).Where(n => n.StartsWith("PlantWatch.", StringComparison.Ordinal));
        Assert.Empty(ours.Except(allowed.Split(' ')));
    }

    [Fact]
    public void Core_has_no_package() => Assert.Empty(Items("src/PlantWatch.Core", "PackageReference"));

    [Fact]
    public void Only_storage_knows_the_database()
    {
        var knowing = Repository.Named("*.csproj")
            .Where(p => File.ReadAllText(p).Contains("Include=\"Microsoft.Data.Sqlite\"", StringComparison.Ordinal))
            .Select(p => Path.GetFileNameWithoutExtension(p))
            .Where(p => !p.EndsWith(".Tests", StringComparison.Ordinal));
        Assert.Equal(["PlantWatch.Storage"], knowing);
    }

    [Fact]
    public void The_top_of_the_repository_holds_what_it_should_and_nothing_else()
    {
        string[] allowed =
        [
            "README.md", "DEVELOPERS.md", "PlantWatch.sln", "docker-compose.yml", "global.json", "Directory.Build.props", "Directory.Packages.props",
            "src", "simulators", "tests", "docs", "grafana-free-dashboards",
            "data", "logs", "bin", "obj", "TestResults", // made by running and building, never checked in
        ];
        var names = Directory.EnumerateFileSystemEntries(Repository.Root).Select(p => Path.GetFileName(p)).Where(n => !n.StartsWith('.'));
        Findings.None(names.Except(allowed), "not drawn at the top of the repository");
    }

    private static string[] ProjectsReferredToBy(string project) =>
        [.. Items(project, "ProjectReference").Select(p => Path.GetFileNameWithoutExtension(p.Replace('\\', '/'))).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Items(string project, string kind)
    {
        var file = Repository.PathOf(project, Path.GetFileName(project) + ".csproj");
        return XDocument.Load(file).Descendants(kind).Select(e => e.Attribute("Include")!.Value);
    }
}
