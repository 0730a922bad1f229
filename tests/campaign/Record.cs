using Microsoft.Data.Sqlite;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Campaign;

/// <summary>The record of a server that has ended, looked at from outside.</summary>
internal sealed class Record(string path, string plantFile)
{
    /// <summary>SQLite's own word on the file: "ok".</summary>
    public string Integrity() => Ask(path, "PRAGMA integrity_check", row => row.GetString(0)).First();

    /// <summary>Values of a probe in time order.</summary>
    public IReadOnlyList<double> Values(string circuit, string probe) => Ask(
        path,
        "SELECT value FROM reading WHERE series = (SELECT s.id FROM series s JOIN partition p ON p.id = s.partition WHERE p.key = $0 AND s.key = $1) ORDER BY t",
        row => row.GetDouble(0), circuit, probe);

    /// <summary>Readings in the record, of all probes.</summary>
    public long Rows() => Ask(path, "SELECT count(*) FROM reading", row => row.GetInt64(0)).Single();

    /// <summary>The sums of all circuits and strays: messages, received, stored, duplicates, refused; back-fills corrected as the page does.</summary>
    public async Task<Sums> SumsAsync()
    {
        await using var store = Open(path);
        var sums = new Sums(0, 0, 0, 0);
        foreach (var circuit in Circuits())
        {
            var restored = await Restore.FromAsync(store, new PartitionKey(circuit.Id), circuit, CancellationToken.None);
            var (ledger, fills) = (restored.State.Ledger, restored.BackFills);
            sums += new Sums(ledger.Received, ledger.Stored - fills.AlreadyThere - fills.Conflicting, ledger.Duplicates + fills.AlreadyThere, ledger.Refused + fills.Conflicting);
        }
        return sums;
    }

    /// <summary>Whether each circuit's state is the same as the server left it, from an older snapshot and the journal after it, and from the whole journal.</summary>
    public async Task<bool> StatesAgreeAsync()
    {
        var older = path + ".older";
        File.Copy(path, older, overwrite: true);
        // Without the newest snapshot the one before it has to serve, with the journal after it.
        Ask(older, "DELETE FROM snapshot WHERE seq = (SELECT max(seq) FROM snapshot n WHERE n.partition = snapshot.partition)", _ => 0);
        await using var store = Open(path);
        await using var olderStore = Open(older);
        foreach (var circuit in Circuits())
        {
            var key = new PartitionKey(circuit.Id);
            var live = (await store.LatestSnapshotAsync(key, CircuitState.CurrentFoldVersion, CancellationToken.None))?.StateHash;
            var fromOlder = PlantJson.HashOf((await Restore.FromAsync(olderStore, key, circuit, CancellationToken.None)).State);
            var fromZero = PlantJson.HashOf((await Restore.FromZeroAsync(store, key, circuit, CancellationToken.None)).State);
            if (live != fromOlder || live != fromZero) return false;
        }
        return true;
    }

    private IEnumerable<CircuitPlan> Circuits() => PlantFileSource.Read(plantFile).Understand().Plan!.Circuits.Append(CircuitPlan.Nowhere);

    private static SqliteStore Open(string file) => SqliteStore.Open(file, TimeZoneInfo.Utc);

    private static List<T> Ask<T>(string file, string sql, Func<SqliteDataReader, T> read, params string[] arguments)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < arguments.Length; i++) command.Parameters.AddWithValue($"${i}", arguments[i]);
        using var rows = command.ExecuteReader();
        var answer = new List<T>();
        while (rows.Read()) answer.Add(read(rows));
        return answer;
    }
}

/// <summary>The closing sums when nothing is in flight.</summary>
internal readonly record struct Sums(long Received, long Stored, long Duplicates, long Refused)
{
    public bool Close => Received == Stored + Duplicates + Refused;

    public static Sums operator +(Sums a, Sums b) => new(a.Received + b.Received, a.Stored + b.Stored, a.Duplicates + b.Duplicates, a.Refused + b.Refused);
}
