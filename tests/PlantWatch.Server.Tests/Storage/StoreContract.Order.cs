using CsCheck;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public abstract partial class StoreContract
{
    // Sixteenths, so that sums are exact and do not depend on the order of addition.
    private static readonly Gen<(int Slot, int Sixteenths, bool Good)> AReading =
        Gen.Select(Gen.Int[0, 8000], Gen.Int[0, 224], Gen.Int[0, 3].Select(i => i > 0));

    private static readonly Gen<(List<(int Slot, int Sixteenths, bool Good)> Readings, List<int> Repeats, int Seed, int BatchSize)> AStory =
        Gen.Select(AReading.List[1, 120], Gen.Int[0, 10_000].List[0, 30], Gen.Int[0, 1_000_000], Gen.Int[1, 40]);

    [Fact]
    public async Task Order_of_arrival_changes_neither_the_raw_rows_nor_the_roll_ups()
    {
        var story = 0;
        await AStory.SampleAsync(
            async told =>
            {
                var partition = new PartitionKey($"story-{Interlocked.Increment(ref story)}");
                // From the day before the clocks go forward to the day after: 37 s apart, so that no bucket is treated alike.
                var truth = told.Readings.DistinctBy(r => r.Slot).Select(r => Truth(r.Slot, r.Sixteenths, r.Good)).ToList();
                var arrivals = truth.Concat(told.Repeats.Select(i => truth[i % truth.Count])).ToArray();
                new Random(told.Seed).Shuffle(arrivals);

                var receipts = await CommitInBatches(partition, arrivals, told.BatchSize);

                Assert.Equal(arrivals.Length - truth.Count, receipts.Sum(r => r.BackFills.AlreadyThere));
                Assert.Equal(0, receipts.Sum(r => r.BackFills.Conflicting));
                await IsAsComputedFromScratch(partition, truth);
            },
            iter: 60, threads: 1);
    }

    private static Reading Truth(int slot, int sixteenths, bool good)
    {
        var at = Instant.FromUtc(2026, 3, 28) + TimeSpan.FromSeconds(37 * slot);
        return Batch.Ph(at, sixteenths / 16.0, good ? Quality.Received : Doubted);
    }

    private async Task<List<CommitReceipt>> CommitInBatches(PartitionKey partition, Reading[] arrivals, int size)
    {
        var receipts = new List<CommitReceipt>();
        var newest = Instant.Never;
        var seq = 0L;
        foreach (var chunk in arrivals.Chunk(size))
        {
            var batch = new List<Reading>();
            foreach (var reading in chunk)
            {
                batch.Add(reading with { Order = reading.MeasuredAt > newest ? Order.Newest : Order.BackFill });
                newest = Instant.Later(newest, reading.MeasuredAt);
            }
            receipts.AddRange(await Record.CommitAsync([Batch.In(partition, ++seq, batch)], None));
        }
        return receipts;
    }

    private async Task IsAsComputedFromScratch(PartitionKey partition, List<Reading> truth)
    {
        var rows = new SortedList<Instant, StoredReading>(truth.ToDictionary(r => r.MeasuredAt, r => new StoredReading(r.MeasuredAt, r.ReceivedAt, r.Raw, r.Quality)));
        var (from, to) = (Instant.FromUtc(2026, 3, 27, 20), Instant.FromUtc(2026, 4, 1, 20));
        Assert.Equal(rows.Values, await Series.RawAsync(partition, "main-ph", from, to, int.MaxValue, None));
        const int Hours = 120;
        SeriesQuery[] queries =
        [
            new("main-ph", from, to, Hours * 60, TimeSpan.FromSeconds(37)),
            new("main-ph", from, to, Hours * 4, TimeSpan.FromSeconds(37)),
            new("main-ph", from, to, Hours, TimeSpan.FromSeconds(37)),
            new("main-ph", from, to, 7, TimeSpan.FromHours(5)),
            new("main-ph", from - TimeSpan.FromDays(400), to + TimeSpan.FromDays(400), 800, default),
        ];
        foreach (var query in queries)
        {
            var expected = PlainRollUp.Line(rows, query, London);
            var got = await Series.SeriesAsync(partition, query, None);
            Assert.Equal(expected.Tier, got.Tier);
            Assert.Equal(expected.Points, got.Points);
        }
    }
}
