using System.Diagnostics;
using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.History;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.WhatIf;

/// <summary>Does one run: reads the record through a connection of its own that cannot write, folds it for both sides and compares.</summary>
/// <param name="file">The record.</param>
/// <param name="rest">Asked between two batches: gives the machine back to who needs it.</param>
internal sealed class LimitReplay(string file, Action rest)
{
    // Bias and learned lines rest on the checks before: they are learned again before anything is compared.
    private static readonly TimeSpan RunIn = TimeSpan.FromDays(30);

    private readonly List<AlarmEpisode> _recorded = [];
    private readonly Sums _before = new([], []);
    private readonly Sums _after = new([], []);
    private readonly List<Reason> _notes = [];
    private long _readings;
    private long _withoutAlarm;
    private int _planChanges;

    public LimitResult Run(LimitRun run)
    {
        var start = Stopwatch.GetTimestamp();
        using var archive = SqliteArchive.Open(file);
        CircuitPlan[] circuits = [.. run.Plan.Circuits.Where(c => c.Pools.Any(p => run.Changes.Any(change => change.Pool == p.Id)))];
        for (var i = 0; i < circuits.Length; i++)
        {
            var done = i;
            One(run, archive, circuits[i], part => run.Reach((done + part) / circuits.Length));
        }

        return Result(run, circuits, Stopwatch.GetElapsedTime(start));
    }

    private void One(LimitRun run, SqliteArchive archive, CircuitPlan plan, Action<double> reach)
    {
        var partition = new PartitionKey(plan.Id);
        if (!archive.Holds(partition)) return;
        var beginning = RecordedActs.Beginning(archive, partition);
        var start = Instant.Earlier(run.From, Instant.Later(run.From - RunIn, beginning));
        Recorded(run, archive, partition, start);
        Note(run, archive, partition, plan, start, beginning);

        var (before, after) = (new AlarmStory(), new AlarmStory());
        var replay = new CircuitReplay(archive, partition, plan, start, run.To, before.Take);
        // What stood when the changes came into force stands on both sides.
        replay.ForkAt(run.From, run.Changed.Circuits.First(c => c.Id == plan.Id), () => (after = before.Copy()).Take);
        replay.Run(at => { reach((at - start) / (run.To - start)); rest(); }, run.Cancellation);
        _before.Add(before, run);
        _after.Add(after, run);
        Note(plan, replay);
    }

    private void Recorded(LimitRun run, SqliteArchive archive, PartitionKey partition, Instant start)
    {
        var story = new AlarmStory();
        foreach (var row in archive.Entries(partition, new EntryQuery(["alarm"], From: start, To: run.To, Limit: int.MaxValue)).OrderBy(e => e.At).ThenBy(e => e.Id)) story.Take(row);
        _recorded.AddRange(story.Episodes.Within(run.From, run.To));
    }

    private void Note(LimitRun run, SqliteArchive archive, PartitionKey partition, CircuitPlan plan, Instant start, Instant beginning)
    {
        if (run.From < beginning) _notes.Add(Reason.Of("what_if.record_begins", plan.Name, (beginning - run.From).TotalDays));
        else if (run.From - start < RunIn) _notes.Add(Reason.Of("what_if.run_in_short", plan.Name, (run.From - start).TotalDays, RunIn.TotalDays));
        _planChanges += archive.Entries(partition, new EntryQuery(["plan"], From: run.From, To: run.To, Limit: int.MaxValue)).Count(e => e.At > beginning);
    }

    private void Note(CircuitPlan plan, CircuitReplay replay)
    {
        _readings += replay.Side.Readings;
        if (replay.Other is not { } other) return;
        _withoutAlarm += other.WithoutAlarm;
        foreach (var (at, pool) in other.NotPassed.Except(replay.Side.NotPassed))
            _notes.Add(Reason.Of("what_if.gate_shut", plan.Pools.First(p => p.Id == pool).Name, at.ToString()));
    }

    private LimitResult Result(LimitRun run, CircuitPlan[] circuits, TimeSpan took)
    {
        if (_planChanges > 0) _notes.Add(Reason.Of("what_if.plan_changed", _planChanges));
        if (_withoutAlarm > 0) _notes.Add(Reason.Of("what_if.acts_without_alarm", _withoutAlarm));
        _notes.Add(Reason.Of("what_if.learned_again"));
        _notes.Add(Reason.Of("what_if.sample_order"));
        var again = AlarmComparison.Of([.. _recorded], [.. _before.Episodes], run.To);
        return new(
            [.. circuits], AlarmComparison.Of([.. _before.Episodes], [.. _after.Episodes], run.To), AlarmHealth.Of(_before.Changes, run.From, run.To, 1), AlarmHealth.Of(_after.Changes, run.From, run.To, 1),
            _recorded.Count, _recorded.Count - again.Lost.Length, again.Gained.Length, _readings, took, [.. _notes]);
    }

    private readonly record struct Sums(List<AlarmEpisode> Episodes, List<AlarmHappening> Changes)
    {
        public void Add(AlarmStory story, LimitRun run)
        {
            Episodes.AddRange(story.Episodes.Within(run.From, run.To));
            Changes.AddRange(story.Changes);
        }
    }
}
