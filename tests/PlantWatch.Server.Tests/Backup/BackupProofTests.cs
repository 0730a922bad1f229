using Microsoft.Data.Sqlite;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Commands;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Backup;

/// <summary>A backup is believed only when every way of looking at it agrees, and refused in words when one does not.</summary>
public sealed class BackupProofTests
{
    private static readonly PartitionKey Hall = new("hall");

    [Fact]
    public async Task A_whole_backup_is_proved_by_files_counts_sums_and_state()
    {
        using var backup = await KnownBackup.MakeAsync();
        var said = new List<string>();

        var manifest = new BackupCheck(said.Add).Prove(backup.Folder);

        Assert.Equal((719, 720), (manifest.Partitions.Single().Readings, (int)manifest.Partitions.Single().Journal - 1));
        Assert.Contains("files: 4 as they were written", said);
        Assert.Contains(said, s => s.StartsWith("integrity: ", StringComparison.Ordinal));
        Assert.Contains(said, s => s.Contains("received 719 = stored 719 + duplicates 0 + refused 0", StringComparison.Ordinal));
        Assert.Contains(said, s => s.EndsWith("from the whole journal", StringComparison.Ordinal));
        Assert.Equal("an older one", await File.ReadAllTextAsync(Path.Combine(backup.Folder, "plant-files", "older.yaml")));
    }

