using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>Makes commits the way a circuit would.</summary>
internal static class Batch
{
    public static readonly PartitionKey Main = new("main-circuit");
    public static readonly PartitionKey Spa = new("spa-circuit");
    public static readonly Instant Noon = Instant.FromUtc(2026, 6, 1, 12);

    private static readonly CircuitState Any = CircuitState.Of(CircuitPlan.Nowhere);

    public static Commit Of(long seq, params IEnumerable<Reading> readings) => In(Main, seq, readings);

    public static Commit In(PartitionKey partition, long seq, params IEnumerable<Reading> readings) =>
        new(partition, seq, Noon + TimeSpan.FromSeconds(seq), new byte[] { 1, 2, (byte)seq }, new StepResult(Any, [.. readings], [], [], [], []));

    public static Commit With(this Commit commit, ImmutableArray<Refusal> refusals = default, ImmutableArray<RecordEntry> entries = default, ImmutableArray<SeriesRenamed> renamed = default) =>
        commit with
        {
            Result = commit.Result with
            {
                Refusals = refusals.IsDefault ? [] : refusals, Entries = entries.IsDefault ? [] : entries, Renamed = renamed.IsDefault ? [] : renamed,
            },
        };

    /// <summary>A reading that follows all others of its series.</summary>
    public static Reading Ph(Instant at, double value, Quality quality = Quality.Received, string series = "main-ph") =>
        new(series, at, at + TimeSpan.FromMilliseconds(250), value, quality, Order.Newest);

    /// <summary>A reading at or before the newest of its series.</summary>
    public static Reading Late(Instant at, double value, Quality quality = Quality.Received | Quality.Late, string series = "main-ph") =>
        new(series, at, at + TimeSpan.FromHours(3), value, quality, Order.BackFill);

    public static RecordEntry Gap(Instant happened, string subject) => new(
        TimeOrderedId.Derive(happened, subject), happened + TimeSpan.FromMinutes(1), happened, subject,
        new GapEntry(happened, happened + TimeSpan.FromMinutes(5), Core.Reasons.Reason.Of("gap.session_lost", subject, 3.5)));

    public static RecordEntry Check(Instant sampled, string pool) => new(
        TimeOrderedId.Derive(sampled, pool), sampled + TimeSpan.FromHours(2), sampled, pool,
        new CheckEntry(
            new ManualCheck
            {
                Id = TimeOrderedId.Derive(sampled, "check"), PoolId = pool, SampledAt = sampled, EnteredAt = sampled + TimeSpan.FromMinutes(2), Who = "Robin",
                Results = [new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, 1.25, TestMethod.Photometer, Censoring.None, 2)],
                BottomVisible = true, Bathers = 14,
            },
            sampled + TimeSpan.FromHours(2),
            [new FieldRemark("results[0].value", Core.Reasons.Reason.Of("check.far_from_last", 7.3))]));
}
