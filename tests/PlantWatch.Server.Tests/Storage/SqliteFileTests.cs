using System.Globalization;
using Microsoft.Data.Sqlite;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;
using SQLitePCL;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>What only a store in a file can do: be opened again, be the wrong file, fail half-way.</summary>
public sealed class SqliteFileTests : IDisposable
{
    private static readonly TimeZoneInfo London = TimeZoneInfo.FindSystemTimeZoneById("Europe/London");
    private static readonly CancellationToken None = CancellationToken.None;
    private readonly DatabaseFile _file = new();

    public void Dispose() => _file.Remove();

    private SqliteStore Open(string zone = "Europe/London") => SqliteStore.Open(_file.Path, TimeZoneInfo.FindSystemTimeZoneById(zone));

    [Fact]
    public async Task What_was_committed_is_there_after_opening_again()
    {
        await using (var store = Open())
        {
            await store.CommitAsync([Batch.Of(1, Batch.Ph(Batch.Noon, 7.5), Batch.Ph(Batch.Noon + TimeSpan.FromSeconds(10), 7.25))], None);
            await store.SaveSnapshotAsync(Batch.Main, new Snapshot(1, 1, "hash", new byte[] { 9 }), None);
        }

        await using var again = Open();

        Assert.Equal(1, await again.LastSeqAsync(Batch.Main, None));
        Assert.Equal(1, (await again.LatestSnapshotAsync(Batch.Main, 1, None))!.Seq);
        // It knows its newest reading still: the first is a duplicate, the last is joined to the same minute.
        var receipt = (await again.CommitAsync([Batch.Of(2, Batch.Ph(Batch.Noon, 7.5), Batch.Ph(Batch.Noon + TimeSpan.FromSeconds(20), 7.75))], None))[0];
        Assert.Equal(new BackFillTally(1, 0), receipt.BackFills);
        var minute = (await again.SeriesAsync(Batch.Main, new SeriesQuery("main-ph", Batch.Noon, Batch.Noon + TimeSpan.FromHours(1), 60, default), None)).Points.Single();
        Assert.Equal(new SeriesPoint(Batch.Noon, 3, 3, 7.25, 7.5, 7.75, 7.75), minute);
    }

    [Fact]
    public async Task A_writer_that_cannot_wait_for_the_disk_again_commits_nothing_that_must_be_down()
    {
        await using var store = Open();
        using var session = Session.OpenWriter(_file.Path, TimeSpan.FromSeconds(1));
        var (isDenied, ran) = (false, 0);
        strdelegate_authorizer denies = (_, action, name, value, _, _) => isDenied && action == raw.SQLITE_PRAGMA && (name, value) == ("synchronous", "FULL") ? raw.SQLITE_DENY : raw.SQLITE_OK;
        _ = raw.sqlite3_set_authorizer(session.Handle, denies, null);

        Assert.Equal(1, session.Unflushed(() => ++ran));
        Assert.Equal(2, session.Prepare("PRAGMA synchronous").Scalar());
        isDenied = true;
        Assert.Equal(2, session.Unflushed(() => ++ran));
        Assert.Throws<StorageException>(() => session.InTransaction(() => ++ran));
        Assert.Equal((2, 1L), (ran, session.Prepare("PRAGMA synchronous").Scalar()));

        isDenied = false;
        Assert.Equal(2, session.InTransaction(() => session.Prepare("PRAGMA synchronous").Scalar()));
        _ = raw.sqlite3_set_authorizer(session.Handle, (strdelegate_authorizer?)null, null);
    }

    [Fact]
    public async Task The_writer_uses_a_write_ahead_log_and_waits_for_the_disk()
    {
        await using var store = Open();
        using var session = Session.OpenWriter(_file.Path, TimeSpan.FromSeconds(1));

        Assert.Equal("wal", Text("PRAGMA journal_mode"));
        Assert.Equal(2, session.Prepare("PRAGMA synchronous").Scalar());
        Assert.True(session.Prepare("PRAGMA busy_timeout").Scalar() > 0);
        Assert.Equal(64 << 20, session.Prepare("PRAGMA journal_size_limit").Scalar());
        Assert.True(Version.Parse(Text("SELECT sqlite_version()")) >= new Version(3, 51, 3));
    }

    [Fact]
    public void A_database_of_a_newer_program_is_refused_and_left_alone()
    {
        Write($"PRAGMA application_id = {0x50577463}; CREATE TABLE things_to_come (x); PRAGMA user_version = 999");

        var refused = Assert.Throws<UnusableDatabaseException>(() => Open());

        Assert.Contains("version 999", refused.Message, StringComparison.Ordinal);
        Assert.Contains("versions up to", refused.Message, StringComparison.Ordinal);
        Assert.Equal("999", Text("PRAGMA user_version"));
        Assert.Equal("1", Text("SELECT count(*) FROM sqlite_schema"));
    }

