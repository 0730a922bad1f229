using System.Text.Json.Nodes;
using PlantWatch.Server.PlantFile.Editing;

namespace PlantWatch.Server.Tests.PlantFile.Editing;

/// <summary>Edits by key in the text of a plant file, one at a time, as a person would read them.</summary>
public sealed class YamlEditorTests
{
    private const string Plant = """
        # Our plant.
        site: { name: "North Quay", time_zone: Europe/London }  # the clock

        # Pools that share a plant room
        circuits:
          - id: main
            name: Main circuit   # the big one
            pools:
              # filled in 2019
              - id: main-pool
                name: 'Main pool'
                volume_m3: 425.0   # measured
                secondary: [uv]

              - id: spa
                name: Spa
                volume_m3: 6
            # no probes yet
            probes: []

        """;

    private static readonly YamlEditor Editor = new(SchemaShape.KeysAt);

    [Fact]
    public void A_value_gives_way_to_another_and_its_quotes_and_comment_stay()
    {
        Assert.Equal(Plant.Replace("\"North Quay\"", "\"South: Quay\""), Set("site.name", "South: Quay"));
        Assert.Equal(Plant.Replace("'Main pool'", "'Anne''s pool'"), Set("circuits[0].pools[0].name", "Anne's pool"));
        Assert.Equal(Plant.Replace("425.0", "430.5"), Set("circuits[0].pools[0].volume_m3", 430.5));
        Assert.Equal(Plant.Replace("name: Spa", "name: \"Spa #2\""), Set("circuits[0].pools[1].name", "Spa #2"));
    }

    [Fact]
    public void The_same_value_changes_nothing_however_it_is_written() => Assert.Equal(Plant, Set("circuits[0].pools[0].volume_m3", 425));

    [Fact]
    public void A_new_key_comes_where_the_schema_has_it_and_in_the_style_around_it()
    {
        Assert.Equal(Plant.Replace("    name: Main circuit   # the big one\n", "    name: Main circuit   # the big one\n    turnover_hours: 3.5\n"), Set("circuits[0].turnover_hours", 3.5));
        Assert.Equal(Plant.Replace("Europe/London }", "Europe/London, units: us }"), Set("site.units", "us"));
        Assert.Equal(Plant.Replace("# the clock\n", "# the clock\n\nlimit_pack: who-2006\n"), Set("limit_pack", "who-2006"));
    }

    [Fact]
    public void An_empty_list_becomes_one_by_indentation()
    {
        var probe = new JsonObject { ["id"] = "ph", ["name"] = "pH", ["range"] = new JsonArray(0, 14), ["calibration"] = new JsonObject { ["every_days"] = 30 } };
        var added = Plant.Replace("probes: []\n", """
            probes:
                  - id: ph
                    name: pH
                    range: [0, 14]
                    calibration: { every_days: 30 }

            """);
        Assert.Equal(added, Do(YamlDo.Add, "circuits[0].probes", probe));
        Assert.Equal(Plant, Do(YamlDo.Remove, "circuits[0].probes[0]", null, added));
    }

    [Fact]
    public void An_item_comes_at_the_end_and_is_parted_as_its_neighbours_are()
    {
        var added = Do(YamlDo.Add, "circuits[0].pools", new JsonObject { ["id"] = "plunge", ["name"] = "Plunge" });
        Assert.Equal(Plant.Replace("volume_m3: 6\n", "volume_m3: 6\n\n      - id: plunge\n        name: Plunge\n"), added);
        Assert.Equal(Plant, Do(YamlDo.Remove, "circuits[0].pools[2]", null, added));
        Assert.Equal(Plant.Replace("[uv]", "[uv, ozone]"), Do(YamlDo.Add, "circuits[0].pools[0].secondary", "ozone"));
    }

    [Fact]
    public void What_is_taken_out_leaves_the_comments_around_it()
    {
        var without = Do(YamlDo.Remove, "circuits[0].pools[0]", null);
        Assert.Contains("      # filled in 2019\n      - id: spa\n", without, StringComparison.Ordinal);
        Assert.DoesNotContain("main-pool", without, StringComparison.Ordinal);
        Assert.Equal(Plant.Replace("        volume_m3: 425.0   # measured\n", ""), Do(YamlDo.Remove, "circuits[0].pools[0].volume_m3", null));
        Assert.Equal(Plant.Replace("[uv]", "[]"), Do(YamlDo.Remove, "circuits[0].pools[0].secondary[0]", null));
        Assert.Contains("  - name: Main circuit   # the big one\n    pools:", Do(YamlDo.Remove, "circuits[0].id", null), StringComparison.Ordinal);
    }

    [Fact]
    public void A_group_that_was_begun_with_nothing_grows_by_lines()
    {
        var begun = Set("telling", new JsonObject());
        Assert.Contains("\ntelling: {}\n", begun, StringComparison.Ordinal);
        var grown = Do(YamlDo.Set, "telling.channels", JsonNode.Parse("""[{"id":"desk"}]""")!, begun);
        Assert.Contains("\ntelling:\n  channels:\n    - id: desk\n", grown, StringComparison.Ordinal);
        Assert.Equal(Plant, Do(YamlDo.Remove, "telling", null, grown));
        var pool = Do(YamlDo.Add, "circuits[0].probes", new JsonObject { ["id"] = "ph" });
        Assert.Contains("      - id: ph\n        name: pH\n", Do(YamlDo.Set, "circuits[0].probes[0].name", "pH", pool), StringComparison.Ordinal);
    }