    [Fact]
    public async Task The_proof_writes_nothing()
    {
        using var backup = await KnownBackup.MakeAsync();
        var before = Directory.GetFiles(backup.Folder, "*", SearchOption.AllDirectories).Order().Select(f => (f, CheckSums.Of(f))).ToArray();

        new BackupCheck(_ => { }).Prove(backup.Folder);

        Assert.Equal(before, Directory.GetFiles(backup.Folder, "*", SearchOption.AllDirectories).Order().Select(f => (f, CheckSums.Of(f))));
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.999)]
    public async Task A_backup_that_was_cut_off_is_refused(double part)
    {
        using var backup = await KnownBackup.MakeAsync();
        using (var file = new FileStream(backup.Record, FileMode.Open)) file.SetLength((long)(file.Length * part));

        Assert.Contains("it was cut off or written on", Refusal(backup), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("record.db")]
    [InlineData("manifest.json")]
    [InlineData("plant.in-force.yaml")]
    public async Task One_flipped_bit_anywhere_is_refused(string name)
    {
        using var backup = await KnownBackup.MakeAsync();
        var path = Path.Combine(backup.Folder, name);
        var bytes = await File.ReadAllBytesAsync(path);
        foreach (var place in Enumerable.Range(0, 40).Select(i => (int)((bytes.Length - 1L) * i / 39)))
        {
            bytes[place] ^= 1;
            await File.WriteAllBytesAsync(path, bytes);
            Assert.Contains($"{name} is not what was written", Refusal(backup), StringComparison.Ordinal);
            bytes[place] ^= 1;
        }
    }

    [Fact]
    public async Task A_backup_without_a_file_or_its_list_is_refused()
    {
        using var backup = await KnownBackup.MakeAsync();
        File.Move(Path.Combine(backup.Folder, "plant.in-force.yaml"), Path.Combine(backup.Root, "elsewhere"));
        Assert.Contains("plant.in-force.yaml is missing", Refusal(backup), StringComparison.Ordinal);
        File.Delete(Path.Combine(backup.Folder, CheckSums.File));
        Assert.Contains("is no whole backup", Refusal(backup), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_list_that_leads_out_of_the_folder_is_none()
    {
        using var backup = await KnownBackup.MakeAsync();
        await File.AppendAllTextAsync(Path.Combine(backup.Folder, CheckSums.File), $"{new string('0', 64)}  ../data/record.db\n");

        Assert.Contains("is no whole backup", Refusal(backup), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("DELETE FROM reading WHERE t = (SELECT max(t) FROM reading)", "readings are there")]
    [InlineData("DELETE FROM journal WHERE seq = (SELECT max(seq) FROM journal)", "the journal ends at batch 720 instead of 721")]
    public async Task What_was_taken_out_of_the_record_is_missed_by_the_sums(string harm, string words)
    {
        using var backup = await KnownBackup.MakeAsync();
        Harm(backup, harm);

        Assert.Contains(words, Refusal(backup), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_holds_something_else_than_its_manifest_says_is_refused()
    {
        using var backup = await KnownBackup.MakeAsync();
        Execute(backup.Record, "INSERT INTO refusal (partition, id, received, topic, payload, reason, detail) VALUES (1, x'01', 1, 't', x'', 'r', '')");
        backup.Sign();

        Assert.Contains("the manifest says", Refusal(backup), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_snapshot_that_the_journal_does_not_lead_to_is_refused()
    {
        using var backup = await KnownBackup.MakeAsync();
        await using (var store = SqliteStore.Open(backup.Record, TimeZoneInfo.Utc))
        {
            var state = PlantJson.Write(CircuitState.Of(Core.Plans.CircuitPlan.Nowhere));
            await store.SaveSnapshotAsync(Hall, new Snapshot(400, CircuitState.CurrentFoldVersion, PlantJson.Hash(state), state), default);
        }

        Harm(backup, "PRAGMA journal_mode = DELETE");

        // It knows of no probe, so what came after it was refused by it.
        Assert.Contains("received 321 = stored 0 + duplicates 0 + refused 321, but 719 readings are there", Refusal(backup), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_commands_say_what_they_found_and_answer_with_0_or_1()
    {
        using var backup = await KnownBackup.MakeAsync(backUp: false);
        var (said, refused) = (new StringWriter(), new StringWriter());
        int? Run(params string[] words) => CommandLine.Run(words, said, refused);

        Assert.Equal(0, Run("backup", "--data", backup.Data, "--out", backup.Into));
        var made = Directory.GetDirectories(backup.Into).Single();
        Assert.Contains("719 readings, hall up to batch 721", said.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, Run("verify-backup", Path.Combine(made, "record.db")));
        Assert.Equal(1, Run("restore", made, "--data", backup.Data));
        Assert.Contains("is not empty", refused.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, Run("restore", made, "--data", Path.Combine(backup.Root, "new")));
        Assert.Contains("restored: the record as it stood on", said.ToString(), StringComparison.Ordinal);
        await using (var store = SqliteStore.Open(Path.Combine(backup.Root, "new", "record.db"), TimeZoneInfo.Utc)) Assert.Equal(721, await store.LastSeqAsync(Hall, default));
        using (var file = new FileStream(Path.Combine(made, "record.db"), FileMode.Open)) file.SetLength(file.Length - 1);
        Assert.Equal(1, Run("verify-backup", made));
        Assert.Equal(1, Run("restore", made, "--data", Path.Combine(backup.Root, "newer")));
        Assert.False(Directory.Exists(Path.Combine(backup.Root, "newer")));
        Assert.Equal(1, Run("backup", "--data", Path.Combine(backup.Root, "nothing"), "--out", backup.Into));
        Assert.Equal(2, Run("restore", made));
    }

    private static void Harm(KnownBackup backup, string sql)
    {
        Execute(backup.Record, sql);
        using (var archive = SqliteArchive.OpenOfAnyAge(backup.Record))
        {
            var manifest = BackupManifest.Read(backup.Folder) with { Partitions = archive.Sums() };
            File.Delete(Path.Combine(backup.Folder, BackupFolder.Manifest));
            manifest.Write(backup.Folder);
        }

        backup.Sign();
    }

    private static string Refusal(KnownBackup backup) => Assert.Throws<BackupException>(() => new BackupCheck(_ => { }).Prove(backup.Folder)).Message;

    private static void Execute(string path, string sql)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