    [Fact]
    public void A_database_of_another_program_is_refused_and_left_alone()
    {
        Write("CREATE TABLE other (x)");

        Assert.Throws<UnusableDatabaseException>(() => Open());

        Assert.Equal("1", Text("SELECT count(*) FROM sqlite_schema"));
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused_and_left_alone()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_file.Path)!);
        var text = string.Concat(Enumerable.Repeat("log sheet, week 22\n", 100));
        File.WriteAllText(_file.Path, text);

        Assert.Throws<UnusableDatabaseException>(() => Open());

        Assert.Equal(text, File.ReadAllText(_file.Path));
    }

    [Fact]
    public async Task Opening_again_runs_no_migration_twice()
    {
        await Open().DisposeAsync();
        var schema = Text("SELECT group_concat(sql) FROM sqlite_schema");

        await Open().DisposeAsync();

        Assert.Equal(schema, Text("SELECT group_concat(sql) FROM sqlite_schema"));
        Assert.Equal(Migrations.Newest.ToString(CultureInfo.InvariantCulture), Text("PRAGMA user_version"));
    }

    [Fact]
    public async Task A_commit_that_failed_is_in_no_other_eye_either()
    {
        await using (var store = Open())
        {
            await store.CommitAsync([Batch.Of(1, Batch.Ph(Batch.Noon, 7.5)).With(entries: [Batch.Gap(Batch.Noon, "a")])], None);
            var before = Contents();
            var later = Batch.Noon + TimeSpan.FromSeconds(1);
            // Everything a batch can bring is written before the entry that cannot be.
            var bad = Batch.Of(3, Batch.Ph(later, 7.5), Batch.Late(later - TimeSpan.FromHours(1), 7), Batch.Ph(later, 1, series: "new"))
                .With(entries: [Batch.Gap(later, "b"), Batch.Gap(Batch.Noon, "a")], renamed: [new("main-ph", "pool-ph")]);

            await Assert.ThrowsAnyAsync<StorageException>(async () => await store.CommitAsync([Batch.Of(2, Batch.Ph(later, 7)), bad, Batch.In(Batch.Spa, 1)], None));

            Assert.Equal(before, Contents());
        }
        await using var again = Open();
        Assert.Equal(1, await again.LastSeqAsync(Batch.Main, None));
        Assert.Equal("ok", Text("PRAGMA integrity_check"));
    }

    [Fact]
    public async Task While_another_process_holds_the_lock_a_commit_fails_whole_and_works_later()
    {
        await using var store = SqliteStore.Open(_file.Path, London, patience: TimeSpan.FromMilliseconds(50));
        using (var intruder = new SqliteConnection(ConnectionText))
        {
            intruder.Open();
            using var hold = intruder.CreateCommand();
            hold.CommandText = "BEGIN IMMEDIATE";
            hold.ExecuteNonQuery();

            var busy = await Assert.ThrowsAsync<StorageException>(async () => await store.CommitAsync([Batch.Of(1, Batch.Ph(Batch.Noon, 7))], None));

            Assert.True(busy.MayPass);
        }
        await store.CommitAsync([Batch.Of(1, Batch.Ph(Batch.Noon, 7))], None);
        Assert.Equal(1, await store.LastSeqAsync(Batch.Main, None));
    }

    [Fact]
    public void A_full_disk_fails_the_transaction_whole_and_may_pass()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_file.Path)!);
        using var session = Session.OpenWriter(_file.Path, Session.UsualPatience);
        Migrations.Apply(session);
        var pages = session.Prepare("PRAGMA page_count").Scalar();
        session.Script($"PRAGMA max_page_count = {pages + 5}");
        int Keep(int bytes) => session.InTransaction(() =>
            session.Prepare("INSERT INTO partition (key) VALUES ('a')").Run()
            + session.Prepare("INSERT INTO journal (partition, seq, received, events) VALUES (1, 1, 1, zeroblob(?1))").Bind(1, bytes).Run());

        var full = Assert.Throws<StorageException>(() => Keep(1_000_000));

        Assert.True(full.MayPass, full.Message);
        Assert.Equal(0, session.Prepare("SELECT count(*) FROM partition").Scalar());
        Assert.Equal(2, Keep(100));
    }

    [Fact]
    public async Task Two_stores_on_one_file_find_out_by_the_sequence()
    {
        await using var one = Open();
        await using var other = Open();
        await one.CommitAsync([Batch.Of(1)], None);
        await other.CommitAsync([Batch.Of(2)], None);

        await Assert.ThrowsAsync<OutOfSequenceException>(async () => await one.CommitAsync([Batch.Of(2)], None));
    }

    [Fact]
    public async Task Nobody_changes_or_removes_a_row_of_the_record()
    {
        await using var store = Open();
        await store.CommitAsync([Batch.Of(1).With(entries: [Batch.Gap(Batch.Noon, "a")])], None);

        Assert.Throws<SqliteException>(() => Write("UPDATE entry SET subject = 'b'"));
        Assert.Throws<SqliteException>(() => Write("DELETE FROM entry"));

        Assert.Equal("a", Text("SELECT subject FROM entry"));
    }

    [Fact]
    public async Task Days_are_cut_anew_when_the_site_gets_another_time_zone()
    {
        // One reading an hour for four days; Asia/Kathmandu is 5 h 45 min ahead of UTC.
        var from = Instant.FromUtc(2026, 6, 1);
        await using (var store = Open("UTC"))
            await store.CommitAsync([Batch.Of(1, [.. Enumerable.Range(0, 96).Select(i => Batch.Ph(from + TimeSpan.FromHours(i), i))])], None);

        await using var moved = Open("Asia/Kathmandu");

        var query = new SeriesQuery("main-ph", from - TimeSpan.FromDays(400), from + TimeSpan.FromDays(400), 800, default);
        var days = (await moved.SeriesAsync(Batch.Main, query, None)).Points;
        Assert.Equal([19, 24, 24, 24, 5], days.Select(d => d.Count));
        Assert.Equal(from + new TimeSpan(18, 15, 0), days[1].At);
        Assert.Equal((19d, 42d), (days[1].Min, days[1].Max));
    }

    [Fact]
    public async Task Readers_and_the_writer_do_not_disturb_each_other()
    {
        await using var store = Open();
        const int Batches = 150;
        using var done = new CancellationTokenSource();
        var readers = Enumerable.Range(0, 3).Select(_ => Task.Run(async () =>
        {
            var answers = 0;
            do
            {
                answers += await SeesWholeBatches(store) ? 1 : 0;
            }
            while (!done.IsCancellationRequested);
            return answers;
        })).ToArray();

        for (var seq = 1; seq <= Batches; seq++)
            await store.CommitAsync([TenReadings(Batch.Main, seq), TenReadings(Batch.Spa, seq)], None);
        await done.CancelAsync();

        foreach (var answers in await Task.WhenAll(readers)) Assert.True(answers > 0);
        Assert.Equal(Batches, await store.LastSeqAsync(Batch.Spa, None));
        Assert.Equal(10 * Batches, (await store.RawAsync(Batch.Main, "main-ph", Batch.Noon, Batch.Noon + TimeSpan.FromDays(9), int.MaxValue, None)).Count);
        Assert.Equal("ok", Text("PRAGMA integrity_check"));
    }

    [Fact]
    public async Task A_closed_store_says_so()
    {
        var store = Open();
        await store.DisposeAsync();
        await store.DisposeAsync();

        await Assert.ThrowsAsync<ObjectDisposedException>(async () => await store.CommitAsync([Batch.Of(1)], None));
        await Assert.ThrowsAsync<ObjectDisposedException>(async () => await store.LastSeqAsync(Batch.Main, None));
        // Its log is folded in and gone.
        Assert.False(File.Exists(_file.Path + "-wal"));
    }

    private static Commit TenReadings(PartitionKey partition, int seq) =>
        Batch.In(partition, seq, [.. Enumerable.Range(0, 10).Select(i => Batch.Ph(Batch.Noon + TimeSpan.FromSeconds((10 * seq) + i), 7))]);

    private static async Task<bool> SeesWholeBatches(SqliteStore store)
    {
        var raw = await store.RawAsync(Batch.Main, "main-ph", Batch.Noon, Batch.Noon + TimeSpan.FromDays(9), int.MaxValue, None);
        Assert.Equal(0, raw.Count % 10);
        var line = await store.SeriesAsync(Batch.Main, new SeriesQuery("main-ph", Batch.Noon, Batch.Noon + TimeSpan.FromHours(1), 60, default), None);
        var rolledUp = line.Points.Sum(p => p.Count);
        Assert.Equal(0, rolledUp % 10);
        Assert.True(rolledUp >= raw.Count);
        return raw.Count > 0;
    }

    private string ConnectionText => new SqliteConnectionStringBuilder { DataSource = _file.Path, Pooling = false }.ToString();

    private void Write(string sql)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_file.Path)!);
        using var connection = new SqliteConnection(ConnectionText);
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private string Text(string sql)
    {
        using var connection = new SqliteConnection(ConnectionText);
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture)!;
    }

    /// <summary>Every table that a commit writes, as another connection sees it.</summary>
    private string Contents() => string.Join('\n', new[]
    {
        "partition", "series", "journal", "reading", "rollup_minute", "rollup_quarter", "rollup_hour", "rollup_day", "refusal", "entry",
    }.Select(table => table + Text($"SELECT count(*) FROM {table}"))) + Text("SELECT group_concat(key || last_seq || already_there || conflicting) FROM partition") + Text("SELECT group_concat(key) FROM series");
}
