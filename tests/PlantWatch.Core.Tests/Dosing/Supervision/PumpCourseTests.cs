using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Dosing.Supervision;

public sealed class PumpCourseTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 6);

    private static readonly PumpPlan Runs = new() { Id = "p", Name = "P", ProductId = "acid", StateTopic = "s", LitresPerHour = 6 };

    private static Instant At(double minutes) => Start + TimeSpan.FromMinutes(minutes);

    [Fact]
    public void A_pump_that_only_runs_has_thirty_strokes_for_each_minute_of_it() => Assert.Equal(
        [75, 150, 0, null],
        PumpCourse.Strokes(Runs, [new(At(0), 0), new(At(2.5), 1), new(At(10), 0), new(At(15), 2)], Start, 4, At(20)));

    [Fact]
    public void A_counter_is_spread_over_the_time_it_took() => Assert.Equal(
        [25, 25, null],
        PumpCourse.Strokes(Runs with { StrokesTopic = "n", MillilitresPerStroke = 1 }, [new(At(0), 1000), new(At(10), 1050)], Start, 3, At(15)));

    [Fact]
    public void Of_strokes_of_the_last_minute_those_that_were_heard_stand_for_the_rest() => Assert.Equal(
        [50, null],
        PumpCourse.Strokes(Runs with { StrokesTopic = "n", StrokesAre = StrokeCount.LastMinute, MillilitresPerStroke = 1 }, [new(At(1), 8), new(At(3), 12)], Start, 2, At(10)));

    [Fact]
    public void Without_acid_that_arrives_pH_leaves_the_course_that_the_strokes_should_have_made()
    {
        var pool = new DosedPool(1);
        var supervisor = new PoolSupervisor(DosedPool.Plan);
        for (var minute = 0; minute < 10 * 1440; minute++) supervisor.Take(pool.Next());
        pool.AcidArrives = _ => 0;
        var (acid, chlorine, seen) = (new double?[192], new double?[192], new double?[192]);
        var from = default(Instant);
        for (var span = 0; span < 192; span++)
        {
            var minutes = Enumerable.Range(0, 5).Select(_ => pool.Next()).ToArray();
            if (span == 0) from = minutes[0].At;
            (acid[span], chlorine[span], seen[span]) = (minutes.Sum(m => m.AcidStrokes), minutes.Sum(m => m.ChlorineStrokes), minutes.Average(m => m.Ph));
        }

        var expected = PumpCourse.ExpectedPh(supervisor, from, acid, chlorine, seen);

        // At the end of the second eight hours.
        Assert.True(expected[191] < seen[191] - 0.02, $"expected {expected[191]}, seen {seen[191]}");
        Assert.All(PumpCourse.ExpectedPh(new PoolSupervisor(DosedPool.Plan), from, acid, chlorine, seen), e => Assert.Null(e));
    }
}
