using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.History;
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
            var read = (asked.Plant is { } path ? PlantFileSource.Read(path) : LastGoodPlan.Source(asked.Data)).Understand();
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
        output.WriteLine($"Stored readings in the order of their sample times, what people did when they did it, {asked.From} to {asked.To}, under {asked.Plant ?? "the plant file in force"}.");
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

            if (archive.RawFrom(partition) is { IsSet: true } gone && gone > asked.From - RunIn) output.WriteLine($"{circuit.Id}: single readings before {gone} were let go by the retention and are missing here");
            var (sheet, entries) = (new VerdictSheet(circuit.Probes.Select(p => p.Id).ToHashSet()), new List<RecordEntry>());
            Replay(asked, circuit, archive, partition, output, result =>
            {
                entries.AddRange(result.Entries.Where(e => Sayings.Contains(e.Body.Kind)));
                sheet.Take(result.Entries, result.Next);
            });
            differences.AddRange(Compare(asked, archive, partition, entries));
            verdicts.Write(sheet.Verdicts);
            doubted.Write(sheet.Doubted);
        }

        ComparisonSheet.Write(Path.Combine(asked.Out, "comparison.csv"), differences);
        ComparisonSheet.Say(differences, output);
        output.WriteLine($"Not compared: alarms of {Episode.NotCompared.Number} (clocks of devices), what lies within two minutes. "
            + "Late readings stand here at their sample time, and where the server stood still probes are silent.");
    }

    private static void Replay(StoreReplayRequest asked, CircuitPlan circuit, SqliteArchive archive, PartitionKey partition, TextWriter output, Action<StepResult> take)
    {
        var start = Instant.Earlier(asked.From, Instant.Later(asked.From - RunIn, RecordedActs.Beginning(archive, partition)));
        var replay = new CircuitReplay(archive, partition, circuit, start, asked.To, take, fine: true);
        var progress = new Progress(output, output == Console.Out && !Console.IsOutputRedirected, (long)(asked.To - start).TotalSeconds);
        var shown = start;
        replay.Run(
            at =>
            {
                progress.Add((int)(at - shown).TotalSeconds);
                shown = at;
            }, CancellationToken.None);
        progress.End();
        var side = replay.Side;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{circuit.Id}: {side.Readings:#,0} readings from {start} on, {side.Taken:#,0} checks and calibrations; {side.Refused:#,0} readings and {side.TurnedDown:#,0} checks and calibrations do not fit the plant file"));
    }

    private static IEnumerable<Difference> Compare(StoreReplayRequest asked, SqliteArchive archive, PartitionKey partition, List<RecordEntry> replayed)
    {
        RecordEntry[] live = [.. archive.Entries(partition, new EntryQuery(Sayings, To: asked.To, Limit: int.MaxValue)).Where(e => e.At < asked.To).OrderBy(e => e.At).ThenBy(e => e.Id)];
        return [
            .. Difference.Verdicts(live, replayed, asked.From, asked.To),
            .. Difference.Between(Episode.Flags(live), Episode.Flags(replayed), asked.From, asked.To),
            .. Difference.Between(Episode.Alarms(live), Episode.Alarms(replayed), asked.From, asked.To),
        ];
    }

    private static StreamWriter Table(string folder, string name, string head)
    {
        var table = new StreamWriter(Path.Combine(folder, name), append: false, new UTF8Encoding(false), 1 << 16);
        table.Write(head);
        return table;
    }
}
