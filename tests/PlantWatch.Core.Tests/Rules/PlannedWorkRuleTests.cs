using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Work that comes round is overdue after its time, and a job that does it starts the time anew.</summary>
public sealed class PlannedWorkRuleTests
{
    private static readonly TaskPlan Tube = new("tube", "Change the tube", "acid-pump", TimeSpan.FromDays(10));
    private readonly Bench _bench = new(Hall.Plan with { Tasks = [Tube] });

    [Fact, Evidence("R-090")]
    public void Work_is_overdue_after_its_time_and_a_job_that_names_it_clears_it()
    {
        Days(9);
        Assert.False(Overdue);
        Days(2);
        Assert.True(Overdue);
        Assert.Equal("task.overdue", _bench.State.Alarms["R-090/acid-pump/tube"].Cause.Code);

        Job(JobState.InHand);
        _bench.Tick();
        Assert.True(Overdue);
        Job(JobState.Done);
        _bench.Skip(TimeSpan.FromSeconds(1));
        _bench.Tick();
        Assert.False(Overdue);
        Assert.Empty(_bench.State.Jobs);
        Days(9);
        Assert.False(Overdue);
        Days(2);
        Assert.True(Overdue);
    }

    [Fact, Evidence("R-090")]
    public void A_day_in_the_plant_file_counts_where_no_job_does()
    {
        var bench = new Bench(Hall.Plan with { Tasks = [Tube with { LastDone = new(2026, 4, 20) }] });
        bench.Skip(TimeSpan.FromSeconds(1));
        bench.Tick();
        Assert.True(bench.State.Alarms["R-090/acid-pump/tube"].Active);
    }

    [Fact, Evidence("R-090")]
    public void Work_that_nobody_plans_any_more_is_overdue_no_longer()
    {
        Days(11);
        Assert.True(Overdue);
        _bench.Load(Hall.Plan);
        Assert.False(Overdue);
        Assert.Empty(_bench.State.Tasks);
    }

    private bool Overdue => _bench.State.Alarms.TryGetValue("R-090/acid-pump/tube", out var alarm) && alarm.Active;

    private void Days(int days)
    {
        for (var i = 0; i < days; i++)
        {
            _bench.Skip(TimeSpan.FromDays(1));
            _bench.Tick();
        }
    }

    private void Job(JobState state) => Assert.IsType<Outcome.Done>(_bench.Run(at =>
        new JobWritten(at, new Job(TimeOrderedId.Derive(Hall.Nine, "tube"), "acid-pump", "Change the tube", state == JobState.Done ? "changed" : null, state, null, "M. Invented", at) { TaskId = "tube" })));
}