    [Fact]
    public void Line_ends_stay_what_they_are()
    {
        var crlf = Plant.ReplaceLineEndings("\r\n");
        var added = Do(YamlDo.Add, "circuits[0].probes", new JsonObject { ["id"] = "ph", ["name"] = "pH" }, crlf);
        Assert.DoesNotContain(added.Split('\n'), line => line.Length > 0 && !line.EndsWith('\r'));
        Assert.Equal(crlf, Do(YamlDo.Remove, "circuits[0].probes[0]", null, added));
    }

    [Fact]
    public void Lists_written_below_their_key_go_on_so()
    {
        const string flat = "site: {name: A, time_zone: UTC}\ncircuits:\n- id: a\n  pools:\n  - id: p";
        Assert.Equal(flat + "\n  probes:\n  - id: x\n    tests:\n    - { a: 1, b: 2 }", Set("circuits[0].probes", JsonNode.Parse("""[{"id":"x","tests":[{"a":1,"b":2}]}]""")!, flat));
    }

    [Theory]
    [InlineData("a: &x { b: 1 }\nc: 2\n", nameof(YamlDo.Remove), "a", nameof(EditFault.Anchor))]
    [InlineData("a: &x 1\nc: 2\n", nameof(YamlDo.Set), "a", nameof(EditFault.Anchor))]
    [InlineData("a: [1,\n  2]\n", nameof(YamlDo.Add), "a", nameof(EditFault.FlowOverLines))]
    [InlineData("a: { b: 1,\n  c: 2 }\n", nameof(YamlDo.Remove), "a.b", nameof(EditFault.FlowOverLines))]
    [InlineData("a: |\n  some\n  text\nb: 1\n", nameof(YamlDo.Set), "a", nameof(EditFault.TextOverLines))]
    [InlineData("a:\n  - 1 # one\n", nameof(YamlDo.Set), "a", nameof(EditFault.BlockThere))]
    [InlineData("a:\n  - b: 1 # one\n    c: 2\n", nameof(YamlDo.Remove), "a[0].b", nameof(EditFault.CommentBetween))]
    [InlineData("a: 1\n", nameof(YamlDo.Remove), "a", nameof(EditFault.WouldBeEmpty))]
    [InlineData("a: 1\n", nameof(YamlDo.Remove), "b", nameof(EditFault.NotThere))]
    [InlineData("a: 1\n", nameof(YamlDo.Set), "a[0]", nameof(EditFault.NotThere))]
    [InlineData("a: 1\n", nameof(YamlDo.Set), "a b", nameof(EditFault.NotThere))]
    [InlineData("a: 1\na: 2\n", nameof(YamlDo.Set), "a", nameof(EditFault.NotReadable))]
    [InlineData("a: *x\n", nameof(YamlDo.Set), "a", nameof(EditFault.NotReadable))]
    [InlineData("a: [1\n", nameof(YamlDo.Set), "a", nameof(EditFault.NotReadable))]
    [InlineData("- 1\n", nameof(YamlDo.Set), "a", nameof(EditFault.NotReadable))]
    [InlineData("a:\n  - - 1\n    - 2\n", nameof(YamlDo.Remove), "a[0][0]", nameof(EditFault.NotSure))]
    public void What_cannot_be_done_without_harm_is_refused_by_name_and_the_text_stays(string text, string what, string path, string fault)
    {
        var outcome = Editor.Apply(text, [new(Enum.Parse<YamlDo>(what), path, what == nameof(YamlDo.Remove) ? null : JsonValue.Create(9))]);
        Assert.Equal((fault, text), (outcome.Fault.ToString(), outcome.Text));
    }

    [Fact]
    public void A_list_of_edits_is_done_whole_or_not_at_all()
    {
        var outcome = Editor.Apply(Plant, [new(YamlDo.Set, "limit_pack", "who-2006"), new(YamlDo.Remove, "telling")]);
        Assert.Equal((EditFault.NotThere, 1, Plant), (outcome.Fault, outcome.Index, outcome.Text));
    }

    [Theory]
    [InlineData("07:00"), InlineData("2026-03-01"), InlineData("1e3"), InlineData("yes"), InlineData("no"), InlineData("null"), InlineData("~"), InlineData("- a"), InlineData("a: b"), InlineData("a #b"), InlineData("#a")]
    [InlineData("a,b"), InlineData("[a]"), InlineData("{a}"), InlineData("&a"), InlineData("*a"), InlineData("!a"), InlineData("%a"), InlineData("@a"), InlineData("`a"), InlineData(" a"), InlineData("a "), InlineData("")]
    [InlineData("a\nb"), InlineData("a\tb"), InlineData("\u0007"), InlineData("\u2028"), InlineData("\u0085"), InlineData("Hallenbad Süd"), InlineData("プール"), InlineData("🏊"), InlineData("'"), InlineData("\""), InlineData("\\"), InlineData("a:"), InlineData("true")]
    public void Every_text_comes_back_as_it_was_said(string said)
    {
        var once = Set("circuits[0].name", said);
        var complaints = new Server.PlantFile.Complaints();
        Assert.Equal(said, Server.PlantFile.YamlTree.Read(once, complaints)!.ToJson()!["circuits"]![0]!["name"]!.GetValue<string>());
    }

    private static string Set(string path, JsonNode value, string text = Plant) => Do(YamlDo.Set, path, value, text);

    private static string Do(YamlDo what, string path, JsonNode? value, string text = Plant)
    {
        var outcome = Editor.Apply(text, [new(what, path, value)]);
        Assert.Equal((EditFault.None, 0), (outcome.Fault, outcome.Line));
        return outcome.Text;
    }
}
