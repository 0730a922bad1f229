using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>docs/plant-file.md is held to what it promises.</summary>
public sealed partial class DocumentTests
{
    private static readonly string Page = Repository.ReadText("docs", "plant-file.md");

    [Fact]
    public void Every_key_and_every_word_of_the_schema_stands_on_the_page()
    {
        var schema = JsonNode.Parse(Repository.ReadText("src", "PlantWatch.Server", "PlantFile", "plant.schema.json"))!;

        Assert.All(Named(schema).Distinct(), name => Assert.Contains($"`{name}`", Page, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_plant_on_the_page_is_a_good_one()
    {
        var plants = Blocks("yaml").Where(block => !block.StartsWith('#')).ToArray();

        Assert.Equal(2, plants.Length);
        Assert.All(plants, plant => Assert.Empty(PlantFileReader.Read(plant).Errors));
    }

    [Fact]
    public void The_pack_on_the_page_carries_the_two_records_that_its_plant_reads()
    {
        var items = new List<DecodedItem>();
        SenmlJson.Decode(Encoding.UTF8.GetBytes(Blocks("json").Single()), Instant.FromUtc(2026, 1, 5, 9), items);

        var plan = PlantFileReader.Read(Blocks("yaml").Last()).Plan!;
        Assert.Equal(plan.Circuits[0].Probes.Select(probe => probe.RecordName), items.Select(item => item.Sample.Name));
        Assert.All(items, item => Assert.Equal(Instant.FromUtc(2026, 1, 5, 9), item.Sample.DeviceTime));
    }

    [Fact]
    public void The_pack_in_CBOR_on_the_page_says_what_the_one_in_JSON_says()
    {
        List<DecodedItem> json = [], cbor = [];
        SenmlJson.Decode(Encoding.UTF8.GetBytes(Blocks("json").Single()), Instant.FromUtc(2026, 1, 5, 9), json);
        var pack = Convert.FromHexString(Regex.Match(Page, "^printf '%s' ([0-9a-f]+) ", RegexOptions.Multiline).Groups[1].Value);
        SenmlCbor.Decode(pack, Instant.FromUtc(2026, 1, 5, 9), cbor);

        Assert.Equal(json.Select(item => (item.Sample.Name, item.Sample.Unit, item.Sample.Value)), cbor.Select(item => (item.Sample.Name, item.Sample.Unit, item.Sample.Value)));
        Assert.Contains($"are {pack.Length} bytes", Page, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Named(JsonNode? node) => node switch
    {
        JsonObject at => at.Where(entry => entry.Key is not "if").SelectMany(entry => entry.Key switch
        {
            "properties" => entry.Value!.AsObject().Select(property => property.Key).Where(key => key is not ("site" or "products" or "circuits")).Concat(Named(entry.Value)),
            "enum" => entry.Value!.AsArray().Select(word => word!.GetValue<string>()),
            _ => Named(entry.Value),
        }),
        JsonArray list => list.SelectMany(Named),
        _ => [],
    };

    private static IEnumerable<string> Blocks(string language) =>
        Block().Matches(Page).Where(match => match.Groups[1].Value == language).Select(match => match.Groups[2].Value);

    [GeneratedRegex("^```([a-z]+)\n(.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Block();
}
