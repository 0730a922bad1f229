using System.Text.RegularExpressions;

namespace PlantWatch.Server.Tests.House;

/// <summary>The folders of Core point one way: who stands lower knows nothing of who stands higher.</summary>
public sealed partial class FoldersOfCoreTests
{
    private static readonly string[] FromTheGroundUp =
        ["Quantities", "Statistics", "Reasons", "Plans", "Chemistry", "Readings", "Probes", "Dosing", "Stock", "Maintenance", "Rules", "Alarms", "Plant"];

    [Fact]
    public void Every_folder_has_its_place()
    {
        var folders = Repository.Sources("src/PlantWatch.Core").Select(FolderOf).Distinct();
        Assert.Equal(FromTheGroundUp.Order(), folders.Order());
    }

    [Fact]
    public void No_folder_knows_one_above_it()
    {
        var upward = from file in Repository.Sources("src/PlantWatch.Core")
                     let place = Array.IndexOf(FromTheGroundUp, FolderOf(file))
                     from Match name in Named().Matches(File.ReadAllText(file))
                     let other = Array.IndexOf(FromTheGroundUp, name.Groups[1].Value)
                     where other > place
                     select $"{FolderOf(file)}/{Path.GetFileName(file)} knows {name.Groups[1].Value}";
        Findings.None(upward.Distinct(), "points up in Core");
    }

    private static string FolderOf(string file) => Path.GetRelativePath(Repository.PathOf("src/PlantWatch.Core"), file).Split(Path.DirectorySeparatorChar)[0];

    // A using, or a name written out in full; the file's own namespace is its own folder.
    [GeneratedRegex(@"PlantWatch\.Core\.(\w+)")]
    private static partial Regex Named();
}
