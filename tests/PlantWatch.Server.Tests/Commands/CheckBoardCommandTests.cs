using PlantWatch.Server.Commands;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.PlantFile;

namespace PlantWatch.Server.Tests.Commands;

public sealed class CheckBoardCommandTests
{
    private static readonly string[] Shipped = Directory.GetFiles(Repository.PathOf("grafana-free-dashboards"), "*.board.yaml");

    [Fact]
    public void Good_boards_are_summed_up_and_give_0()
    {
        var (code, said) = Run(["check-board", "--plant", Folders.DemoPlant, .. Shipped]);
        Assert.Equal(0, code);
        Assert.Contains("Live chemistry, for the engineer, ", said, StringComparison.Ordinal);
        Assert.EndsWith("no errors" + Environment.NewLine, said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_broken_board_is_listed_with_file_line_and_key_and_gives_1()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("round.board.yaml", [.. "title: Round\nfor: operator\ntiles:\n  - show: due\n    most: 2\n"u8]);
        var (code, said) = Run(["check-board", Shipped[0], path]);
        Assert.Equal(1, code);
        Assert.Contains($"{path}, line 5, tiles[0].most: says nothing for due; it belongs to alarms, jobs, notes", said, StringComparison.Ordinal);
        Assert.EndsWith("1 error" + Environment.NewLine, said, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_plant_has_not_counts_only_where_the_plant_is_given()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("round.board.yaml", [.. "title: Round\nfor: operator\ntiles:\n  - show: strip\n    of: [main-hp]\n"u8]);
        Assert.Equal(0, Run(["check-board", path]).Code);
        var (code, said) = Run(["check-board", "--plant", Folders.DemoPlant, path]);
        Assert.Equal(1, code);
        Assert.StartsWith($"{path}, line 5, tiles[0].of: the plant file has no probe 'main-hp'; did you mean 'main-ph'?", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_or_is_no_board_by_its_name_is_an_error_in_words()
    {
        var (code, said) = Run(["check-board", "no-such.board.yaml", Folders.DemoPlant]);
        Assert.Equal(1, code);
        Assert.Contains("no-such.board.yaml, line 1: the file cannot be read: ", said, StringComparison.Ordinal);
        Assert.Contains("the name of the file is no address", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check-board")]
    [InlineData("check-board", "--plant")]
    [InlineData("check-board", "--plant", "plant.yaml")]
    public void Asked_wrongly_it_says_how_and_gives_2(params string[] words) => Assert.Equal(2, Run(words).Code);

    private static (int Code, string Said) Run(string[] words)
    {
        var output = new StringWriter();
        var code = CommandLine.Run(words, output, output);
        return (code!.Value, output.ToString());
    }
}
