using System.Globalization;
using System.Text.Json;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Backup;

/// <summary>Proves a backup by comparison, without writing to it: hashes, the engine's own look, the counts of the manifest, the closing sums of the ledger, and the state folded in two ways.</summary>
/// <param name="say">Told each finding, in words.</param>
/// <param name="folding">Told how many batches were folded, of how many.</param>
internal sealed class BackupCheck(Action<string> say, Action<long, long>? folding = null)
{
    /// <summary>Looks at all of it.</summary>
    /// <exception cref="BackupException">Something is not as it should be; the message says what.</exception>
    public BackupManifest Prove(string folder, CancellationToken cancellation = default)
    {
        var manifest = WholeFiles(folder);
        using var archive = SqliteArchive.OpenOfAnyAge(Path.Combine(folder, BackupFolder.Record));
        if (archive.Damage() is [var first, ..]) throw new BackupException($"{BackupFolder.Record} is damaged: {first}");
        say("integrity: the engine finds nothing wrong with the record");
        var sums = archive.Sums();
        Compare(manifest, sums);
        foreach (var partition in sums) Fold(archive, partition, cancellation);
        return manifest;
    }

    private BackupManifest WholeFiles(string folder)
    {
        if (!Directory.Exists(folder)) throw new BackupException($"{folder} is not there");
        var files = CheckSums.Read(folder) ?? throw new BackupException($"{folder} is no whole backup: its {CheckSums.File} is missing or cut off");
        foreach (var (name, sum) in files) Whole(folder, name, sum);
        say($"files: {files.Count} as they were written");
        try
        {
            return BackupManifest.Read(folder);
        }
        catch (JsonException fault)
        {
            throw new BackupException($"{BackupFolder.Manifest} cannot be read: {fault.Message}");
        }
    }

    private static void Whole(string folder, string name, string sum)
    {
        var path = Path.Combine(folder, name);
        if (!File.Exists(path)) throw new BackupException($"{name} is missing");
        if (CheckSums.Of(path) == sum) return;
        var size = new FileInfo(path).Length;
        throw new BackupException(name == BackupFolder.Record && Expected(folder) is { } bytes && bytes != size
            ? $"{name} has {size:0} bytes instead of {bytes:0}: it was cut off or written on"
            : $"{name} is not what was written: its SHA-256 is another one");
    }

    private static long? Expected(string folder)
    {
        try
        {
            return BackupManifest.Read(folder).Bytes;
        }
        catch (Exception fault) when (fault is JsonException or IOException)
        {
            return null;
        }
    }

    private void Compare(BackupManifest manifest, IReadOnlyList<PartitionSums> sums)
    {
        foreach (var (told, found) in manifest.Partitions.Zip(sums))
            if (told != found) throw new BackupException($"{found.Partition}: the manifest says {told}, the record holds {found}");
        if (manifest.Partitions.Count != sums.Count) throw new BackupException($"the manifest names {manifest.Partitions.Count} circuits, the record holds {sums.Count}");
        foreach (var p in sums)
            say(string.Create(CultureInfo.InvariantCulture, $"{p.Partition}: up to batch {p.LastSeq}, {p.Readings:#,0} readings, {p.Entries:#,0} entries, {p.Refusals:#,0} refused items, {p.Journal:#,0} batches in the journal, as the manifest says"));
    }

    private void Fold(SqliteArchive archive, PartitionSums sums, CancellationToken cancellation)
    {
        if (sums.LastSeq == 0) return;
        var key = new PartitionKey(sums.Partition);
        // Until the first plan in its journal a circuit has but a name.
        var plan = sums.Partition == CircuitPlan.Nowhere.Id ? CircuitPlan.Nowhere : new CircuitPlan { Id = sums.Partition, Name = sums.Partition, TimeZone = "UTC" };
        try
        {
            var source = new CountedJournal(archive, sums.LastSeq, folding);
            var near = Restore.FromAsync(source, key, plan, cancellation).GetAwaiter().GetResult();
            var hash = PlantJson.HashOf(near.State);
            Ledger(near, sums);
            if (!sums.IsJournalWhole) say($"{sums.Partition}: state {hash}; the journal begins at batch {sums.JournalFrom}, so it was not folded from zero");
            else if (near.Replayed == sums.LastSeq) say($"{sums.Partition}: state {hash}, from the whole journal");
            else Agree(PlantJson.HashOf(Restore.FromZeroAsync(source, key, near.State.Plan, cancellation).GetAwaiter().GetResult().State), hash, sums.Partition);
        }
        catch (Exception fault) when (fault is InvalidDataException or JsonException or FormatException or ArgumentException or InvalidOperationException)
        {
            throw new BackupException($"{sums.Partition}: the journal cannot be folded: {fault.Message}");
        }
    }

    private void Agree(string fromZero, string hash, string partition)
    {
        if (fromZero != hash) throw new BackupException($"{partition}: the state from the snapshot is {hash}, from zero {fromZero}");
        say($"{partition}: state {hash}, the same from the snapshot and from zero");
    }

    private static string Gone(PartitionSums sums) => sums.LetGo == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", with {sums.LetGo:#,0} that the retention let go");

    private void Ledger(RestoredCircuit circuit, PartitionSums sums)
    {
        if (circuit.Seq != sums.LastSeq) throw new BackupException($"{sums.Partition}: the journal ends at batch {circuit.Seq} instead of {sums.LastSeq}");
        var (ledger, late) = (circuit.State.Ledger, circuit.BackFills);
        var (stored, duplicates, refused) = (ledger.Stored - late.AlreadyThere - late.Conflicting, ledger.Duplicates + late.AlreadyThere, ledger.Refused + late.Conflicting);
        var line = string.Create(CultureInfo.InvariantCulture, $"{sums.Partition}: received {ledger.Received:#,0} = stored {stored:#,0} + duplicates {duplicates:#,0} + refused {refused:#,0}");
        if (ledger.Received != stored + duplicates + refused) throw new BackupException($"{line} does not close");
        if (stored != sums.Readings + sums.LetGo) throw new BackupException($"{line}, but {sums.Readings} readings are there{Gone(sums)}");
        say($"{line}, and as many readings are there{Gone(sums)}");
    }
}
