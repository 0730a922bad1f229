using System.Diagnostics;

namespace PlantWatch.Server.WhatIf;

/// <summary>Keeps a long computation out of the way of what is live: it works in short stretches and rests as long after each, and longer while messages wait to be stored.</summary>
/// <remarks>Priorities of threads alone do not do it: not every operating system heeds them.</remarks>
/// <param name="isBusy">Something live waits.</param>
/// <param name="cancellation">Ends a rest at once.</param>
internal sealed class Rest(Func<bool> isBusy, CancellationToken cancellation)
{
    private static readonly TimeSpan Stretch = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(500);

    private long _since = Stopwatch.GetTimestamp();

    /// <summary>Rests when it is time to.</summary>
    public void Now()
    {
        var worked = Stopwatch.GetElapsedTime(_since);
        if (worked < Stretch && !isBusy()) return;
        var began = Stopwatch.GetTimestamp();
        var least = worked < Longest ? worked : Longest;
        do
        {
            if (cancellation.WaitHandle.WaitOne(least)) break;
            least = Stretch;
        }
        while (isBusy() && Stopwatch.GetElapsedTime(began) < Longest);
        _since = Stopwatch.GetTimestamp();
    }
}
