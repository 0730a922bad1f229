using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Hosting;
using PlantWatch.Server.PlantFile;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Commands.Replay.Store;

/// <summary>Replays the plant's own record between two times, under today's rules or another plant file, and compares what would have been said with what was said. The record is only read; a server may be writing it meanwhile.</summary>
internal static class StoreReplayCommand
{
    // Bias and learned lines rest on the checks before: they are learned again before anything is compared.
    private static readonly TimeSpan RunIn = TimeSpan.FromDays(30);

    private static readonly string[] Sayings = ["judgement", "standing", "alarm"];

    /// <summary>Writes comparison.csv, verdicts.csv and doubted.csv; 0 when done, 1 when the plant file is bad, 2 when the record cannot be read.</summary>
    public static int Run(StoreReplayRequest asked, TextWriter output, TextWriter complaints)
    {
        try
        {
            var read = PlantFileSource.Read(asked.Plant ?? LastGoodPlan.PathIn(asked.Data)).Understand();
            foreach (var error in read.Errors) complaints.WriteLine(error);
            if (read.Plan is not { } plan) return 1;
            var file = Path.Combine(asked.Data, "record.db");
            if (!File.Exists(file)) throw new FileNotFoundException($"{file} is not there");
            using var archive = SqliteArchive.Open(file);
            Directory.CreateDirectory(asked.Out);
            All(asked, plan, archive, output);
            return 0;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or StorageException)
        {
            complaints.WriteLine(fault.Message);
            return 2;
        }
    }

    private static void All(StoreReplayRequest asked, PlantPlan plan, SqliteArchive archive, TextWriter output)
    {
        output.WriteLine($"Stored readings in the order of their sample times, checks and calibrations when they were entered, {asked.From} to {asked.To}, under {asked.Plant ?? "the plant file in force"}.");
        var differences = new List<Difference>();
        using var verdicts = Table(asked.Out, "verdicts.csv", "time,probe,status,bias,bias_sd\n");
        using var doubted = Table(asked.Out, "doubted.csv", "time,pool,quantity\n");
        foreach (var circuit in plan.Circuits)
        {
            var partition = new PartitionKey(circuit.Id);
            if (!archive.Holds(partition) && circuit.Was is { } was) partition = new PartitionKey(was);
            if (!archive.Holds(partition))
            {
                output.WriteLine($"{circuit.Id}: the record knows no such circuit");
                continue;
            }

            var replay = Replayed(asked, circuit, archive, partition, output);
            differences.AddRange(Compare(asked, archive, partition, replay));
            verdicts.Write(replay.Sheet.Verdicts);
            doubted.Write(replay.Sheet.Doubted);
        }

        ComparisonSheet.Write(Path.Combine(asked.Out, "comparison.csv"), differences);
        ComparisonSheet.Say(differences, output);
        output.WriteLine($"Not compared: alarms of {string.Join(" and ", Episode.NotCompared.Select(r => r.Number))} (incidents, clocks of devices), acknowledgements and shelves, what lies within two minutes. "
            + "Late readings stand here at their sample time, and where the server stood still probes are silent.");
    }

    private static StoredCircuit Replayed(StoreReplayRequest asked, CircuitPlan circuit, SqliteArchive archive, PartitionKey partition, TextWriter output)
    {
        var start = Instant.Earlier(asked.From, Instant.Later(asked.From - RunIn, StoredHappenings.Beginning(archive, partition)));
        var replay = new StoredCircuit(archive, partition, circuit, start, asked.To);
        var progress = new Progress(output, output == Console.Out && !Console.IsOutputRedirected, (long)(asked.To - start).TotalSeconds);
        var shown = start;
        replay.Run(at =>
        {
            progress.Add((int)(at - shown).TotalSeconds);
            shown = at;
        });
        progress.End();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{circuit.Id}: {replay.Readings:#,0} readings from {start} on, {replay.Taken:#,0} checks and calibrations; {replay.Refused:#,0} readings and {replay.TurnedDown:#,0} checks and calibrations do not fit the plant file"));
        return replay;
    }

    private static IEnumerable<Difference> Compare(StoreReplayRequest asked, SqliteArchive archive, PartitionKey partition, StoredCircuit replay)
    {
        RecordEntry[] live = [.. archive.Entries(partition, new EntryQuery(Sayings, To: asked.To, Limit: int.MaxValue)).Where(e => e.At < asked.To).OrderBy(e => e.At).ThenBy(e => e.Id)];
        return [
            .. Difference.Verdicts(live, replay.Entries, asked.From, asked.To),
            .. Difference.Between(Episode.Flags(live), Episode.Flags(replay.Entries), asked.From, asked.To),
            .. Difference.Between(Episode.Alarms(live), Episode.Alarms(replay.Entries), asked.From, asked.To),
        ];
    }

    private static StreamWriter Table(string folder, string name, string head)
    {
        var table = new StreamWriter(Path.Combine(folder, name), append: false, new UTF8Encoding(false), 1 << 16);
        table.Write(head);
        return table;
    }
}
