using System.Text.Json.Nodes;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class SchemaTests
{
    private static readonly JsonObject Schema =
        JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "src", "PlantWatch.Server", "PlantFile", "plant.schema.json")))!.AsObject();

    [Fact]
    public void Every_property_says_what_it_means_and_in_which_unit()
    {
        foreach (var (name, property) in Properties(Schema))
        {
            var words = property["description"]?.GetValue<string>() ?? "";
            Assert.True(words.Length > 10 && words.EndsWith('.'), $"{name} is not described");
            if (property["type"]?.GetValue<string>() == "number")
                Assert.True(property["x-unit"] is null ? words.Contains("own unit", StringComparison.Ordinal) : words.Contains(" in ", StringComparison.Ordinal), $"{name} has no unit");
        }
    }

    [Fact]
    public void The_words_of_the_schema_are_those_of_the_plan()
    {
        Assert.Equal(EnumWords<ProductKind>.All, Words("product", "kind"));
        Assert.Equal(EnumWords<StrengthMeaning>.All, Words("product", "strength_means"));
        Assert.Equal(EnumWords<ProductForm>.All, Words("product", "form"));
        Assert.Equal(EnumWords<DosingPlace>.All, Words("product", "added_to"));
        Assert.Equal(EnumWords<DosingWay>.All, Words("product", "added_by"));
        Assert.Equal(EnumWords<ChannelKind>.All, Words("channel", "kind"));
        Assert.Equal(EnumWords<MailSecurity>.All, Words("channel", "security"));
        Assert.Equal(EnumWords<Priority>.All.Except(["note"]), Words("channel", "from"));
        Assert.Equal(EnumWords<DayOfWeek>.All.Order(), Strings(Schema["$defs"]!["shift"]!["properties"]!["days"]!["items"]!["enum"]!).Order());
        Assert.Equal(EnumWords<PoolKind>.All, Words("pool", "kind"));
        Assert.Equal(EnumWords<Setting>.All, Words("pool", "setting"));
        Assert.Equal(EnumWords<Disinfectant>.All, Words("pool", "disinfectant"));
        Assert.Equal(EnumWords<SecondaryTreatment>.All, Strings(Schema["$defs"]!["pool"]!["properties"]!["secondary"]!["items"]!["enum"]!));
        Assert.Equal(EnumWords<SignalOrigin>.All, Words("probe", "origin"));
        Assert.Equal(EnumWords<PayloadFormat>.All, Words("probe", "format"));
        Assert.Subset(EnumWords<Measurand>.All.ToHashSet(), Words("probe", "measurand").ToHashSet());
        Assert.Equal(EnumWords<Measurand>.All.Except(["sample_flow", "circulation_flow", "filter_pressure"]), Words("limit", "measurand"));
    }

    private static IEnumerable<(string Name, JsonObject Property)> Properties(JsonObject at)
    {
        foreach (var (key, value) in at)
        {
            if (key == "if" || value is not JsonObject child) continue;
            if (key == "properties")
                foreach (var (name, property) in child) yield return (name, property!.AsObject());
            foreach (var deeper in Properties(child)) yield return deeper;
        }
    }

    private static IEnumerable<string> Words(string definition, string property) => Strings(Schema["$defs"]![definition]!["properties"]![property]!["enum"]!);

    private static IEnumerable<string> Strings(JsonNode array) => array.AsArray().Select(word => word!.GetValue<string>());
}
