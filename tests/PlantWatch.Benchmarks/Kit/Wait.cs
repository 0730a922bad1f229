using System.Diagnostics;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Waits for something to come about, never for longer than said.</summary>
internal static class Wait
{
    public static async Task UntilAsync(Func<bool> holds, TimeSpan most, string sentence)
    {
        var start = Stopwatch.GetTimestamp();
        while (!holds())
        {
            if (Stopwatch.GetElapsedTime(start) > most) throw new TimeoutException($"did not come about within {most.TotalSeconds} s: {sentence}");
            await Task.Delay(2);
        }
    }
}

/// <summary>Counts up to a number and says when it was reached.</summary>
internal sealed class Counter
{
    private readonly TaskCompletionSource reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly long target;
    private long count;
    private long first;

    public Counter(long target) => this.target = target;

    /// <summary>So many so far.</summary>
    public long Count => Interlocked.Read(ref count);

    public void Add(long more)
    {
        if (more == 0) return;
        Interlocked.CompareExchange(ref first, Stopwatch.GetTimestamp(), 0);
        if (Interlocked.Add(ref count, more) >= target) reached.TrySetResult();
    }

    public async Task ReachedAsync(TimeSpan most)
    {
        try
        {
            await reached.Task.WaitAsync(most);
        }
        catch (TimeoutException)
        {
            throw new TimeoutException($"{Count} of {target} within {most.TotalSeconds} s");
        }
    }

    /// <summary>Seconds since the first.</summary>
    public double SecondsSinceFirst => Stopwatch.GetElapsedTime(Interlocked.Read(ref first)).TotalSeconds;
}
