using Microsoft.Win32.SafeHandles;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>One recorded pool from its first row to its last: readings, what happened beside them, and a clock that ticks every minute.</summary>
internal sealed class PoolReplay(RecordedPlant.Pool pool, IReadOnlyList<RecordedPlant.Happening> aside)
{
    // The clock ticks every minute between two rows: a year typed wrong must not keep it ticking for centuries.
    private static readonly TimeSpan MostDays = TimeSpan.FromDays(3660);
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private readonly VerdictSheet _sheet = new(pool.Probes.Select(p => p.Id).ToHashSet());
    private int _next;
    private Instant _minute;

    /// <summary>Readings that went through.</summary>
    public long Readings { get; private set; }

    /// <summary>Readings that the fold refused.</summary>
    public long Refused { get; private set; }

    /// <summary>What was wrong with the input; null when nothing was.</summary>
    public Exception? Fault { get; private set; }

    /// <summary>What it said.</summary>
    public VerdictSheet Sheet => _sheet;

    /// <summary>Replays a section of the readings.</summary>
    public void Run(SafeFileHandle file, ReadingSections.Section section, Action<int> read)
    {
        try
        {
            All(new ReadingsFile(file, section, pool.Probes.Select(p => p.Id), read));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or FormatException)
        {
            Fault = fault;
        }
    }

    private void All(ReadingsFile file)
    {
        if (!file.Has && aside.Count == 0) return;
        _minute = !file.Has ? aside[0].At : aside.Count == 0 ? file.At : Instant.Earlier(file.At, aside[0].At);
        if (aside.Count > 0 && aside[^1].At - _minute > MostDays) throw new FormatException($"{pool.Id}: more than {MostDays.TotalDays:0} days between its first and its last row");
        var replayed = new ReplayedPool(pool.Id, pool.Probes, _minute, _sheet);
        for (; file.Has; file.Next())
        {
            if (file.At - _minute > MostDays) throw new FormatException($"readings.csv: \"{file.Line}\" lies more than {MostDays.TotalDays:0} days after what stands before it");
            Until(replayed, file.At);
            replayed.Reading(file.At, file.Probe, file.Payload);
            Readings++;
        }

        Until(replayed, aside.Count > 0 ? aside[^1].At + Minute : _minute);
        replayed.Flush();
        Refused = replayed.Refused;
    }

    // What happened beside the readings up to a time, and the clock.
    private void Until(ReplayedPool replayed, Instant at)
    {
        while (true)
        {
            var tick = _minute + Minute;
            if (_next < aside.Count && aside[_next].At <= at && aside[_next].At <= tick) aside[_next++].Do(replayed);
            else if (tick <= at) replayed.Tick(_minute = tick);
            else return;
        }
    }
}
