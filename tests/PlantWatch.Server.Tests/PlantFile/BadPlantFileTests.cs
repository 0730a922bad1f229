using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>A folder of files that are wrong in one way each; beside every one stand the errors it must give, word for word.</summary>
public sealed class BadPlantFileTests
{
    private static readonly string Folder = Path.Combine(Folders.Here, "bad");

    public static TheoryData<string> Stories => new(Names(".yaml"));

    [Theory]
    [MemberData(nameof(Stories))]
    public void A_bad_file_gives_the_errors_that_stand_beside_it(string story)
    {
        var result = PlantFileReader.Read(File.ReadAllText(Path.Combine(Folder, story + ".yaml")));

        Assert.Null(result.Plan);
        var expected = File.ReadAllText(Path.Combine(Folder, story + ".errors.txt"));
        Assert.Equal(expected, string.Concat(result.Errors.Select(error => error + "\n")));
    }

    [Fact]
    public void Every_list_of_expected_errors_has_its_file()
    {
        Assert.NotEmpty(Names(".yaml"));
        Assert.Equal(Names(".yaml"), Names(".errors.txt"));
    }

    private static IEnumerable<string> Names(string ending) =>
        Directory.GetFiles(Folder, "*" + ending).Select(path => Path.GetFileName(path)[..^ending.Length]).Order(StringComparer.Ordinal);
}
