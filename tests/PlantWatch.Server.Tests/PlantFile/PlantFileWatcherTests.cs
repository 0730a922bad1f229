using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class PlantFileWatcherTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly ConcurrentQueue<string> _inForce = new();
    private readonly HandClock _clock = new();

    private string File => Path.Combine(_folder.Root, "plant.yaml");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_good_file_is_in_force_when_the_start_returns()
    {
        Save("Hall");
        await using var watcher = Watcher();

        await watcher.StartAsync(default);

        Assert.Equal(["Hall"], _inForce);
        Assert.Empty(watcher.Errors);
        Assert.Equal(PlantFileSource.Read(File).Hash, watcher.InForceHash);
    }

    [Fact]
    public async Task A_missing_file_lets_the_server_start_and_says_so()
    {
        await using var watcher = Watcher();

        await watcher.StartAsync(default);

        Assert.StartsWith("line 1: the file cannot be read: ", Assert.Single(watcher.Errors).ToString(), StringComparison.Ordinal);
        Assert.Null(watcher.InForceHash);
    }

    [Fact]
    public async Task A_changed_file_comes_into_force_without_a_restart()
    {
        Save("Hall");
        await using var watcher = await Started();

        Save("New hall");
        await LookAndSettle();

        await Until(() => _inForce.Count == 2);
        Assert.Equal(["Hall", "New hall"], _inForce);
    }

    [Fact]
    public async Task A_broken_file_leaves_the_old_one_in_force_until_it_is_put_right()
    {
        Save("Hall");
        await using var watcher = await Started();
        var good = watcher.InForceHash;

        System.IO.File.WriteAllText(File, "site: 12\n");
        await LookAndSettle();
        await Until(() => watcher.Errors.Count > 0);

        Assert.Equal(good, watcher.InForceHash);
        Assert.Contains(watcher.Errors, error => error.Key == "site");
        Assert.Equal(["Hall"], _inForce);

        Save("Hall");
        await LookAndSettle();
        await Until(() => watcher.Errors.Count == 0);
        // It is what was in force all the time: nothing is loaded twice.
        Assert.Equal(["Hall"], _inForce);
    }

    [Fact]
    public async Task A_file_caught_while_it_is_being_written_is_waited_for()
    {
        Save("Hall");
        await using var watcher = await Started();
        var changes = 0;
        watcher.Changed += () => Interlocked.Increment(ref changes);

        System.IO.File.WriteAllText(File, "site: { name: New hall, time_z");
        _clock.Advance(watcher.Poll);
        await Until(() => _clock.WaitingFor(watcher.Settle) == 1);
        Save("New hall");
        _clock.Advance(watcher.Settle);
        await Until(() => _clock.WaitingFor(watcher.Settle) == 1);
        _clock.Advance(watcher.Settle);

        await Until(() => changes > 0);
        Assert.Equal(["Hall", "New hall"], _inForce);
        Assert.Empty(watcher.Errors);
        Assert.Equal(1, changes);
    }

    [Fact]
    public async Task A_good_file_that_could_not_be_taken_is_tried_again()
    {
        Save("Hall");
        var refusals = 1;
        await using var watcher = Watcher((plan, _) =>
        {
            if (Interlocked.Decrement(ref refusals) >= 0) throw new InvalidOperationException("the store is busy");
            _inForce.Enqueue(plan.Site.Name);
            return Task.CompletedTask;
        });

        await watcher.StartAsync(default);
        Assert.Equal("line 1: the file is good, but it could not be brought into force; it is tried again", Assert.Single(watcher.Errors).ToString());
        Assert.Null(watcher.InForceHash);

        await LookAndSettle();
        await Until(() => watcher.Errors.Count == 0);
        Assert.Equal(["Hall"], _inForce);
    }

    [Fact]
    public async Task What_was_saved_on_the_page_is_signed_once_and_the_same_bytes_by_hand_later_are_not()
    {
        Save("Hall");
        List<string?> signedBy = [];
        PlantFileWatcher? watched = null;
        await using var watcher = watched = Watcher((_, _) =>
        {
            signedBy.Add(watched?.Signed?.By);
            return Task.CompletedTask;
        });
        await watcher.StartAsync(default);

        foreach (var (name, count) in new[] { ("New hall", 2), ("Hall", 3), ("New hall", 4) })
        {
            Save(name);
            if (count == 2) watcher.Expect(PlantFileSource.Read(File).Hash!, new("A. Sample", null));
            await LookAndSettle();
            await Until(() => signedBy.Count == count);
            await Until(() => watcher.InForceHash == PlantFileSource.Read(File).Hash);
        }

        Assert.Equal([null, "A. Sample", null, null], signedBy);
    }

    [Fact]
    public async Task Who_saved_a_version_hears_of_that_version_and_not_of_the_one_refused_before()
    {
        Save("Hall");
        await using var watcher = Watcher((plan, _) => plan.Site.Name == "Hall" ? Task.CompletedTask : throw new PlanRefusedException("a work is open"));
        await watcher.StartAsync(default);
        Save("First");
        await LookAndSettle();
        await Until(() => watcher.Errors.Count > 0);

        Save("Second");
        var taken = watcher.TakenAsync(PlantFileSource.Read(File).Hash!, TimeSpan.FromDays(1), default);
        Assert.False(taken.IsCompleted);
        await LookAndSettle();
        await taken.WaitAsync(TimeSpan.FromSeconds(20));
        Assert.Equal("a work is open", Assert.Single(watcher.Errors).Message);
    }

    [Fact]
    public async Task One_listener_that_fails_does_not_keep_the_others_from_hearing()
    {
        Save("Hall");
        await using var watcher = await Started();
        var heard = 0;
        watcher.Changed += () => throw new InvalidOperationException("not my day");
        watcher.Changed += () => Interlocked.Increment(ref heard);

        Save("New hall");
        await LookAndSettle();

        await Until(() => heard == 1);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_file_system_tells_of_a_change_long_before_the_next_look(bool byRename)
    {
        Save("Hall");
        await using var watcher = new PlantFileWatcher(File, Take, TimeProvider.System, NullLogger<PlantFileWatcher>.Instance)
        {
            Poll = TimeSpan.FromDays(1),
            Settle = TimeSpan.FromMilliseconds(20),
        };
        await watcher.StartAsync(default);

        if (byRename)
        {
            System.IO.File.WriteAllText(File + ".tmp", Plant("New hall"));
            System.IO.File.Move(File + ".tmp", File, overwrite: true);
        }
        else
        {
            Save("New hall");
        }

        await Until(() => _inForce.Count == 2);
        Assert.Equal(["Hall", "New hall"], _inForce);
    }

    [Fact]
    public async Task It_stops_while_a_change_is_settling()
    {
        Save("Hall");
        var watcher = await Started();
        Save("New hall");
        _clock.Advance(watcher.Poll);
        await Until(() => _clock.WaitingFor(watcher.Settle) == 1);

        await watcher.StopAsync(default);
        await watcher.DisposeAsync();

        Assert.Equal(["Hall"], _inForce);
    }

    private PlantFileWatcher Watcher(Func<PlantPlan, CancellationToken, Task>? take = null) =>
        new(File, take ?? Take, _clock, NullLogger<PlantFileWatcher>.Instance) { Listen = false };

    private async Task<PlantFileWatcher> Started()
    {
        var watcher = Watcher();
        await watcher.StartAsync(default);
        return watcher;
    }

    private Task Take(PlantPlan plan, CancellationToken cancellation)
    {
        _inForce.Enqueue(plan.Site.Name);
        return Task.CompletedTask;
    }

    private async Task LookAndSettle()
    {
        // Up to the next look and not beyond it: a wait that began on the way would be over before it is seen.
        var poll = TimeSpan.FromSeconds(5);
        _clock.Advance(poll - TimeSpan.FromTicks(_clock.GetUtcNow().Ticks % poll.Ticks));
        await Until(() => _clock.WaitingFor(TimeSpan.FromMilliseconds(300)) == 1);
        _clock.Advance(TimeSpan.FromMilliseconds(300));
    }

    private void Save(string name) => System.IO.File.WriteAllText(File, Plant(name));

    private static string Plant(string name) => $$"""
        site: { name: {{name}}, time_zone: UTC }
        circuits:
          - { id: c, name: C, pools: [{ id: p, name: P, kind: spa, setting: indoor, disinfectant: bromine, volume_m3: 5 }] }
        """;

    private static async Task Until(Func<bool> condition)
    {
        var patience = Stopwatch.StartNew();
        while (!condition())
        {
            Assert.True(patience.Elapsed < TimeSpan.FromSeconds(20), "it did not happen within 20 s");
            await Task.Delay(5);
        }
    }
}
