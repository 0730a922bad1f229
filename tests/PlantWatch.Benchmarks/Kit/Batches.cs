using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Commits for a store alone: readings at 1 Hz and a journal row of the size that such a batch has, without a fold.</summary>
internal sealed class Batches(PartitionKey partition, int bytesAReading = 22)
{
    public static readonly Instant Start = Instant.FromUtc(2025, 1, 1);

    private static readonly CircuitState Any = CircuitState.Of(CircuitPlan.Nowhere);
    private readonly Random _chance = new(20260101);
    private long _seq;
    private long _second;

    /// <summary>So many seconds of one series.</summary>
    public Commit OfOneSeries(int readings, string series = "one")
    {
        var rows = ImmutableArray.CreateBuilder<Reading>(readings);
        for (var i = 0; i < readings; i++) rows.Add(Reading(series, ++_second));
        return Of(rows.MoveToImmutable());
    }

    /// <summary>The next batch of readings as Step would hand it over.</summary>
    public Commit Of(ImmutableArray<Reading> readings)
    {
        var journal = new byte[readings.Length * bytesAReading];
        _chance.NextBytes(journal);
        return new Commit(partition, ++_seq, readings[^1].ReceivedAt, journal, new StepResult(Any, readings, [], [], [], []));
    }

    public static Reading Reading(string series, long second, bool late = false)
    {
        // Late ones fall between the seconds, so that each is a row of its own.
        var at = Start + TimeSpan.FromSeconds(late ? second - 600.5 : second);
        return new Reading(series, at, Start + TimeSpan.FromSeconds(second + 0.25), 7.3 + (second * 7 % 41 / 410.0), late ? Quality.Received | Quality.Late : Quality.Received, late ? Order.BackFill : Order.Newest);
    }
}
