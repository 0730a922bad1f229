using System.Text.Json.Nodes;
using Json.Schema;

namespace PlantWatch.Server.PlantFile;

/// <summary>Holds a file against its JSON Schema (2020-12) and says each violation in plain words, taken from the schema itself.</summary>
internal sealed class SchemaCheck
{
    private static readonly EvaluationOptions Options = new() { OutputFormat = OutputFormat.List };
    private readonly JsonSchema _schema;
    private readonly SchemaWords _words;

    public SchemaCheck(string schemaText)
    {
        _schema = JsonSchema.FromText(schemaText);
        _words = new SchemaWords(JsonNode.Parse(schemaText)!.AsObject());
    }

    /// <summary>The schema of the plant file.</summary>
    public static SchemaCheck OfPlantFile { get; } = new(EmbeddedText("plant.schema.json"));

    public void Check(PlantNode root, Complaints complaints)
    {
        var answer = _schema.Evaluate(root.ToJson(), Options);
        if (answer.IsValid) return;
        foreach (var detail in answer.Details.Where(d => d is { IsValid: false, HasErrors: true }))
            Complain(root, Pointer(detail.InstanceLocation.ToString()), Pointer(detail.EvaluationPath.ToString()), detail.Errors!.Keys, complaints);
    }

    private void Complain(PlantNode root, string[] instance, string[] evaluation, IEnumerable<string> keywords, Complaints complaints)
    {
        // What only decides whether another part applies is no violation.
        if (evaluation.Contains("if")) return;
        var (place, parent) = Follow(root, instance);
        if (evaluation is [.., "additionalProperties"])
        {
            complaints.Add(place, SchemaWords.UnknownKey(instance[^1], _words.KnownKeys(evaluation[..^1]), parent.Node as PlantMapping));
            return;
        }
        var told = false;
        foreach (var keyword in keywords)
        {
            if (keyword == "required") _words.Missing(evaluation, place, complaints);
            else if (keyword == "uniqueItems") complaints.Add(place, "expected a list in which nothing stands twice");
            else if (!told && (told = SchemaWords.IsAboutTheValue(keyword))) complaints.Add(place, _words.Expected(evaluation, place.Node!));
        }
    }

    private static (Place Place, Place Parent) Follow(PlantNode root, string[] pointer)
    {
        Place place = Place.Root(root), parent = place;
        foreach (var step in pointer)
        {
            parent = place;
            place = place.Node is PlantList ? place.Items.ElementAt(int.Parse(step)) : place[step];
        }
        return (place, parent);
    }

    private static string[] Pointer(string text) => text.Length == 0
        ? []
        : [.. text[1..].Split('/').Select(step => step.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal))];

    internal static string EmbeddedText(string name)
    {
        using var stream = typeof(SchemaCheck).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the build has left {name} out of the assembly");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
