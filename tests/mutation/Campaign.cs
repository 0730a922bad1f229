using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;

namespace PlantWatch.Mutation;

/// <summary>Hands the mutants to worker processes and keeps what they say. A worker that says nothing for long is caught in a loop: it is ended, and the next goes on behind it.</summary>
internal sealed class Campaign(string folder, IReadOnlyList<string> spaces, int workers)
{
    private static readonly TimeSpan Silence = TimeSpan.FromMinutes(2);

    private readonly ConcurrentDictionary<int, bool> _begun = new();

    /// <summary>What killed a mutant; nothing for one that lives.</summary>
    public ConcurrentDictionary<int, string?> Verdicts { get; } = new();

    /// <summary>Learns which test comes by which mutant. Gives those that act while a type is initialised: once a process, so that each needs one of its own.</summary>
    public HashSet<int> Learn()
    {
        HashSet<int>? atStart = null;
        Start([], fresh: false, line =>
        {
            if (line.StartsWith('=')) atStart = [.. line[1..].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(n => int.Parse(n, CultureInfo.InvariantCulture))];
            else throw new InvalidOperationException(line);
        });
        return atStart ?? throw new InvalidOperationException("the tests could not be run without a change");
    }

    /// <summary>Judges mutants, many a process.</summary>
    public void Judge(IEnumerable<int> mutants) => Each(mutants.Chunk(40), some =>
    {
        var open = new Queue<int>(some);
        while (open.Count > 0)
        {
            Start([.. open], fresh: false, Take);
            while (open.TryPeek(out var next) && Verdicts.ContainsKey(next)) open.Dequeue();
            if (open.Count > 0) Fell(open.Dequeue());
        }
    });

    /// <summary>Judges mutants, each in a process of its own.</summary>
    public void JudgeApart(IEnumerable<int> mutants) => Each(mutants, one =>
    {
        Start([one], fresh: true, Take);
        if (!Verdicts.ContainsKey(one)) Fell(one);
    });

    // A worker that fell silent or ended while it judged was brought down by what it judged. One that never came to it was not.
    private void Fell(int mutant) =>
        Verdicts[mutant] = _begun.ContainsKey(mutant) ? "a loop without end, or the end of the process" : throw new InvalidOperationException($"a worker ended before it judged {mutant}");

    private void Each<T>(IEnumerable<T> all, Action<T> act) => Parallel.ForEach(all, new ParallelOptions { MaxDegreeOfParallelism = workers }, act);

    private void Take(string line)
    {
        var parts = line.Split(' ', 3);
        if (parts[0] == "?") _begun[int.Parse(parts[1], CultureInfo.InvariantCulture)] = true;
        if (parts[0] is "+" or "-") Verdicts[int.Parse(parts[1], CultureInfo.InvariantCulture)] = parts[0] == "+" ? parts[2] : null;
    }

    private void Start(IReadOnlyList<int> mutants, bool fresh, Action<string> said)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        foreach (var argument in new[] { "worker", folder, fresh ? "fresh" : "many", string.Join(',', mutants), string.Join(',', spaces) }) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        using var watch = new Timer(_ => process.Kill(entireProcessTree: true));
        watch.Change(Silence * (mutants.Count == 0 ? 10 : 1), Timeout.InfiniteTimeSpan);
        while (process.StandardOutput.ReadLine() is { } line)
        {
            watch.Change(Silence, Timeout.InfiniteTimeSpan);
            said(line);
        }

        process.WaitForExit();
    }
}
