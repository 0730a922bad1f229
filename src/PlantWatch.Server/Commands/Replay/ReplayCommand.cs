using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>Replays a recorded plant through the fold that runs live, and writes what it would have said and when. Causal: half of the input gives the same first half.</summary>
internal static class ReplayCommand
{
    /// <summary>Reads FOLDER/input, writes verdicts.csv and doubted.csv; 0 when done, 2 when the input cannot be read.</summary>
    public static int Run(string folder, string to, TextWriter output, TextWriter complaints, int atOnce = 0)
    {
        try
        {
            var start = Stopwatch.GetTimestamp();
            var plant = new RecordedPlant(Path.Combine(folder, "input"));
            using var file = File.OpenHandle(Path.Combine(folder, "input", "readings.csv"), options: FileOptions.SequentialScan);
            Directory.CreateDirectory(to);
            using var verdicts = Table(to, "verdicts.csv", "time,probe,status,bias,bias_sd\n");
            using var doubted = Table(to, "doubted.csv", "time,pool,quantity\n");
            var readings = All(plant, file, output, atOnce > 0 ? atOnce : Environment.ProcessorCount, sheet =>
            {
                verdicts.Write(sheet.Verdicts);
                doubted.Write(sheet.Doubted);
            });
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{readings:#,0} readings in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s; written to {to}"));
            return 0;
        }
        catch (Exception fault) when ((fault is AggregateException ? fault.InnerException : fault) is IOException or UnauthorizedAccessException or FormatException)
        {
            complaints.WriteLine((fault.InnerException ?? fault).Message);
            return 2;
        }
    }

    // Pools know nothing of each other: they run side by side, and what they say is written in their order.
    private static long All(RecordedPlant plant, SafeFileHandle file, TextWriter output, int atOnce, Action<VerdictSheet> write)
    {
        PoolReplay[] pools = [.. plant.Pools.Select(p => new PoolReplay(p, plant.Aside(p.Id)))];
        var sections = new ReadingSections(file, plant.Pools);
        var progress = new Progress(output, output == Console.Out && !Console.IsOutputRedirected, RandomAccess.GetLength(file));
        var inTurn = Partitioner.Create(pools.Zip(sections.All()), EnumerablePartitionerOptions.NoBuffering);
        Parallel.ForEach(inTurn, new ParallelOptions { MaxDegreeOfParallelism = atOnce }, p => p.First.Run(file, p.Second, bytes => progress.Add(bytes)));
        progress.End();
        foreach (var pool in pools)
        {
            if (pool.Fault is { } fault) throw fault;
            write(pool.Sheet);
        }

        // Nothing is left out in silence: what belongs to no probe of the plant, or stands where its pool is over, is named.
        if (pools.Sum(p => p.Refused) is > 0 and var refused) output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{refused:#,0} readings lie beyond what their probe can show and were refused"));
        return sections.Stranger is { } line ? throw new FormatException($"readings.csv: \"{line}\" is of no probe of plant.csv, or its pool was over before") : pools.Sum(p => p.Readings);
    }

    private static StreamWriter Table(string folder, string name, string head)
    {
        var table = new StreamWriter(Path.Combine(folder, name), append: false, new UTF8Encoding(false), 1 << 16);
        table.Write(head);
        return table;
    }
}
