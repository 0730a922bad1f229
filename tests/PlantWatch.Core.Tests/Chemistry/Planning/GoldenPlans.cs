using System.Text.RegularExpressions;

namespace PlantWatch.Core.Tests.Chemistry.Planning;

/// <summary>The agreed plans, in golden_plans.txt: a line "# name", then the plan.</summary>
internal static partial class GoldenPlans
{
    public static string Of(string name)
    {
        using var stream = typeof(GoldenPlans).Assembly.GetManifestResourceStream("Chemistry.Planning.golden_plans.txt")!;
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd().ReplaceLineEndings("\n");
        return Heading().Split(text).Zip(Heading().Split(text).Skip(1)).First(pair => pair.First == name).Second;
    }

    [GeneratedRegex(@"^# (\w+)\n", RegexOptions.Multiline)]
    private static partial Regex Heading();
}
