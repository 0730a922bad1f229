using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Rules.Packs;

namespace PlantWatch.Core.Plant;

/// <summary>What a new version of a circuit's plan does to it, stated before it is done. Pure: two plans in, effects out.</summary>
/// <param name="Effects">Each effect with its names and figures, in the order circuit, pools, probes, pumps; empty when nothing changes.</param>
/// <param name="Renamed">Series whose key changed: their history follows.</param>
public sealed partial record PlanChange(ImmutableArray<Reason> Effects, ImmutableArray<SeriesRenamed> Renamed)
{
    private const string ProductsChanged = "plan.products_changed";

    /// <summary>True when two plans say the same in every key; order within lists counts, since states follow it.</summary>
    public static bool IsSame(CircuitPlan a, CircuitPlan b) => ReferenceEquals(a, b) || Bytes(a).AsSpan().SequenceEqual(Bytes(b));

    /// <summary>What the step from one plan to the next does.</summary>
    public static PlanChange Between(CircuitPlan old, CircuitPlan next)
    {
        var lineage = new PlanLineage(old, next);
        var effects = ImmutableArray.CreateBuilder<Reason>();
        Circuit(old, next, effects);
        foreach (var pair in lineage.Pools) Pool(pair, effects);
        foreach (var pair in lineage.Probes) Probe(pair, lineage, effects);
        foreach (var pair in lineage.Pumps) Pump(pair, lineage, effects);
        return new(effects.ToImmutable(), SeriesOf(lineage));
    }

    private static void Circuit(CircuitPlan old, CircuitPlan next, ImmutableArray<Reason>.Builder effects)
    {
        if (old.Id != next.Id) effects.Add(Reason.Of("plan.circuit_renamed", old.Id, next.Id));
        Setting(next.Id, "name", old.Name, next.Name, effects);
        Setting(next.Id, "time_zone", old.TimeZone, next.TimeZone, effects);
        Setting(next.Id, "balance_tank_m3", Figure(old.BalanceTankCubicMetres), Figure(next.BalanceTankCubicMetres), effects);
        Setting(next.Id, "balance_tank_confirmed", Confirmed(old.BalanceTankConfirmed), Confirmed(next.BalanceTankConfirmed), effects);
        Setting(next.Id, "turnover_hours", Figure(old.TurnoverHours), Figure(next.TurnoverHours), effects);
        Pack(next.Id, old.Pack, next.Pack, effects);
        foreach (var measurand in Stops.Of) Stop(old, next, measurand, effects);
        if (!old.People.AsSpan().SequenceEqual(next.People.AsSpan())) effects.Add(Reason.Of("plan.people_changed", next.Id));
        Telling(old.Id, old.Telling, next.Telling, effects);
        Setting(next.Id, "circulation_low_m3h", Figure(old.CirculationLowStated), Figure(next.CirculationLowStated), effects);
        if (!old.Filters.AsSpan().SequenceEqual(next.Filters.AsSpan())) effects.Add(Reason.Of("plan.filters_changed", next.Id));
        if (!old.Tasks.AsSpan().SequenceEqual(next.Tasks.AsSpan())) effects.Add(Reason.Of("plan.tasks_changed", next.Id));
        if (!old.Products.AsSpan().SequenceEqual(next.Products.AsSpan())) effects.Add(Reason.Of(ProductsChanged, next.Id));
        if (!Bytes(old.Reagents).AsSpan().SequenceEqual(Bytes(next.Reagents))) effects.Add(Reason.Of("plan.reagents_changed", next.Id));
        if (!Bytes(old.Instruments).AsSpan().SequenceEqual(Bytes(next.Instruments))) effects.Add(Reason.Of("plan.instruments_changed", next.Id));
        if (!Bytes(old.Round).AsSpan().SequenceEqual(Bytes(next.Round))) effects.Add(Reason.Of("plan.round_changed", next.Id));
    }

    private static void Pack(string circuit, LimitPack? old, LimitPack? next, ImmutableArray<Reason>.Builder effects)
    {
        if (old?.Id != next?.Id) effects.Add(Reason.Of(next is null ? "plan.pack_dropped" : "plan.pack_picked", circuit, next?.Id ?? old!.Id, next?.Rows.Length ?? 0));
        else if (old is not null && next is not null && old.Rows.Count(row => next.Rows.Any(now => now.Id == row.Id && RowDigest.Of(now) == RowDigest.Of(row))) is var same && (same < old.Rows.Length || same < next.Rows.Length))
            effects.Add(Reason.Of("plan.pack_rows_changed", circuit, next.Id, Math.Max(old.Rows.Length, next.Rows.Length) - same));
        else if (next is not null && !Bytes(old!).AsSpan().SequenceEqual(Bytes(next))) effects.Add(Reason.Of("plan.pack_words_changed", circuit, next.Id));
    }

    private static void Stop(CircuitPlan old, CircuitPlan next, Measurand measurand, ImmutableArray<Reason>.Builder effects)
    {
        if (!Stops.TryOf(old, measurand, out var before, out _) || !Stops.TryOf(next, measurand, out var now, out _) || before == now) return;
        var low = measurand != Measurand.Temperature;
        effects.Add(Reason.Of("plan.stop_changed", next.Id, Word(measurand), Figure(low ? before.Low : null), Figure(before.High), Figure(low ? now.Low : null), Figure(now.High),
            Name(next.Stops.LastOrDefault(s => s.Measurand == measurand)?.Why)));
    }

    private static ImmutableArray<SeriesRenamed> SeriesOf(PlanLineage lineage)
    {
        var renamed = ImmutableArray.CreateBuilder<SeriesRenamed>();
        foreach (var (old, next) in lineage.Probes)
            if (old is not null && next is not null && old.Id != next.Id) renamed.Add(new(old.Id, next.Id));
        foreach (var (old, next) in lineage.Pumps)
        {
            if (old is null || next is null || old.Id == next.Id) continue;
            renamed.Add(new(old.StateSeries, next.StateSeries));
            renamed.Add(new(old.TankSeries, next.TankSeries));
            renamed.Add(new(old.StrokesSeries, next.StrokesSeries));
        }

        return renamed.ToImmutable();
    }

    private static void Setting(string subject, string key, Fact old, Fact next, ImmutableArray<Reason>.Builder effects)
    {
        if (old != next) effects.Add(Reason.Of("plan.setting_changed", subject, key, old, next));
    }

    // What is not stated is a fact without figure and without name.
    private static Fact Figure(double? number) => new(number, null);

    private static Fact Name(string? text) => new(null, text);

    private static Fact Confirmed(VolumeConfirmation? said) =>
        Name(said is null ? null : string.Create(CultureInfo.InvariantCulture, $"{said.By}, {said.On:yyyy-MM-dd}"));

    private static Fact Word<T>(T value) where T : struct, Enum => Name(JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString()));

    private static byte[] Bytes<T>(T plan) => JsonSerializer.SerializeToUtf8Bytes(plan, PlantJson.Options);
}
