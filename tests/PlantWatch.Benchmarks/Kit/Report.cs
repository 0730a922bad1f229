using System.Globalization;
using System.Text;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>The page that is kept: the machine first, then a table a benchmark.</summary>
internal sealed class Report(bool quick)
{
    private readonly StringBuilder _text = new();

    public void Begin(string folder, IReadOnlyList<double> fsync)
    {
        _text.AppendLine("# Benchmarks").AppendLine();
        _text.AppendLine("Written by `dotnet run -c Release --project tests/PlantWatch.Benchmarks -- --out docs/benchmarks.md`.");
        _text.AppendLine("Every figure stands beside a baseline of the same run; both were measured in turn (A B A B), so that a busy machine hits both.");
        _text.AppendLine("Shown are medians, in brackets the range over the rounds. A ratio is the median over pairs of neighbouring rounds. Ratios travel to other machines, rates do not.");
        if (quick) _text.AppendLine().AppendLine("**A quick sanity run: small numbers, two rounds. Not figures to quote.**");
        _text.AppendLine().AppendLine("| | |").AppendLine("|---|---|");
        Line("Measured", DateTime.UtcNow.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture));
        foreach (var (what, which) in Machine.Describe(folder)) Line(what, which);
        Line("Append of 4 KiB with fsync", $"p50 {Say.Number(Percentile.Median(fsync))} ms, p99 {Say.Number(Percentile.Of(fsync, 0.99))} ms");
    }

    public void Line(string what, string which) => _text.AppendLine($"| {what} | {which} |");

    public void Add(IBenchmark benchmark, IReadOnlyList<Row> rows, string load, TimeSpan took)
    {
        _text.AppendLine().AppendLine($"## {benchmark.Title}").AppendLine().AppendLine(benchmark.Method).AppendLine();
        _text.AppendLine("| What | Measured | Baseline | Ratio | To reach |").AppendLine("|---|---|---|---|---|");
        foreach (var row in rows) _text.AppendLine($"| {row.What} | {row.Ours} | {row.Baseline} | {row.Ratio} | {row.ToReach} |");
        _text.AppendLine().AppendLine($"`{benchmark.Name}`, {took.TotalSeconds:F0} s, load average before it {load}.");
    }

    public void Fail(IBenchmark benchmark, string why) =>
        _text.AppendLine().AppendLine($"## {benchmark.Title}").AppendLine().AppendLine($"**Not measured:** {why}");

    public override string ToString() => _text.ToString();
}
