using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The limits of a pool as they are in force when the sheet is made.</summary>
internal static class LimitTable
{
    /// <summary>What can be said of them, then the table.</summary>
    public static IEnumerable<Block> Of(SheetSource source, PoolPlan pool, Wording words)
    {
        var limits = source.State.Pools.FirstOrDefault(p => p.Id == pool.Id)?.Limits ?? LimitsInForce.None;
        var authority = source.Plan.Pack is { } pack ? PaperWords.And(pack.Authority, pack.Edition) : words.Paper("no_pack");
        yield return new Remark(words.Paper($"limits_{Wording.Key(limits.Word)}", authority, limits.Unconfirmed.Length));
        yield return new Table(words.Paper("limits_caption", pool.Name), Columns(words), [.. limits.Bounds.Select(b => Row(b, words))], words.Paper("limits_empty"));
    }

    private static Column[] Columns(Wording words) =>
        [new(words.Paper("quantity")), new(words.Paper("grade")), new(words.Paper("lowest"), ColumnKind.Number), new(words.Paper("highest"), ColumnKind.Number), new(words.Paper("source"), Wide: true)];

    private static Cell[] Row(LimitBound bound, Wording words)
    {
        var unit = LimitViews.Unit(bound.Quantity);
        return
        [
            new Text(words.Find($"quantity.{bound.Quantity.Key()}")), new Text(words.PaperWord("grade", bound.Grade)), End(bound.Low, unit), End(bound.High, unit),
            new Text(PaperWords.And([.. new[] { bound.Low is null ? null : From(bound.LowFrom, words), bound.High is null ? null : From(bound.HighFrom, words) }.Distinct()])),
        ];
    }

    private static Cell End(double? value, string unit) => value is { } end ? new Number(end, unit) : Blank.Cell;

    private static string From(string row, Wording words) => row.Length > 0 ? words.Paper("row", row) : words.Paper("own_limit");
}
