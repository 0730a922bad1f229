using System.Text.Json.Nodes;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Api;
using PlantWatch.Server.Boards;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.PlantFile;

namespace PlantWatch.Server.Tests.Boards;

/// <summary>The boards that ship, and what is said of bad ones: by the same means and in the same words as of a plant file.</summary>
public sealed class BoardTests
{
    private static readonly PlantPlan Plant = PlantFileReader.Read(File.ReadAllText(Folders.DemoPlant)).Plan!;

    private static readonly IReadOnlyList<string> Files =
        [.. Directory.GetFiles(Repository.PathOf("grafana-free-dashboards"), "*.board.yaml").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Shipped => new(Files);

    [Fact]
    public void Everybody_has_a_board() =>
        Assert.Equal(Enum.GetValues<BoardReader>(), Files.Select(f => Read(f).For).Distinct().Order());

    [Theory]
    [MemberData(nameof(Shipped))]
    public void A_board_that_ships_is_good_and_draws_on_any_plant(string file)
    {
        var (board, errors) = BoardSource.Read(Repository.PathOf("grafana-free-dashboards", file)).Understand();
        Assert.Empty(errors);
        Assert.All(board!.Tiles, tile => Assert.Empty(tile.Of));
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void It_lies_beside_the_program(string file) => Assert.True(File.Exists(Path.Combine(BoardWatcher.ShippedFolder, file)));

    [Fact]
    public void A_bad_board_is_told_with_lines_keys_and_what_would_be_right() => Assert.Equal(
    [
        "line 2, for: expected one of engineer, operator, maintenance, manager, found 'operater'; did you mean 'operator'?",
        "line 4, wall.dark_from: expected a time of day such as \"21:30\", found '9 pm'",
        "line 4, wall.dark_from: expected dark_until beside it; a night has two ends",
        "line 7, tiles[0].hour: unknown key 'hour'; did you mean 'hours'?",
        "line 8, tiles[0].ahead_hours: says nothing for strip; it belongs to due",
        "line 9, tiles[1].show: expected one of pools, readout, strip, balance, tests, alarms, due, pumps, probes, trust, jobs, notes, clock, found 'gauge'",
        "line 10, tiles[1].of: expected a list of at least 1, found 'main-ph'",
        "line 11, tiles[1].room: expected one of narrow, wide, full, found 3",
    ], Errors("""
        title: Round
        for: operater
        wall:
          dark_from: 9 pm
        tiles:
          - show: strip
            hour: 24
            ahead_hours: 2
          - show: gauge
            of: main-ph
            room: 3
        """));

    [Fact]
    public void What_the_plant_has_not_is_named_with_what_was_probably_meant()
    {
        var (board, _) = BoardFile.Read("""
            title: Round
            for: operator
            tiles:
              - { show: strip, of: [main-ph, main-hp, nothing-like-it] }
              - { show: pools, of: [main] }
              - { show: pumps }
            """);
        Assert.Equal("the plant file has no probe 'main-hp'; did you mean 'main-ph'?", BoardIds.Problems(board!.Tiles[0], Plant)[0]);
        Assert.StartsWith("the plant file has no probe 'nothing-like-it'; it has main-ph, main-orp, ", BoardIds.Problems(board.Tiles[0], Plant)[1], StringComparison.Ordinal);
        Assert.Equal(["the plant file has no pool 'main'; did you mean 'main-pool'?"], BoardIds.Problems(board.Tiles[1], Plant));
        Assert.Empty(BoardIds.Problems(board.Tiles[2], Plant));
        Assert.Empty(BoardIds.Problems(board.Tiles[0], null));
    }

    [Fact]
    public void A_tile_that_says_nothing_more_has_what_the_schema_promises()
    {
        var (board, _) = BoardFile.Read("""
            title: Round
            for: operator
            choose: pool
            wall: { dark_from: "21:30", dark_until: "06:00" }
            tiles:
              - show: strip
              - { show: notes, about: tests }
              - { show: alarms, at_least: high, most: 3 }
            """);
        Assert.True(board!.OnePool);
        Assert.Equal(new BoardWall(20, new TimeOnly(21, 30), new TimeOnly(6, 0), WallSize.Usual), board.Wall);
        var (strip, notes, alarms) = (board.Tiles[0], board.Tiles[1], board.Tiles[2]);
        Assert.Equal((24, true, true, true, 12, TileRoom.Wide), (strip.Hours, strip.Limits, strip.Checks, strip.Raw, strip.Most, strip.Room));
        Assert.Equal((48, RecordGroup.Tests), (notes.Hours, notes.About));
        Assert.Equal((Priority.High, 3), (alarms.AtLeast, alarms.Most));
    }

    [Fact]
    public void The_words_of_the_schema_are_those_of_the_program()
    {
        var tile = JsonNode.Parse(Repository.ReadText("grafana-free-dashboards", "board.schema.json"))!["$defs"]!["tile"]!["properties"]!;
        Assert.Equal(EnumWords<TileKind>.All, Words(tile["show"]!));
        Assert.Equal(EnumWords<TileRoom>.All, Words(tile["room"]!));
        Assert.Equal(EnumWords<Priority>.All, Words(tile["at_least"]!));
        Assert.Equal(EnumWords<RecordGroup>.All, Words(tile["about"]!));
    }

    [Fact]
    public void Bytes_that_are_no_text_and_too_many_of_them_are_errors_in_words()
    {
        Assert.Equal("line 2: expected text in UTF-8, found bytes that are none; save the file as UTF-8", Assert.Single(BoardFile.Read([.. "title: x\nfor: "u8, 0xC3, 0x28]).Errors).ToString());
        Assert.Equal("line 1: the file is larger than 128 KiB; expected the description of one screen", Assert.Single(BoardFile.Read(new byte[BoardFile.LargestBytes + 1]).Errors).ToString());
    }

    private static Board Read(string file) => BoardSource.Read(Repository.PathOf("grafana-free-dashboards", file)).Understand().Board!;

    private static IEnumerable<string> Errors(string yaml) => BoardFile.Read(yaml).Errors.Select(error => error.ToString());

    private static IEnumerable<string> Words(JsonNode property) => property["enum"]!.AsArray().Select(word => word!.GetValue<string>());
}
