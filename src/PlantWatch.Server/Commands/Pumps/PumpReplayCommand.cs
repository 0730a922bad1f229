using System.Diagnostics;
using System.Globalization;
using System.Text;
using PlantWatch.Core.Dosing.Supervision;

namespace PlantWatch.Server.Commands.Pumps;

/// <summary>Replays recorded dosing through the supervision of pumps and writes what it says and when. Causal: half of the input gives the same first half.</summary>
internal static class PumpReplayCommand
{
    /// <summary>Reads FOLDER/input, writes pump_verdicts.csv and pump_evidence.csv; 0 when done, 1 when rows could not be used, 2 when the input cannot be read.</summary>
    public static int Run(string folder, string to, TextWriter output, TextWriter complaints)
    {
        try
        {
            var (start, bad, input) = (Stopwatch.GetTimestamp(), new BadRows(complaints), Path.Combine(folder, "input"));
            var pools = PumpTables.Pools(input, bad);
            var tests = PumpTables.Tests(input, pools, bad);
            var rows = new SignalRows(input, pools, bad);
            Directory.CreateDirectory(to);
            using var verdicts = Table(to, "pump_verdicts.csv", PumpSheet.VerdictHead);
            using var evidence = Table(to, "pump_evidence.csv", PumpSheet.EvidenceHead);
            Replay(pools, tests, rows, new PumpSheet(verdicts, evidence));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{rows.Used:#,0} rows in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s, {bad.Count} not used; written to {to}"));
            return bad.Count == 0 ? 0 : 1;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException)
        {
            complaints.WriteLine(fault.Message);
            return 2;
        }
    }

    private static void Replay(Dictionary<string, PumpedPool> pools, Dictionary<string, List<PumpTables.Test>> tests, SignalRows rows, PumpSheet sheet)
    {
        var (pool, next) = ("", 0);
        PoolSupervisor supervisor = null!;
        foreach (var (name, minute) in rows.All())
        {
            if (name != pool) (pool, next, supervisor) = (name, 0, new PoolSupervisor(pools[name]));
            for (; next < tests[name].Count && tests[name][next].At <= minute.At; next++) supervisor.Test(tests[name][next].FreeChlorine);
            foreach (var verdict in supervisor.Take(minute)) sheet.Write(name, verdict);
        }
    }

    private static StreamWriter Table(string folder, string name, string head)
    {
        var table = new StreamWriter(Path.Combine(folder, name), append: false, new UTF8Encoding(false), 1 << 16);
        table.Write(head);
        return table;
    }
}
