using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.LimitPacks;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Server.Tests.LimitPacks;

/// <summary>The table of packs in docs/limit-packs.md is made from the packs.</summary>
public sealed class PackTableTests
{
    private const string Begin = "<!-- packs -->\n";
    private const string End = "<!-- /packs -->";

    [Fact]
    public void The_document_lists_the_packs_that_come_with_the_server()
    {
        var text = Repository.ReadText("docs", "limit-packs.md");
        var (from, to) = (text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, text.IndexOf(End, StringComparison.Ordinal));
        Repository.IsUpToDate(text[..from] + Table() + text[to..], "docs", "limit-packs.md");
    }

    private static string Table()
    {
        var lines = PackShelf.Shipped.InOrder.Select(Line).Prepend("|---|---|---|---|---|---|").Prepend("| pack | authority | edition | rows | that compute | from memory |");
        return string.Join('\n', lines) + "\n";
    }

    private static string Line(LimitPack pack)
    {
        var compute = pack.Rows.Count(r => r.Quantity != PackQuantity.Sentence && r.Grade != RowGrade.Guide);
        return $"| `{pack.Id}` | {pack.Authority} | {pack.Edition}{(pack.Superseded ? " (superseded)" : "")} | {pack.Rows.Length} | {compute} | {pack.Rows.Count(r => r.Provenance == RowProvenance.FromMemory)} |";
    }
}
