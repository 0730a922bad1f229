using System.Security.Cryptography;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.Commands;
using PlantWatch.Server.WhatIf;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.WhatIf;

/// <summary>Two days of one pool: pH 7.40, on the second day 7.75 for three hours, and a swing at night; people test, acknowledge, shelve, close and open the pool.</summary>
public sealed class LimitReplayTests : IDisposable
{
    internal const string Plant = """
        site:
          name: Bramble Street Baths
          time_zone: Etc/UTC
        people:
          - { id: reed, name: A. Reed, role: engineer }
        circuits:
          - id: hall
            name: Hall
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - { measurand: ph, low: 7.0, high: 7.6, source: the hall's own sheet }
                checks:
                  - { what: [ph], at: ["09:00", "15:00"] }
            probes:
              - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 10 }
        """;

    private static readonly Instant Start = LivedRecord.Start;

    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-what-if-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    internal static Task LiveAsync(string data) => new LivedRecord(data, Plant)
    {
        Acts =
        [
            (25.5, (at, s) => Alarm(s, "R-011/ph") is { } a ? new AlarmAcknowledged(at, a.Id, "A. Reed", "seen") : null),
            (26.0, (at, s) => Alarm(s, "R-011/ph") is { } a ? new AlarmShelved(at, a.Id, at + TimeSpan.FromHours(2), "A. Reed", "acid on its way") : null),
            (31.0, (at, _) => new PoolStateSet(at, TimeOrderedId.Derive(at, "close"), "main", OperatingState.Closed, "A. Reed")),
            (40.0, (at, _) => new PoolStateSet(at, TimeOrderedId.Derive(at, "open"), "main", OperatingState.Open, "A. Reed")),
        ],
    }.LiveAsync(
        48, hour => (hour is >= 24 and < 27 ? 7.75 : 7.4) + (hour is >= 2 and < 8 ? 0.16 * Math.Sin(hour * 3) : 0) + (0.03 * Math.Sin(hour)),
        [.. Enumerable.Range(0, 12).Select(i => ((double)(4 * i) + 1, i == 6 ? 7.75 : 7.4))]);

    [Fact]
    public async Task Under_the_same_limits_the_replay_tells_what_was_told_live_when_it_was_told_and_leaves_the_record_as_it_was()
    {
        await LiveAsync(_folder);
        var file = Path.Combine(_folder, "record.db");
        var before = SHA256.HashData(await File.ReadAllBytesAsync(file));
        var result = Replay(0, 48, new LimitPlan(Measurand.Ph, 7.0, 7.6, "the hall's own sheet"));
        Assert.True(result.Recorded >= 3);
        Assert.Equal((result.Recorded, 0), (result.FoundAgain, result.NotRecorded));
        Assert.Empty(result.Comparison.Lost);
        Assert.Empty(result.Comparison.Gained);
        var (told, retold) = (Told(file), Retold(file));
        Assert.Equal(told.Select(t => (t.Key, t.Change)), retold.Select(t => (t.Key, t.Change)));
        // What time alone moves hangs on the clock: it ticked every ten seconds then, and every twenty in the replay.
        Assert.All(told.Zip(retold), t => Assert.InRange((t.Second.At - t.First.At).TotalSeconds, 0, IsOfTime(t.First) ? 20 : 0.01));
        Assert.Equal(before, SHA256.HashData(await File.ReadAllBytesAsync(file)));
    }

    [Fact]
    public async Task A_tighter_limit_gains_alarms_and_loses_none_of_a_limit()
    {
        await LiveAsync(_folder);
        var result = Replay(0, 48, new LimitPlan(Measurand.Ph, 7.0, 7.5, "test"));
        // What is beyond its limit already no longer heads for it.
        Assert.All(result.Comparison.Lost, e => Assert.Equal(RuleBook.HeadsForLimit.Number, e.Rule));
        var gained = result.Comparison.Gained.Where(e => e.Rule == RuleBook.AboveLimit.Number).ToArray();
        Assert.NotEmpty(gained);
        // The swing at night, between the second and the eighth hour.
        Assert.All(gained, e => Assert.InRange((e.From - Start).TotalHours, 2, 8.2));
        Assert.All(gained, e => Assert.Equal("limit.above", e.Cause.Code));
        Assert.True(result.After.Told > result.Before.Told);
    }

    [Fact]
    public async Task A_wider_limit_loses_alarms_and_gains_none_of_that_rule()
    {
        await LiveAsync(_folder);
        var result = Replay(20, 48, new LimitPlan(Measurand.Ph, 7.0, 8.0, "test"));
        Assert.Empty(result.Comparison.Gained);
        // The probe's, that of the test by hand an hour later, and that of the breach that stood open past its time.
        Assert.Equal(["R-011/ph", "R-012/main/ph", "R-070/main/ph"], result.Comparison.Lost.Select(e => e.Key));
        Assert.Equal(24, (result.Comparison.Lost[0].From - Start).TotalHours, 0.05);
        Assert.Equal(3, (result.Comparison.Lost[0].To - result.Comparison.Lost[0].From).TotalHours, 0.1);
        // What was acknowledged and shelved then does not stand here.
        Assert.Contains(result.Notes, n => n.Code == "what_if.acts_without_alarm");
    }

