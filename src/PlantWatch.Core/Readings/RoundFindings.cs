using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>One line of a round as the record keeps it: it stands by itself, whatever the plan says later.</summary>
/// <param name="Reading">What was read.</param>
/// <param name="What">What it is.</param>
/// <param name="Kind">How it was read.</param>
/// <param name="Name">What the plant calls it; null where it has no name of its own.</param>
/// <param name="Of">The filter or pool it belongs to.</param>
/// <param name="Says">What it means, in the order of weight.</param>
public sealed record RoundLine(RoundReading Reading, RoundItem What, RoundReadingKind Kind, string? Name, string? Of, ImmutableArray<Reason> Says)
{
    /// <summary>True when something of it is not in order.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool IsOut => Reading.Works == false || Says.Any(s => s.Code is "round.below" or "round.above" or "round.meter_back");
}

/// <summary>What the readings of a round mean beside the plan and the round before. Pure.</summary>
public static class RoundFindings
{
    /// <summary>The lines of a round.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="round">Its items in force.</param>
    /// <param name="walked">The round.</param>
    /// <param name="before">How the rounds stood before it.</param>
    /// <param name="bathersSince">How many bathed since the last reading of the make-up meter; null where nobody counted.</param>
    public static ImmutableArray<RoundLine> Of(CircuitPlan plan, RoundPlan round, PlantRound walked, RoundStanding before, Func<Instant, int?> bathersSince)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(round);
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(before);
        var lines = ImmutableArray.CreateBuilder<RoundLine>();
        foreach (var reading in walked.Readings)
            if (round.Items.FirstOrDefault(i => i.Id == reading.ItemId) is { } item)
                lines.Add(new(reading, item.What, item.Kind, item.Name, item.Of, Says(plan, item, reading, walked, before.LastOf(item.Id), bathersSince)));
        return lines.DrainToImmutable();
    }

    private static ImmutableArray<Reason> Says(CircuitPlan plan, RoundItemPlan item, RoundReading reading, PlantRound walked, RoundLast? last, Func<Instant, int?> bathersSince)
    {
        var says = ImmutableArray.CreateBuilder<Reason>();
        if (reading.Works == false) says.Add(Reason.Of(item.What is RoundItem.Eyewash or RoundItem.GasAlarm ? "round.safety_out" : "round.not_in_order"));
        if (reading.Value is { } value)
        {
            if (item.Low is { } low && value < low) says.Add(Reason.Of("round.below", value, low, item.Kind.Unit()));
            if (item.High is { } high && value > high) says.Add(Reason.Of("round.above", value, high, item.Kind.Unit()));
            if (item.What == RoundItem.FilterOutlet) Across(plan, item, value, walked, says);
            if (item.Kind == RoundReadingKind.Meter && last is { Reading.Value: { } was } && last.At <= walked.WalkedAt) Metered(item, value - was, last.At, walked, bathersSince, says);
        }

        return says.DrainToImmutable();
    }

    private static void Across(CircuitPlan plan, RoundItemPlan outlet, double behind, PlantRound walked, ImmutableArray<Reason>.Builder says)
    {
        var inlet = walked.Readings.FirstOrDefault(r => r.ItemId == $"filter_inlet/{outlet.Of}" || (plan.Round?.Items.Any(i => i.Id == r.ItemId && i.What == RoundItem.FilterInlet && i.Of == outlet.Of) ?? false));
        if (inlet?.Value is not { } ahead || plan.Filters.FirstOrDefault(f => f.Id == outlet.Of) is not { } filter) return;
        var across = ahead - behind;
        says.Add(filter.CleanKilopascals is { } clean && across >= clean + filter.BackwashRise ? Reason.Of("round.wash_due", across, clean, filter.BackwashRise) : Reason.Of("round.across", across));
    }

    private static void Metered(RoundItemPlan item, double taken, Instant since, PlantRound walked, Func<Instant, int?> bathersSince, ImmutableArray<Reason>.Builder says)
    {
        if (taken < 0) says.Add(Reason.Of("round.meter_back", -taken));
        else if (item.What != RoundItem.MakeUpMeter || bathersSince(since) is not { } bathers) says.Add(Reason.Of("round.metered", taken, (walked.WalkedAt - since).TotalDays));
        else says.Add(Reason.Of("round.made_up", taken, bathers, FreshWater.ForBathers(bathers).OrNull ?? 0, FreshWater.LitresPerBather));
    }
}
