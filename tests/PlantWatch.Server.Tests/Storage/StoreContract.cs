using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>What every store must do. One suite, run on each engine.</summary>
public abstract partial class StoreContract : IAsyncLifetime
{
    protected static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");
    protected static readonly CancellationToken None = CancellationToken.None;

    private IRecordStore? _record;

    protected IRecordStore Record => _record ??= Open(London);

    protected ISeriesStore Series => (ISeriesStore)Record;

    /// <summary>A new, empty store.</summary>
    protected abstract IRecordStore Open(TimeZoneInfo siteZone);

    public virtual Task InitializeAsync() => Task.CompletedTask;

    public virtual async Task DisposeAsync()
    {
        if (_record is not null) await _record.DisposeAsync();
    }

    protected async Task<CommitReceipt> Commit(Commit commit) => (await Record.CommitAsync([commit], None))[0];

    protected ValueTask<IReadOnlyList<StoredReading>> Raw(string series = "main-ph") =>
        Series.RawAsync(Batch.Main, series, Instant.FromUtc(2000, 1, 1), Instant.FromUtc(2100, 1, 1), int.MaxValue, None);

    protected async Task<List<JournalRow>> Journal(PartitionKey partition, long after = 0)
    {
        var rows = new List<JournalRow>();
        await foreach (var row in Record.JournalAsync(partition, after, None)) rows.Add(row);
        return rows;
    }

    protected static string Json<T>(T value) => JsonSerializer.Serialize(value, PlantJson.Options);

    protected static Instant At(int hour, int minute = 0, int second = 0) => Instant.FromUtc(2026, 6, 1, hour, minute, second);
}
