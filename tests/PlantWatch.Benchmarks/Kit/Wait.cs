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
    private readonly TaskCompletionSource _reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly long _target;
    private long _count;
    private long _first;

    public Counter(long target) => _target = target;

    /// <summary>So many so far.</summary>
    public long Count => Interlocked.Read(ref _count);

    public void Add(long more)
    {
        if (more == 0) return;
        Interlocked.CompareExchange(ref _first, Stopwatch.GetTimestamp(), 0);
        if (Interlocked.Add(ref _count, more) >= _target) _reached.TrySetResult();
    }

    public async Task ReachedAsync(TimeSpan most)
    {
        try
        {
            await _reached.Task.WaitAsync(most);
        }
        catch (TimeoutException)
        {
            throw new TimeoutException($"{Count} of {_target} within {most.TotalSeconds} s");
        }
    }

    /// <summary>Seconds since the first.</summary>
    public double SecondsSinceFirst => Stopwatch.GetElapsedTime(Interlocked.Read(ref _first)).TotalSeconds;
}
