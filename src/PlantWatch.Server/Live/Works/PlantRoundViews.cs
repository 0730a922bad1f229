using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Rounds through the plant room in words.</summary>
internal static class PlantRoundViews
{
    public static PlantRoundView Of(CircuitState state, Instant now, Wording words)
    {
        var (plan, round) = (state.Plan, state.Plan.RoundInForce);
        var (word, dueAt) = RoundDue.At(round, state.Round, plan.TimeZone, now);
        return new(plan.Id, plan.Name, word, dueAt, state.Round.WalkedAt, state.Round.By, [.. round.Items.Select(item => Item(plan, item, state.Round, now, words))]);
    }

    public static PlantRoundAnswer Answer(CircuitPlan plan, RoundEntry entry, Wording words) => new(
        entry.Round.Id, plan.Id, entry.Round.WalkedAt, entry.Round.By,
        [.. entry.Lines.Select(l => new RoundLineView(l.Reading.ItemId, Name(plan, l.What, l.Name, l.Of, words), l.IsOut, [.. l.Says.Select(words.Say)]))]);

    /// <summary>A line of the record in one sentence.</summary>
    public static string Line(CircuitPlan plan, RoundLine line, Wording words) =>
        string.Join(", ", [Name(plan, line.What, line.Name, line.Of, words), .. line.Says.Select(words.Text), .. line.Reading.Remark is { Length: > 0 } remark ? new[] { remark } : []]);

    private static RoundItemView Item(CircuitPlan plan, RoundItemPlan item, RoundStanding standing, Instant now, Wording words)
    {
        var last = standing.LastOf(item.Id);
        return new(
            item.Id, item.What, Name(plan, item.What, item.Name, item.Of, words), item.Kind, item.Kind.Unit(), item.Low, item.High, last?.Reading.Value, last?.Reading.Works, last?.At ?? Instant.Never,
            RoundDue.Wants(item, standing, now));
    }

    // The plant's own name, else what it is and what it belongs to.
    private static string Name(CircuitPlan plan, RoundItem what, string? name, string? of, Wording words)
    {
        if (name is not null) return name;
        var own = words.Find($"round_item.{Wording.Key(what)}");
        return of is null ? own : $"{SubjectNames.Of([plan], of, words)}: {own}";
    }
}