    [Fact]
    public async Task A_longer_delay_and_a_deadband_of_nothing_change_the_alarms_too()
    {
        await LiveAsync(_folder);
        var slow = Replay(20, 30, new LimitPlan(Measurand.Ph, 7.0, 7.6, "test") { OnDelay = TimeSpan.FromMinutes(10) });
        Assert.Empty(slow.Comparison.Lost);
        var late = Assert.Single(slow.Comparison.Rules, r => r.Rule == "R-011");
        Assert.Equal((1, 1, 0, 0), (late.Before, late.After, late.Lost, late.Gained));
    }

    [Fact]
    public async Task Before_the_start_nothing_is_changed_and_what_came_later_changes_nothing()
    {
        await LiveAsync(_folder);
        var whole = Replay(10, 48, new LimitPlan(Measurand.Ph, 7.0, 7.5, "test"));
        var half = Replay(10, 30, new LimitPlan(Measurand.Ph, 7.0, 7.5, "test"));
        Assert.All(whole.Comparison.Gained, e => Assert.True(e.From >= Start + TimeSpan.FromHours(10)));
        Assert.Equal(half.Comparison.Gained, whole.Comparison.Gained.Where(e => e.From < Start + TimeSpan.FromHours(30) && e.To.IsSet && e.To < Start + TimeSpan.FromHours(30)));
    }

    [Fact]
    public async Task A_cancelled_run_ends_between_two_batches()
    {
        await LiveAsync(_folder);
        using var run = Run(0, 48, new LimitPlan(Measurand.Ph, 7.0, 7.5, "test"));
        Assert.True(run.TryBegin());
        var looks = 0;
        var replay = new LimitReplay(Path.Combine(_folder, "record.db"), () =>
        {
            if (++looks == 2) run.Cancel();
        });
        Assert.Throws<OperationCanceledException>(() => replay.Run(run));
        Assert.Equal(RunState.Cancelled, run.State);
        Assert.InRange(run.Progress, 0.01, 0.9);
        Assert.Equal(2, looks);
    }

    private LimitResult Replay(int from, int to, LimitPlan limit)
    {
        using var run = Run(from, to, limit);
        return new LimitReplay(Path.Combine(_folder, "record.db"), () => { }).Run(run);
    }

    private static LimitRun Run(int from, int to, LimitPlan limit)
    {
        LimitChange[] changes = [new("main", limit)];
        var changed = ChangedPlan.Of(Plant, Server.LimitPacks.PackShelf.Shipped, changes);
        Assert.Empty(changed.Errors);
        return new(Guid.CreateVersion7(), Start, Start + TimeSpan.FromHours(from), Start + TimeSpan.FromHours(to), changes, PlantFileReader.Read(Plant).Plan!, changed.Plan!);
    }

    private static bool IsOfTime((string Key, AlarmChange Change, Instant At) told) =>
        told.Key.StartsWith(RuleBook.CheckOverdue.Number, StringComparison.Ordinal) || told.Key.StartsWith("R-070", StringComparison.Ordinal) || told.Change is AlarmChange.Unshelved or AlarmChange.ReAlarmed;

    private static (string Key, AlarmChange Change, Instant At)[] Told(string file)
    {
        using var archive = SqliteArchive.Open(file);
        return Changes(archive.Entries(new PartitionKey("hall"), new EntryQuery(["alarm"], Limit: int.MaxValue)).OrderBy(e => e.At).ThenBy(e => e.Id));
    }

    private static (string Key, AlarmChange Change, Instant At)[] Retold(string file)
    {
        using var archive = SqliteArchive.Open(file);
        var told = new List<RecordEntry>();
        var plan = PlantFileReader.Read(Plant).Plan!.Circuits[0];
        new Server.History.CircuitReplay(archive, new PartitionKey("hall"), plan, Start, Start + TimeSpan.FromHours(48), result => told.AddRange(result.Entries)).Run(_ => { }, CancellationToken.None);
        return Changes(told);
    }

    // The record does not say in which order one event moved several alarms: each is followed by itself.
    private static (string Key, AlarmChange Change, Instant At)[] Changes(IEnumerable<RecordEntry> entries) =>
        [.. entries.Where(e => e.Body is AlarmEntry).Select(e => (((AlarmEntry)e.Body).Alarm.Key, ((AlarmEntry)e.Body).Change, e.At)).OrderBy(c => c.Key, StringComparer.Ordinal)];

    private static AlarmRecord? Alarm(CircuitState state, string key) => state.Alarms.GetValueOrDefault(key);
}
