using System.Reflection;
using System.Text.RegularExpressions;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>docs/sparkplug.md goes through the clauses one by one; what it says is shown must be shown.</summary>
public sealed partial class SparkplugClausesTests
{
    private const string NotYet = "not yet: the connection";

    private static readonly string[][] Rows = [.. File.ReadAllLines(Source.PathOf("docs", "sparkplug.md"))
        .Where(l => l.StartsWith("| tck-id-", StringComparison.Ordinal)).Select(l => l.Trim('|', ' ').Split(" | ").Select(c => c.Trim()).ToArray())];

    [Fact]
    public void Every_clause_has_its_id_what_it_asks_how_it_is_met_and_what_shows_it()
    {
        Assert.True(Rows.Length > 80, $"{Rows.Length} rows");
        Assert.All(Rows, row => Assert.True(row.Length == 4 && row.All(c => c.Length > 0), string.Join(" | ", row)));
        Assert.All(Rows, row => Assert.Matches("^tck-id-[A-Za-z0-9-]+$", row[0]));
        Assert.Equal(Rows.Length, Rows.Select(r => r[0]).Distinct().Count());
    }

    [Fact]
    public void Every_test_that_a_clause_names_exists()
    {
        var tests = typeof(SparkplugClausesTests).Assembly.GetTypes()
            .SelectMany(t => t.GetMethods().Where(m => m.GetCustomAttribute<FactAttribute>() is not null).Select(m => $"{t.Name}.{m.Name}")).ToHashSet();
        var named = Rows.SelectMany(r => Quoted().Matches(r[3]).Select(m => m.Groups[1].Value)).Distinct().ToList();
        Assert.True(named.Count > 20, $"{named.Count} tests");
        Assert.Empty(named.Except(tests));
        Assert.All(Rows, r => Assert.True(r[3] == NotYet || Quoted().IsMatch(r[3]), $"{r[0]}: {r[3]}"));
    }

    [GeneratedRegex("`([A-Za-z]+\\.[A-Za-z0-9_]+)`")]
    private static partial Regex Quoted();
}
