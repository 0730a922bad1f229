using System.Text.Json;
using System.Text.RegularExpressions;

namespace PlantWatch.Server.Tests.House;

/// <summary>Core speaks in codes; every code must have a sentence.</summary>
public sealed partial class ReasonsHaveWordsTests
{
    [Fact]
    public void Every_reason_code_of_Core_has_words()
    {
        var known = Directory.EnumerateFiles(Repository.PathOf("src", "PlantWatch.Server", "Words", "en"), "*.json")
            .SelectMany(file => JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(file))!.Keys);
        Findings.None(CodesOfCore().Except(known), "codes of Core without words in Words/en");
    }

    [Fact]
    public void Every_input_of_a_formula_has_a_name_for_people()
    {
        var known = Directory.EnumerateFiles(Repository.PathOf("src", "PlantWatch.Server", "Words", "en"), "*.json")
            .SelectMany(file => JsonSerializer.Deserialize<Dictionary<string, string>>(File.ReadAllText(file))!.Keys);
        var inputs = Repository.Sources("src", "PlantWatch.Core").SelectMany(file => Input().Matches(File.ReadAllText(file)).Select(m => "name.input_" + m.Groups[1].Value)).ToList();
        Assert.NotEmpty(inputs);
        Findings.None(inputs.Except(known), "inputs of formulas without words in Words/en");
    }

    [Fact]
    public void A_reason_is_made_from_a_code_that_can_be_read_in_the_source()
    {
        // A code that is put together at run time could not be checked against the words.
        var hidden =
            from file in Repository.Sources("src", "PlantWatch.Core")
            from Match match in Computed().Matches(File.ReadAllText(file))
            select $"{Path.GetRelativePath(Repository.Root, file)}: {match.Value}";
        Findings.None(hidden, "codes put together at run time");
    }

    internal static IEnumerable<string> CodesOfCore() => Repository.Sources("src", "PlantWatch.Core")
        .SelectMany(file => Code().Matches(DocComment().Replace(File.ReadAllText(file), "")).Select(m => m.Groups[1].Value))
        .Distinct().Order(StringComparer.Ordinal);

    // A code is two or more lower-case words parted by dots; file names and JSON paths look otherwise.
    [GeneratedRegex("\"([a-z][a-z0-9_]*(?:\\.[a-z][a-z0-9_]*)+)\"")]
    private static partial Regex Code();

    [GeneratedRegex("\\.Within\\(\"([a-z0-9_]+)\"")]
    private static partial Regex Input();

    [GeneratedRegex(@"^\s*///.*$", RegexOptions.Multiline)]
    private static partial Regex DocComment();

    [GeneratedRegex("Reason\\.Of\\(\\s*\\$\"[^\"]*\"")]
    private static partial Regex Computed();
}
