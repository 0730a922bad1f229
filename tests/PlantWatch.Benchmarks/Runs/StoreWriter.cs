using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;
using SQLitePCL;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>The store alone: what journal, roll-ups and the search for duplicates cost beside inserts.</summary>
internal sealed class StoreWriter : IBenchmark
{
    private const int RowsACommit = 1000;

    public string Name => "store";

    public string Title => "SQLite writer alone";

    public string Method =>
        "1,000 readings a commit, FULL, series interleaved, 5 % ten minutes late. Ours: `SqliteStore.CommitAsync` with a journal row, four tiers of roll-ups and duplicates told apart. "
        + "Baseline: one prepared insert a row through the engine's own interface into the same table without anything else. With 10,000 series each row of a commit is of another series: every one touches four roll-up rows of its own.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var rows = new List<Row>();
        foreach (var series in new[] { 30, 1_000, 10_000 })
        {
            var total = bench.Of(200_000, 20_000);
            await using var store = SqliteStore.Open(Path.Combine(bench.NewFolder($"ours-{series}"), "record.db"), TimeZoneInfo.Utc);
            using var bare = new BareInserts(Path.Combine(bench.NewFolder($"bare-{series}"), "bare.db"));
            var (mine, theirs) = (new Rows(series), new Rows(series));
            var batches = new Batches(new PartitionKey(Plants.Circuit));
            var pairs = await Rounds.InTurnAsync(
                bench.Rounds,
                async () =>
                {
                    List<Commit> commits = [.. Enumerable.Range(0, total / RowsACommit).Select(_ => batches.Of(mine.Next(RowsACommit)))];
                    return total / await Rounds.MillisecondsAsync(async () =>
                    {
                        foreach (var commit in commits) await store.CommitAsync([commit], default);
                    }) * 1000;
                },
                () =>
                {
                    List<ImmutableArray<Reading>> commits = [.. Enumerable.Range(0, total / RowsACommit).Select(_ => theirs.Next(RowsACommit))];
                    return Task.FromResult(Rounds.Rate(total, () => commits.ForEach(bare.Commit)));
                });
            rows.Add(pairs.Row($"{series:#,0} series, readings/s", "0.40"));
            bench.Say($"{series} series are done");
        }

        return rows;
    }

    /// <summary>Readings of many series in turn, one in twenty late.</summary>
    private sealed class Rows(int series)
    {
        private readonly string[] _keys = [.. Enumerable.Range(0, series).Select(Plants.Probe)];
        private long _count;

        public ImmutableArray<Reading> Next(int howMany)
        {
            var rows = ImmutableArray.CreateBuilder<Reading>(howMany);
            for (var i = 0; i < howMany; i++, _count++)
                rows.Add(Batches.Reading(_keys[_count % series], _count / series, late: ((_count * 13) + (_count / series)) % 20 == 0));
            return rows.MoveToImmutable();
        }
    }

    private sealed class BareInserts : IDisposable
    {
        private readonly SqliteConnection _connection;
        private readonly sqlite3_stmt _insert;
        private readonly Dictionary<string, long> _ids = [];

        public BareInserts(string path)
        {
            _connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
            _connection.Open();
            Run("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA wal_autocheckpoint = 4000; PRAGMA cache_size = -65536;");
            Run("CREATE TABLE reading (series INTEGER NOT NULL, t INTEGER NOT NULL, value REAL NOT NULL, quality INTEGER NOT NULL, lag INTEGER NOT NULL, PRIMARY KEY (series, t)) STRICT, WITHOUT ROWID");
            Check(raw.sqlite3_prepare_v3(_connection.Handle!, "INSERT INTO reading VALUES (?1, ?2, ?3, ?4, ?5)", raw.SQLITE_PREPARE_PERSISTENT, out _insert), raw.SQLITE_OK);
        }

        public void Commit(ImmutableArray<Reading> rows)
        {
            Run("BEGIN IMMEDIATE");
            foreach (var row in rows)
            {
                if (!_ids.TryGetValue(row.Series, out var id)) _ids.Add(row.Series, id = _ids.Count + 1);
                raw.sqlite3_bind_int64(_insert, 1, id);
                raw.sqlite3_bind_int64(_insert, 2, row.MeasuredAt.UnixMicroseconds);
                raw.sqlite3_bind_double(_insert, 3, row.Raw);
                raw.sqlite3_bind_int64(_insert, 4, (long)row.Quality);
                raw.sqlite3_bind_int64(_insert, 5, row.ReceivedAt.UnixMicroseconds - row.MeasuredAt.UnixMicroseconds);
                Check(raw.sqlite3_step(_insert), raw.SQLITE_DONE);
                Check(raw.sqlite3_reset(_insert), raw.SQLITE_OK);
            }

            Run("COMMIT");
        }

        public void Dispose()
        {
            _insert.Dispose();
            _connection.Dispose();
        }

        private void Run(string sql) => Check(raw.sqlite3_exec(_connection.Handle!, sql), raw.SQLITE_OK);

        private void Check(int code, int wanted)
        {
            if (code != wanted) throw new InvalidOperationException($"SQLite answered {code}: {raw.sqlite3_errmsg(_connection.Handle!).utf8_to_string()}");
        }
    }
}
