using Microsoft.Data.Sqlite;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>Pictures in the record's own file: those of a job stay, the others go, and none is ever another.</summary>
public sealed class PictureTableTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly Instant Noon = Batch.Noon;
    private readonly DatabaseFile _file = new();

    public void Dispose() => _file.Remove();

    private SqliteStore Open() => SqliteStore.Open(_file.Path, TimeZoneInfo.Utc);

    private static Picture Of(int n) => new(PictureKind.Jpeg, 1, 1, BitConverter.GetBytes(n));

    [Fact]
    public async Task One_that_a_job_names_stays_and_one_that_none_does_goes_after_a_week()
    {
        await using var store = Open();
        Assert.True(await store.KeepAsync(Of(1), Noon, None));
        Assert.True(await store.KeepAsync(Of(2), Noon, None));
        Assert.Equal([Of(9).Hash], await store.TieAsync([Of(1).Hash, Of(9).Hash], None));
        Assert.Empty(await store.TieAsync([Of(1).Hash], None));
        Assert.True(await store.KeepAsync(Of(3), Noon + TimeSpan.FromDays(8), None));
        Assert.Equal(Of(1).Bytes.ToArray(), (await store.PictureAsync(Of(1).Hash, None))!.Bytes.ToArray());
        Assert.Null(await store.PictureAsync(Of(2).Hash, None));
        Assert.Null(await store.PictureAsync("no hash", None));
    }

    [Fact]
    public async Task Nobody_fills_the_disk_with_pictures_that_no_job_names()
    {
        await using var store = Open();
        for (var i = 0; i < IPictureStore.MostWaiting; i++) Assert.True(await store.KeepAsync(Of(i), Noon, None));
        Assert.False(await store.KeepAsync(Of(9999), Noon, None));
        Assert.True(await store.KeepAsync(Of(7), Noon, None));
        await store.TieAsync([Of(7).Hash], None);
        Assert.True(await store.KeepAsync(Of(9999), Noon, None));
    }

    [Fact]
    public async Task One_that_is_not_what_was_kept_is_not_shown_and_no_hand_changes_or_removes_that_of_a_job()
    {
        await using (var store = Open())
        {
            await store.KeepAsync(Of(1), Noon, None);
            await store.TieAsync([Of(1).Hash], None);
        }

        foreach (var sql in new[] { "UPDATE picture SET bytes = x'00'", "DELETE FROM picture", "UPDATE picture SET tied = 0" }) Assert.Throws<SqliteException>(() => Run(sql));
        // A disk asks no trigger.
        Run("DROP TRIGGER picture_is_never_changed; UPDATE picture SET bytes = x'00'");
        await using var again = Open();
        Assert.Null(await again.PictureAsync(Of(1).Hash, None));
    }

    private void Run(string sql)
    {
        using var connection = new SqliteConnection($"Data Source={_file.Path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
