using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Stops that a plant has edited: tighter with a reason, looser only by an administrator, gone never.</summary>
public sealed class EditedStopTests
{
    private const string Why = "the operator's licence, condition 4";

    private static readonly StopPlan Tighter = new(Measurand.FreeChlorine, 0.5, 5, Why);
    private static readonly StopPlan Looser = new(Measurand.FreeChlorine, null, 15, Why, "A. Example");

    [Fact]
    public void Nobody_edits_and_the_stops_are_the_usual_ones()
    {
        foreach (var measurand in Stops.Of)
        {
            Assert.True(Stops.TryUsual(measurand, out var usual, out _) && Stops.TryOf(Plan(), measurand, out var now, out _) && now == usual);
            Assert.True(Stops.Furthest(measurand).Contains(usual.Low) && Stops.Furthest(measurand).Contains(usual.High));
        }

        Assert.False(Stops.TryOf(Plan(), Measurand.Orp, out _, out _));
    }

    [Fact]
    public void A_stop_is_loosened_as_far_as_it_still_stops_something_and_no_further() =>
        // Our own choice, wider than any code known to us.
        Assert.Equal([new(6, 9), new(0.1, 20), new(-5, 43), default], new[] { Measurand.Ph, Measurand.FreeChlorine, Measurand.Temperature, Measurand.Orp }.Select(Stops.Furthest));

    [Theory]
    [InlineData(0.2, 10.0, false)]
    [InlineData(0.19, 10.0, true)]
    [InlineData(0.2, 10.1, true)]
    [InlineData(null, 10.1, true)]
    [InlineData(0.3, 9.0, false)]
    [InlineData(null, null, false)]
    public void Looser_is_what_lets_through_what_the_usual_stop_does_not(double? low, double? high, bool looser) =>
        Assert.Equal(looser, Stops.IsLooser(new(Measurand.FreeChlorine, low, high, Why)));

    [Fact]
    public void A_tighter_stop_needs_a_reason_and_nobody_by_name()
    {
        Assert.Equal(new ValueRange(0.5, 5), Chlorine(Tighter));
        Assert.Equal(Stops.FreeChlorine, Chlorine(Tighter with { Why = " " }));
        Assert.Equal(new ValueRange(0.2, 5), Chlorine(Tighter with { Low = null }));
    }

    [Theory]
    [InlineData("A. Example", 15)]
    [InlineData("a. example ", 15)]
    [InlineData("E. Example", 10)]
    [InlineData("S. Stranger", 10)]
    [InlineData(null, 10)]
    public void A_looser_stop_needs_an_administrator_of_the_plant(string? by, double high) => Assert.Equal(high, Chlorine(Looser with { By = by }).High);

    [Fact]
    public void Not_even_an_administrator_makes_a_stop_that_stops_nothing()
    {
        Assert.Equal(Stops.Furthest(Measurand.FreeChlorine), Chlorine(Looser with { Low = 0, High = 200 }));
        // Nothing inside is no stop either.
        Assert.Equal(Stops.FreeChlorine, Chlorine(Tighter with { Low = 9, High = 2 }));
        Assert.Equal(Stops.FreeChlorine, Chlorine(Tighter with { Low = double.NaN }));
    }

    [Fact, Evidence("R-002")]
    public void A_live_chlorine_is_held_against_the_stop_as_the_plant_has_it()
    {
        var bench = new Bench(Plan(Tighter));
        bench.Hold(TimeSpan.FromMinutes(1), (Hall.Chlorine, 0.4));
        Assert.True(bench.IsUp(RuleBook.StopFreeChlorine, "main-chlorine"));
        Assert.Equal(0.5, bench.Alarm(RuleBook.StopFreeChlorine, "main-chlorine")!.Cause.Facts[2].Number);
    }

    [Fact, Evidence("R-013")]
    public void A_stop_that_is_tightened_is_held_against_the_newest_tests_at_once()
    {
        var bench = new Bench(Plan());
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.4));
        Assert.False(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
        bench.Load(Plan(Tighter));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
        // Back to the usual stop clears nothing: a test does.
        bench.Load(Plan());
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.4));
        Assert.False(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
    }

    [Fact, Evidence("R-013")]
    public void A_test_of_yesterday_is_not_held_against_a_stop_of_today()
    {
        var bench = new Bench(Plan());
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.4));
        bench.Skip(TimeSpan.FromHours(13));
        bench.Load(Plan(Tighter));
        Assert.False(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
    }

    [Fact]
    public void A_reload_says_what_became_of_a_stop()
    {
        Assert.Equal(
            [Reason.Of("plan.stop_changed", "hall", "free_chlorine", 0.2, 10, 0.5, 5, Why)],
            PlanChange.Between(Plan(), Plan(Tighter)).Effects.AsEnumerable());
        // What nobody may stand for changes nothing, and is not said to.
        Assert.Empty(PlanChange.Between(Plan(), Plan(Looser with { By = "E. Example" })).Effects);
    }

    private static ValueRange Chlorine(StopPlan edit)
    {
        Assert.True(Stops.TryOf(Plan(edit), Measurand.FreeChlorine, out var range, out _));
        return range;
    }

    private static CircuitPlan Plan(params StopPlan[] stops) => Hall.Plan with
    {
        Stops = [.. stops], People = [new("a", "A. Example", PersonRole.Administrator), new("e", "E. Example", PersonRole.Engineer)],
    };
}
