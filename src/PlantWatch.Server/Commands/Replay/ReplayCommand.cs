using System.Collections.Immutable;
using System.Diagnostics;
using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>Replays a recorded plant through the fold that runs live, and writes what it would have said and when. Causal: half of the input gives the same first half.</summary>
internal static class ReplayCommand
{
    // The clock ticks every minute between two rows: a year typed wrong must not keep it ticking for centuries.
    private static readonly TimeSpan MostDays = TimeSpan.FromDays(3660);

    /// <summary>Reads FOLDER/input, writes verdicts.csv and doubted.csv; 0 when done, 2 when the input cannot be read.</summary>
    public static int Run(string folder, string to, TextWriter output, TextWriter complaints)
    {
        try
        {
            var start = Stopwatch.GetTimestamp();
            var input = Path.Combine(folder, "input");
            Directory.CreateDirectory(to);
            using var verdicts = new StreamWriter(Path.Combine(to, "verdicts.csv"), append: false, new UTF8Encoding(false), 1 << 16);
            using var doubted = new StreamWriter(Path.Combine(to, "doubted.csv"), append: false, new UTF8Encoding(false));
            var readings = All(input, new VerdictSheet(verdicts, doubted, BenchFiles.Probes(input).Select(p => p.Id).ToHashSet()), output);
            output.WriteLine($"{readings:#,0} readings in {Stopwatch.GetElapsedTime(start).TotalSeconds:0.0} s; written to {to}");
            return 0;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException)
        {
            complaints.WriteLine(fault.Message);
            return 2;
        }
    }

    private static long All(string input, VerdictSheet sheet, TextWriter output)
    {
        sheet.Begin();
        var probes = BenchFiles.Probes(input).ToLookup(p => p.Pool);
        var poolOf = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var probe in probes.SelectMany(g => g))
            if (!poolOf.TryAdd(probe.Id, probe.Pool)) throw new FormatException($"plant.csv: {probe.Id} stands there twice");
        var aside = Aside(input, poolOf);
        using var file = new ReadingsFile(Path.Combine(input, "readings.csv"));
        var readings = 0L;
        foreach (var pool in probes)
        {
            readings += One(pool.Key, [.. pool], aside.GetValueOrDefault(pool.Key) ?? [], file, sheet);
            output.WriteLine($"{pool.Key}: {file.Part:0 %}");
        }

        // Nothing is left out in silence: what belongs to no probe of the plant, or stands where its pool is over, is named.
        return file.Has ? throw new FormatException($"readings.csv: \"{CsvTable.Short(file.Line)}\" is of no probe of plant.csv, or its pool was over before") : readings;
    }

    private static long One(string pool, BenchFiles.Probe[] probes, List<Happening> aside, ReadingsFile file, VerdictSheet sheet)
    {
        var mine = probes.ToDictionary(p => p.Id, StringComparer.Ordinal);
        if (!file.Has && aside.Count == 0) return 0;
        var start = Instant.Earlier(file.Has ? file.At : aside[0].At, aside.Count > 0 ? aside[0].At : file.At);
        if (aside.Count > 0 && aside[^1].At - start > MostDays) throw new FormatException($"{pool}: more than {MostDays.TotalDays:0} days between its first and its last row");
        var replayed = new ReplayedPool(pool, probes, start, sheet);
        var (next, minute, count) = (0, start, 0L);
        while (file.Has && mine.ContainsKey(file.Probe))
        {
            if (file.At - minute > MostDays) throw new FormatException($"readings.csv: \"{CsvTable.Short(file.Line)}\" lies more than {MostDays.TotalDays:0} days after what stands before it");
            Until(replayed, aside, ref next, ref minute, file.At);
            replayed.Reading(file.At, file.Probe, file.Payload());
            count++;
            file.Next();
        }

        Until(replayed, aside, ref next, ref minute, aside.Count > 0 ? aside[^1].At + TimeSpan.FromMinutes(1) : minute);
        replayed.Flush();
        return count;
    }

    // What happened beside the readings up to a time, and the clock that ticks every minute.
    private static void Until(ReplayedPool pool, List<Happening> aside, ref int next, ref Instant minute, Instant at)
    {
        while (true)
        {
            var tick = minute + TimeSpan.FromMinutes(1);
            if (next < aside.Count && aside[next].At <= at && aside[next].At <= tick) aside[next++].Do(pool);
            else if (tick <= at) pool.Tick(minute = tick);
            else return;
        }
    }

    private static Dictionary<string, List<Happening>> Aside(string input, Dictionary<string, string> poolOf)
    {
        var all = new Dictionary<string, List<Happening>>(StringComparer.Ordinal);
        void Add(string pool, Instant at, Action<ReplayedPool> what)
        {
            if (!all.TryGetValue(pool, out var list)) all.Add(pool, list = []);
            list.Add(new Happening(at, what));
        }

        string Pool(string probe) => poolOf.GetValueOrDefault(probe) ?? throw new FormatException($"services.csv: {probe} is no probe of plant.csv");
        void Known(string pool, string file)
        {
            if (!poolOf.ContainsValue(pool)) throw new FormatException($"{file}: {pool} is no pool of plant.csv");
        }

        foreach (var flow in BenchFiles.Flows(input)) Known(flow.Pool, "flow.csv");
        foreach (var pool in BenchFiles.Tests(input).Select(t => t.Pool).Distinct()) Known(pool, "checks.csv");
        foreach (var flow in BenchFiles.Flows(input)) Add(flow.Pool, flow.At, p => p.Flow(flow.At, flow.Runs));
        foreach (var service in BenchFiles.Services(input)) Add(Pool(service.Probe), service.At, p => p.Service(service.At, service.Probe));
        foreach (var tests in BenchFiles.Tests(input).GroupBy(t => (t.Pool, t.SampledAt, t.EnteredAt))) Add(tests.Key.Pool, tests.Key.EnteredAt, p => p.Check(tests.Key.EnteredAt, Check([.. tests])));
        foreach (var pool in all.Keys.ToArray()) all[pool] = [.. all[pool].OrderBy(h => h.At)];
        return all;
    }

    private static ManualCheck Check(BenchFiles.Test[] tests) => new()
    {
        Id = TimeOrderedId.Derive(tests[0].EnteredAt, $"{tests[0].Pool}/{tests[0].SampledAt}"), PoolId = tests[0].Pool, SampledAt = tests[0].SampledAt, EnteredAt = tests[0].EnteredAt, Who = "replay",
        Point = SamplePoint.Pool, Results = [.. tests.Select(Result)],
    };

    private static TestResult Result(BenchFiles.Test test) => new(
        test.Quantity switch
        {
            "ph" => Measurand.Ph, "free_chlorine" => Measurand.FreeChlorine, "total_chlorine" => Measurand.TotalChlorine, "temperature" => Measurand.Temperature,
            _ => throw new FormatException($"{test.Quantity} is no quantity"),
        },
        test.Value,
        test.Method switch { "photometer" => TestMethod.Photometer, "comparator" => TestMethod.Comparator, "meter" => TestMethod.Meter, _ => TestMethod.Unknown });

    private sealed record Happening(Instant At, Action<ReplayedPool> Do);
}
