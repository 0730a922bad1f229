using System.Diagnostics;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Benchmarks.Runs;

IBenchmark[] all = [new StepRate(), new ProbeMemory(), new OnePartition(), new JournalSize(), new StoreWriter(), new ExternalBroker(), new EmbeddedPuback(), new PublishToPage(), new YearQuery(), new Restart(), new Load(), new WaterBalance(), new DosingPlans(), new Supervision(), new SeriesFeed()];

var names = args.Where((a, i) => !a.StartsWith("--", StringComparison.Ordinal) && (i == 0 || args[i - 1] != "--out")).ToArray();
var quick = args.Contains("--quick");
var output = Array.IndexOf(args, "--out") is var at and >= 0 && at + 1 < args.Length ? Path.GetFullPath(args[at + 1]) : null;
if (names.FirstOrDefault(n => all.All(b => b.Name != n)) is { } unknown)
{
    Console.Error.WriteLine($"There is no benchmark {unknown}. There are: {string.Join(' ', all.Select(b => b.Name))}");
    return 2;
}

var folder = Directory.CreateTempSubdirectory("plantwatch-benchmarks-").FullName;
var report = new Report(quick);
var failed = false;
try
{
    report.Begin(folder, Machine.Fsync(folder, quick ? 50 : 300));
    foreach (var benchmark in all.Where(b => names.Length == 0 || names.Contains(b.Name)))
    {
        Console.Error.WriteLine($"== {benchmark.Name}: {benchmark.Title}");
        var (start, load) = (Stopwatch.GetTimestamp(), Machine.Load());
        var own = Directory.CreateDirectory(Path.Combine(folder, benchmark.Name)).FullName;
        try
        {
            report.Add(benchmark, await benchmark.RunAsync(new Bench(quick, own)), load, Stopwatch.GetElapsedTime(start));
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // One that fails does not take the figures of the others with it.
            failed = true;
            Console.Error.WriteLine(fault);
            report.Fail(benchmark, fault.Message);
        }

        Directory.Delete(own, recursive: true);
    }
}
finally
{
    Directory.Delete(folder, recursive: true);
}

Console.WriteLine(report);
if (output is not null) await File.WriteAllTextAsync(output, report.ToString());
return failed ? 1 : 0;
