using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>How much a pump runs, of late and usually.</summary>
public sealed class PumpRunTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 5, 4);

    [Fact]
    public void A_pump_that_runs_one_minute_in_ten_runs_a_tenth_of_the_time()
    {
        var (run, _) = Pulsed(default, Start, hours: 100, ofTen: 1);
        Assert.True(run.IsKnown);
        Assert.Equal(0.1, run.Usual, 0.01);
        Assert.Equal(0.1, run.Recent, 0.01);
    }

    [Fact]
    public void What_it_does_lately_shows_within_hours_and_what_it_usually_does_hardly_moves()
    {
        var (run, at) = Pulsed(default, Start, hours: 200, ofTen: 1);
        (run, _) = Pulsed(run, at, hours: 4, ofTen: 6);
        Assert.InRange(run.Recent, 0.45, 0.6);
        Assert.InRange(run.Usual, 0.1, 0.15);
    }

    [Fact]
    public void Time_that_nobody_heard_of_it_counts_for_nothing()
    {
        var run = default(PumpRun).Until(PumpActivity.Running, Start).Until(PumpActivity.Running, Start + TimeSpan.FromHours(40));
        Assert.False(run.IsKnown);
        Assert.Equal(TimeSpan.FromHours(1), run.To - run.From);
        Assert.Equal(Start + TimeSpan.FromHours(1), run.RanAt);
    }

    [Fact]
    public void Before_it_was_heard_it_never_ran()
    {
        Assert.False(default(PumpRun).RanAt.IsSet);
        Assert.Equal(0, default(PumpRun).Usual);
        Assert.False(default(PumpRun).Until(PumpActivity.Stopped, Start).RanAt.IsSet);
    }

    private static (PumpRun Run, Instant At) Pulsed(PumpRun run, Instant at, int hours, int ofTen)
    {
        for (var minute = 0; minute < hours * 60; minute++)
            run = run.Until(minute % 10 < ofTen ? PumpActivity.Running : PumpActivity.Stopped, at += TimeSpan.FromMinutes(1));
        return (run, at);
    }
}
