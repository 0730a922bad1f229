using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>The boards that ship are held against their schema by the same means as a plant file, and name things that the demo plant has.</summary>
public sealed class BoardTests
{
    private static readonly SchemaCheck Schema = new(Repository.ReadText("grafana-free-dashboards", "board.schema.json"));
    private static readonly PlantPlan Plant = PlantFileReader.Read(File.ReadAllText(Folders.DemoPlant)).Plan!;

    private static readonly IReadOnlyList<string> Files =
        [.. Directory.GetFiles(Repository.PathOf("grafana-free-dashboards"), "*.board.yaml").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Boards => new(Files);

    [Fact]
    public void The_engineer_and_the_operator_have_a_board() => Assert.Equal(["live-chemistry.board.yaml", "operators-round.board.yaml"], Files);

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_holds_to_the_schema(string board) => Assert.Empty(Check(Repository.ReadText("grafana-free-dashboards", board)));

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_names_only_what_the_demo_plant_has(string board)
    {
        var root = Place.Root(YamlTree.Read(Repository.ReadText("grafana-free-dashboards", board), new Complaints())!);

        foreach (var tile in root["tiles"].Items)
            Assert.Subset(KnownTo(tile["show"].String!), tile["of"].Items.Select(id => id.String!).ToHashSet());
    }

    [Fact]
    public void A_bad_board_is_told_in_the_same_words_as_a_bad_plant()
    {
        const string board = """
            title: Round
            for: operater
            tiles:
              - show: strip
                hour: 24
              - show: gauge
                of: main-ph
                room: 3
            """;

        Assert.Equal(
        [
            "line 2, for: expected one of engineer, operator, maintenance, manager, found 'operater'; did you mean 'operator'?",
            "line 4, tiles[0].of: the key 'of' is missing: name the probes that this tile shows",
            "line 5, tiles[0].hour: unknown key 'hour'; did you mean 'hours'?",
            "line 6, tiles[1].show: expected one of pools, readout, strip, balance, alarms, due, pumps, found 'gauge'",
            "line 7, tiles[1].of: expected a list of at least 1, found 'main-ph'",
            "line 8, tiles[1].room: expected one of narrow, wide, full, found 3",
        ], Check(board));
    }

    private static IEnumerable<string> Check(string board)
    {
        var complaints = new Complaints();
        if (YamlTree.Read(board, complaints) is { } root) Schema.Check(root, complaints);
        return complaints.InOrder().Select(error => error.ToString());
    }

    private static HashSet<string> KnownTo(string show) => [.. Plant.Circuits.SelectMany(circuit => show switch
    {
        "readout" or "strip" => circuit.Probes.Select(probe => probe.Id),
        "pumps" => circuit.Pumps.Select(pump => pump.Id),
        _ => circuit.Pools.Select(pool => pool.Id),
    })];
}
