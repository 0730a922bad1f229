using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

public sealed class PumpStrokeTests
{
    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        Pumps = [Hall.Plan.Pumps[0] with { StrokesTopic = "hall/acid/strokes", MillilitresPerStroke = 0.4 }, Hall.Plan.Pumps[1]],
    };

    [Fact]
    public void Strokes_are_kept_as_a_series_and_counted_as_stored()
    {
        var result = Said(184223);

        Assert.Equal(("acid-pump/strokes", 184223), (Assert.Single(result.Readings).Series, result.Readings[0].Raw));
        Assert.Equal((184223, Quality.Received), (result.Next.Pumps[0].Strokes.Value, result.Next.Pumps[0].Strokes.Quality));
        Assert.Equal(result.Next.Ledger.Received, result.Next.Ledger.Stored);
    }

    [Fact]
    public void Less_than_no_stroke_is_refused_and_kept()
    {
        var result = Said(-1);

        Assert.Equal(RefusalReason.OutsideRange, Assert.Single(result.Refusals).Reason);
        Assert.Equal(Quality.NotReceived, result.Next.Pumps[0].Strokes.Quality);
    }

    [Fact]
    public void A_counter_that_leaps_as_no_pump_strokes_was_changed_and_doses_nothing()
    {
        var state = Said(100).Next;
        Instant Later(int minutes) => Hall.Nine + TimeSpan.FromMinutes(minutes);
        // 100 strokes of 0.4 mL are 0.04 L; what lies between them and the new counter is no stroke.
        foreach (var (count, minutes) in new[] { (200, 1), (5_000_000, 2), (5_000_050, 3) })
            state = Step.Run(state, [new MessageArrived(Later(minutes), "hall/acid/strokes", Encoding.UTF8.GetBytes(count.ToString(CultureInfo.InvariantCulture)), false, null)]).Next;
        Assert.Equal(0.06, state.Pumps[0].Today.Litres, 1e-12);
    }

    [Theory]
    [InlineData(999, true)]
    [InlineData(1001, false)]
    public void More_strokes_in_a_minute_than_any_pump_makes_are_refused(double strokes, bool taken)
    {
        var plan = Plan with { Pumps = [Plan.Pumps[0] with { StrokesAre = StrokeCount.LastMinute }, Plan.Pumps[1]] };
        var result = Step.Run(CircuitState.Of(plan), [new PlanLoaded(Hall.Nine, plan), new MessageArrived(Hall.Nine, "hall/acid/strokes", Encoding.UTF8.GetBytes(strokes.ToString(CultureInfo.InvariantCulture)), false, null)]);
        Assert.Equal(taken ? 0 : 1, result.Refusals.Length);
    }

    [Fact]
    public void A_pump_that_falls_silent_while_it_runs_is_not_taken_to_run_on_for_ever()
    {
        var plan = Plan with { Pumps = [Plan.Pumps[0] with { StrokesTopic = null, MillilitresPerStroke = null, LitresPerHour = 6 }, Plan.Pumps[1]] };
        var state = Step.Run(CircuitState.Of(plan), [new PlanLoaded(Hall.Nine, plan), new MessageArrived(Hall.Nine, Hall.AcidState, "running"u8.ToArray(), false, null)]).Next;
        for (var minute = 1; minute <= 300; minute++) state = Step.Run(state, [new ClockTicked(Hall.Nine + TimeSpan.FromMinutes(minute))]).Next;
        // An hour at 6 L/h is known; of the four after it nothing is.
        Assert.Equal(6, state.Pumps[0].Today.Litres, 1e-9);
    }

    [Theory, Evidence("R-033")]
    [InlineData(StrokeCount.Total)]
    [InlineData(StrokeCount.LastMinute)]
    public void Strokes_into_standing_water_count_where_nobody_supervises_the_water_too_and_by_a_counter_as_well(StrokeCount are)
    {
        var plan = Plan with { Pumps = [Plan.Pumps[0] with { StrokesAre = are }, Plan.Pumps[1]] };
        Assert.Empty(Step.Run(CircuitState.Of(plan), [new PlanLoaded(Hall.Nine, plan)]).Next.Dosing);
        var (bench, total) = (new Bench(plan), 5000.0);
        var key = RuleBook.DosesWithoutFlow.KeyFor("acid-pump");
        void Minute(double strokes, bool flows)
        {
            bench.Says(Hall.Flow, flows ? "1" : "0");
            total += strokes;
            bench.Says("hall/acid/strokes", (are == StrokeCount.Total ? total : strokes).ToString(CultureInfo.InvariantCulture));
            bench.Pass(TimeSpan.FromMinutes(1));
        }

        Minute(12, flows: true);
        Minute(12, flows: true);
        // These may be of the minute before the water stood.
        Minute(12, flows: false);
        Assert.DoesNotContain(key, bench.State.Alarms.Keys);
        Minute(0, flows: false);
        Minute(0, flows: false);
        Assert.DoesNotContain(key, bench.State.Alarms.Keys);
        Minute(3, flows: false);
        Assert.Equal((true, "dosing.without_sample_flow"), (bench.State.Alarms[key].Active, bench.State.Alarms[key].Cause.Code));
        bench.Restart();
        Minute(0, flows: false);
        Assert.Equal((false, true), (bench.State.Alarms[key].Active, bench.State.Alarms[key].LatchHeld));
        Minute(5, flows: true);
        Assert.False(bench.State.Alarms[key].Active);
    }

    private static StepResult Said(double strokes) => Step.Run(CircuitState.Of(Plan),
    [
        new PlanLoaded(Hall.Nine, Plan),
        new MessageArrived(Hall.Nine, "hall/acid/strokes", Encoding.UTF8.GetBytes(strokes.ToString(CultureInfo.InvariantCulture)), false, null),
    ]);
}
