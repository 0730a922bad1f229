using System.Globalization;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.LimitPacks;

/// <summary>The packs that come with the server against the table of limits they were made from (limits.csv: 298 rows, each with its source).</summary>
public sealed class PackFilesTests
{
    private static readonly string[][] Table = [.. Repository.ReadText("tests", "PlantWatch.Server.Tests", "LimitPacks", "limits.csv").ReplaceLineEndings("\n").TrimEnd().Split((char)10).Skip(1).Select(Cells)];

    public static TheoryData<string> Names => [.. PackShelf.Files().Select(f => f.Name)];

    [Theory, MemberData(nameof(Names))]
    public void A_pack_is_read_without_a_complaint_and_bears_the_name_of_its_file(string name)
    {
        var pack = PackFile.Read(PackShelf.Files().Single(f => f.Name == name).Text, out var errors);
        Assert.Empty(errors);
        Assert.Equal(name, pack!.Id);
        Assert.Equal(pack.Rows.Length, pack.Rows.Select(r => r.Id).Distinct().Count());
        Assert.All(pack.Rows, r => Assert.False(string.IsNullOrWhiteSpace(r.Source)));
    }

    [Fact]
    public void Every_row_of_the_table_stands_in_the_pack_of_its_authority_with_its_figures_and_source_and_no_other_row_does()
    {
        Assert.Equal(298, Table.Length);
        foreach (var authority in Table.GroupBy(r => r[0]))
        {
            var left = PackShelf.Shipped.InOrder.Single(p => p.Id == Slug(authority.Key)).Rows.Where(r => !IsSecondHalf(r)).ToList();
            foreach (var row in authority)
            {
                var found = left.FirstOrDefault(r => r.Source == row[6] && Says(r, row) && Figures(r, row));
                Assert.True(found is not null, $"{row[0]}: {row[1]}, {row[2]}, {row[3]} to {row[4]} {row[5]}");
                left.Remove(found);
            }

            Assert.Empty(left);
        }
    }

    [Fact]
    public void What_is_from_memory_says_so() =>
        Assert.Equal(Table.Count(r => r[7] == "from memory"), PackShelf.Shipped.InOrder.SelectMany(p => p.Rows).Count(r => r.Provenance == RowProvenance.FromMemory && !IsSecondHalf(r)));

    [Fact]
    public void Above_pH_7_6_the_minimum_of_New_South_Wales_rises_by_one()
    {
        var row = PackShelf.Shipped.Find("au-nsw")!.Rows.Single(r => r.RaisesLowBy is not null);
        Assert.Equal((PackQuantity.FreeChlorine, 1.0, 7.6), (row.Quantity, row.RaisesLowBy, row.When.PhAbove));
    }

    [Theory]
    [InlineData("id: x\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, says: s, source: s, provenance: published }", "low, high or raises_low_by")]
    [InlineData("id: x\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, low: 8, high: 7, says: s, source: s, provenance: published }", "low at or below high")]
    [InlineData("id: x\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: taste, low: 8, says: s, source: s, provenance: published }", "one of")]
    [InlineData("id: x\nauthority: a\nedition: e\nrows:\n  - { id: a, quantity: ph, low: 7, says: s, source: s, provenance: published, when: { moon: full } }", "unknown key")]
    [InlineData("id: x\nauthority: a\nedition: e", "rows")]
    [InlineData("[", "")]
    public void A_broken_pack_is_told_by_line_and_never_throws(string text, string words)
    {
        Assert.Null(PackFile.Read(text, out var errors));
        Assert.Contains(errors, e => e.ToString().Contains(words, StringComparison.Ordinal));
    }

    // A row of the table that limits combined chlorine and its part of free or total in one sentence is two rows of the pack.
    private static bool IsSecondHalf(PackRow row) => row.Quantity is PackQuantity.CombinedPerFree or PackQuantity.CombinedPerTotal;

    private static bool Says(PackRow row, string[] printed) =>
        row.Says.StartsWith(printed[1] + (printed[2].Length > 0 ? ": " + printed[2] : ""), StringComparison.Ordinal)
        && (printed[3].Length == 0 || row.Says.Contains($"at least {printed[3]}", StringComparison.Ordinal)) && (printed[4].Length == 0 || row.Says.Contains($"at most {printed[4]}", StringComparison.Ordinal));

    private static bool Figures(PackRow row, string[] printed)
    {
        if (row.Quantity == PackQuantity.Sentence || row.RaisesLowBy is not null) return row is { Low: null, High: null };
        return Same(row.Low, printed[3], printed[5]) && Same(row.High, printed[4], printed[5]);
    }

    // 104 F are 40 degC; per litre is a tenth per 100 mL.
    private static bool Same(double? figure, string printed, string unit)
    {
        if (printed.Length == 0) return figure is null;
        var value = double.Parse(printed, CultureInfo.InvariantCulture);
        var expected = unit switch { "F" => (value - 32) / 1.8, "per L" => value / 10, _ => value };
        return figure is { } has && Math.Abs(has - expected) <= 0.05;
    }

    private static string Slug(string name) => string.Join('-', name.ToLowerInvariant().Split('-', '.'));

    private static string[] Cells(string line)
    {
        var (cells, cell, quoted) = (new List<string>(), new System.Text.StringBuilder(), false);
        for (var i = 0; i < line.Length; i++)
        {
            if (line[i] == '"' && quoted && i + 1 < line.Length && line[i + 1] == '"') cell.Append(line[i++]);
            else if (line[i] == '"') quoted = !quoted;
            else if (line[i] == ',' && !quoted) { cells.Add(cell.ToString()); cell.Clear(); }
            else cell.Append(line[i]);
        }

        return [.. cells, cell.ToString()];
    }
}
