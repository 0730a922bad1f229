using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A job from seen to done: each version is a row of the record, those that are not over stand in the state.</summary>
public sealed class JobTests
{
    private readonly Bench _bench = new();
    private readonly Guid _id = TimeOrderedId.Derive(Hall.Nine, "note");

    [Fact]
    public void A_job_is_open_then_in_hand_then_waits_for_parts_then_done_and_the_record_keeps_each_version()
    {
        Assert.IsType<Outcome.Done>(Note(JobState.Open));
        Assert.IsType<Outcome.Done>(Note(JobState.InHand, "ordered a hose"));
        Assert.Equal(JobState.InHand, _bench.State.Jobs[_id].Job.State);
        Assert.IsType<Outcome.Done>(Note(JobState.WaitingForParts, "ordered a hose"));
        Assert.IsType<Outcome.Done>(Note(JobState.Done, "new hose"));
        Assert.True(_bench.State.Jobs[_id].DoneAt.IsSet);
        Assert.Equal([JobState.Open, JobState.InHand, JobState.WaitingForParts, JobState.Done], _bench.Entries.Select(e => e.Body).OfType<JobEntry>().Select(e => e.Job.State));
    }

    [Fact]
    public void The_same_version_twice_is_one_row()
    {
        Note(JobState.Open);
        Assert.IsType<Outcome.AlreadyDone>(Note(JobState.Open));
        Assert.Single(_bench.Entries, e => e.Body is JobEntry);
    }

    [Fact]
    public void Done_says_what_was_done_seen_says_what_was_seen_and_the_asset_exists()
    {
        Assert.Equal("done", Field(Note(JobState.Done)));
        Assert.Equal("seen", Field(Note(JobState.Open, seen: " ")));
        Assert.Equal("asset", Field(Note(JobState.Open, asset: "heat exchanger")));
    }

    [Fact]
    public void A_job_follows_a_renamed_pump_and_leaves_with_a_removed_one()
    {
        Note(JobState.Open);
        _bench.Load(Hall.Plan with { Pumps = [.. Hall.Plan.Pumps.Select(p => p.Id == "acid-pump" ? p with { Id = "acid-2", Was = "acid-pump" } : p)] });
        Assert.Equal("acid-2", _bench.State.Jobs[_id].Job.Asset);
        _bench.Load(Hall.Plan.Without("acid-pump"));
        Assert.Empty(_bench.State.Jobs);
    }

    [Fact]
    public void Minutes_parts_and_the_planned_task_are_possible_ones()
    {
        Assert.Equal("minutes", Field(Write(job => job with { Minutes = -1 })));
        Assert.Equal("minutes", Field(Write(job => job with { Minutes = Job.MostMinutes + 1 })));
        Assert.Equal("parts[1]", Field(Write(job => job with { Parts = [new("hose", 1, null), new(" ", 1, null)] })));
        Assert.Equal("parts[0]", Field(Write(job => job with { Parts = [new("hose", 0, null)] })));
        Assert.Equal("taskId", Field(Write(job => job with { TaskId = "tube" })));
        Assert.IsType<Outcome.Done>(Write(job => job with { Minutes = 45, Parts = [new("hose", 2, "H-12")] }));
        Assert.IsType<Outcome.AlreadyDone>(Write(job => job with { Minutes = 45, Parts = [new("hose", 2, "H-12")] }));
        Assert.IsType<Outcome.Done>(Write(job => job with { Minutes = 45, Parts = [new("hose", 3, "H-12")] }));
    }

    private Outcome Write(Func<Job, Job> change) => _bench.Run(at => new JobWritten(at, change(new Job(_id, "acid-pump", "drips", null, JobState.Open, null, "M. Invented", at))));

    private Outcome Note(JobState state, string? done = null, string seen = "drips", string asset = "acid-pump") =>
        _bench.Run(at => new JobWritten(at, new Job(_id, asset, seen, done, state, null, "M. Invented", at)));

    private static string Field(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Field;
}
