using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Dosing.Supervision;

public sealed class StrokeBookTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 6);

    [Theory]
    [InlineData(60, 0.5, 15)]
    [InlineData(60, 0.1, 3)]
    [InlineData(240, 0.5, 15)]
    [InlineData(240, 0.25, 7.5)]
    public void Pulses_of_a_cycle_are_the_mean_over_whole_cycles(double cycleSeconds, double duty, double strokes)
    {
        var book = new StrokeBook();
        var seen = new List<double>();
        for (var minute = 0; minute < 60; minute++)
        {
            for (var second = minute * 60; second < (minute + 1) * 60; second++)
                book = book.Turn((second + 17) % cycleSeconds < duty * cycleSeconds ? PumpActivity.Running : PumpActivity.Stopped, Start + TimeSpan.FromSeconds(second));
            (book, var said) = book.ByRunning(Start + TimeSpan.FromMinutes(minute));
            if (minute >= 15) seen.Add(said!.Value);
        }

        Assert.All(seen, s => Assert.Equal(strokes, s, 6));
    }

    [Fact]
    public void One_that_runs_on_is_flat_out_within_the_window_of_its_cycle()
    {
        var book = new StrokeBook().Turn(PumpActivity.Stopped, Start).Turn(PumpActivity.Running, Start + TimeSpan.FromSeconds(30));
        (book, var first) = book.ByRunning(Start);
        (_, var second) = book.ByRunning(Start + TimeSpan.FromMinutes(1));

        Assert.Equal((15.0, 30.0), (first, second));
    }

    [Theory]
    [InlineData(PumpActivity.Fault)]
    [InlineData(PumpActivity.Unknown)]
    public void What_a_pump_out_of_order_does_is_not_known(PumpActivity activity) => Assert.Null(new StrokeBook().Turn(activity, Start).ByRunning(Start).Strokes);

    [Fact]
    public void What_a_counter_rose_by_is_given_to_as_many_minutes_as_it_took_and_nothing_is_lost()
    {
        var book = new StrokeBook().Counted(1000, Start).Counted(1050, Start + TimeSpan.FromMinutes(5));
        var given = new List<double?>();
        for (var minute = 0; minute < 6; minute++)
        {
            (book, var strokes) = book.ByCount();
            given.Add(strokes);
        }

        Assert.Equal([10, 10, 10, 10, 10, null], given);
    }

    [Fact]
    public void A_counter_that_was_set_to_nil_goes_on_from_nil()
    {
        var (_, strokes) = new StrokeBook().Counted(99_990, Start).Counted(20, Start + TimeSpan.FromMinutes(2)).ByCount();

        Assert.Equal(10, strokes);
    }

    [Fact]
    public void A_counter_that_was_not_heard_for_hours_says_nothing_of_single_minutes() =>
        Assert.Null(new StrokeBook().Counted(10, Start).Counted(5000, Start + TimeSpan.FromHours(3)).ByCount().Strokes);

    [Fact]
    public void A_leap_that_no_pump_makes_begins_the_counter_anew()
    {
        var book = new StrokeBook().Counted(100, Start).Counted(5_000_000, Start + TimeSpan.FromMinutes(1));
        Assert.Null(book.ByCount().Strokes);
        Assert.Equal(30, book.Counted(5_000_030, Start + TimeSpan.FromMinutes(2)).ByCount().Strokes);
    }

    [Fact]
    public void The_first_word_of_a_counter_is_no_stroke() => Assert.Null(new StrokeBook().Counted(5000, Start).ByCount().Strokes);
}
