using CsCheck;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>Alarms of two sides, and what limits do to them.</summary>
public sealed class AlarmComparisonTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2);

    [Fact]
    public void The_same_are_those_of_one_key_that_stand_at_one_time()
    {
        var compared = AlarmComparison.Of([Stood("a", 0, 10), Stood("a", 20, 30), Stood("b", 0, 10)], [Stood("a", 5, 12), Stood("a", 30, 40), Stood("c", 0, 10)], Start);
        Assert.Equal([("b", 0), ("a", 20)], compared.Lost.OrderBy(e => e.From).Select(e => (e.Subject, Minutes(e.From))));
        Assert.Equal([("c", 0), ("a", 30)], compared.Gained.OrderBy(e => e.From).Select(e => (e.Subject, Minutes(e.From))));
        Assert.Equal(new RuleCount("R-010", Priority.Medium, 3, 3, 2, 2, TimeSpan.FromMinutes(30), TimeSpan.FromMinutes(27)), Assert.Single(compared.Rules));
    }

    [Fact]
    public void One_long_alarm_that_becomes_three_short_ones_is_neither_lost_nor_are_they_gained()
    {
        var compared = AlarmComparison.Of([Stood("a", 0, 60)], [Stood("a", 5, 10), Stood("a", 20, 30), Stood("a", 50, 60)], Start);
        Assert.Empty(compared.Lost);
        Assert.Empty(compared.Gained);
        Assert.Equal((1, 3), (compared.Rules[0].Before, compared.Rules[0].After));
    }

    [Fact]
    public void What_stands_at_the_end_has_no_end_and_what_stood_before_begins_with_the_time()
    {
        var book = new EpisodeBook();
        book.Take(Start, Alarm("a"), AlarmChange.Raised);
        book.Take(Start + TimeSpan.FromMinutes(10), Alarm("b"), AlarmChange.Raised);
        book.Take(Start + TimeSpan.FromMinutes(20), Alarm("b"), AlarmChange.Cleared);
        var within = book.Within(Start + TimeSpan.FromMinutes(15), Start + TimeSpan.FromMinutes(60));
        Assert.Equal([("a", 15, false), ("b", 15, true)], within.Select(e => (e.Subject, Minutes(e.From), e.To.IsSet)));
        Assert.Empty(book.Within(Start - TimeSpan.FromMinutes(5), Start));
    }

    [Fact]
    public void What_has_no_end_stands_to_the_end_of_the_time() => Assert.Equal(
        TimeSpan.FromMinutes(50), AlarmComparison.Of([Stood("a", 10, 20) with { To = Instant.Never }], [], Start + TimeSpan.FromMinutes(60)).Rules[0].StoodBefore);

    [Fact]
    public void Another_story_from_a_time_on_leaves_the_first_as_it_was()
    {
        var book = new EpisodeBook();
        book.Take(Start, Alarm("a"), AlarmChange.Raised);
        var copy = book.Copy();
        copy.Take(Start + TimeSpan.FromMinutes(1), Alarm("a"), AlarmChange.Cleared);
        Assert.False(book.All[0].To.IsSet);
        Assert.True(copy.All[0].To.IsSet);
    }

    [Fact]
    public void Who_was_never_called_is_told()
    {
        var book = new EpisodeBook();
        book.Take(Start, Alarm("a") with { Suppressed = true }, AlarmChange.Raised);
        book.Take(Start, Alarm("b") with { Suppressed = true }, AlarmChange.Raised);
        book.Take(Start + TimeSpan.FromMinutes(1), Alarm("b"), AlarmChange.Released);
        Assert.Equal([false, true], book.All.Select(e => e.Called));
    }

    // A walk in steps of 0.05 pH around the band, for hours.
    private static readonly Gen<(double Low, double High, double Wider, int[] Steps)> Walks =
        Gen.Select(Gen.Double[7.0, 7.3], Gen.Double[7.4, 7.7], Gen.Double[0, 0.3], Gen.Int[-2, 2].Array[40, 160], (low, high, wider, steps) => (low, high, wider, steps));

    [Fact, Evidence("R-010"), Evidence("R-011")]
    public void A_wider_band_never_gains_an_alarm_of_a_limit_and_a_tighter_one_never_loses_any() => Walks.Sample(
        walk =>
        {
            var (tight, wide) = (Lived(walk.Low, walk.High, walk.Steps), Lived(walk.Low - walk.Wider, walk.High + walk.Wider, walk.Steps));
            Assert.Empty(AlarmComparison.Of(tight, wide, Start).Gained);
            Assert.Empty(AlarmComparison.Of(wide, tight, Start).Lost);
        }, iter: 60);

    private static System.Collections.Immutable.ImmutableArray<AlarmEpisode> Lived(double low, double high, int[] steps)
    {
        var bench = new Bench(Hall.Plan.WithPool("main", p => p with { Limits = [new(Measurand.Ph, low, high, "test")] }));
        var value = 7.35;
        foreach (var step in steps)
        {
            value = Math.Clamp(value + (0.05 * step), 6.9, 7.9);
            for (var i = 0; i < 3; i++) bench.Hold(TimeSpan.FromSeconds(30), (Hall.Flow, 1), (Hall.Ph, value));
        }

        var book = new EpisodeBook();
        foreach (var entry in bench.Entries)
            if (entry.Body is AlarmEntry said && (said.Alarm.Rule == RuleBook.BelowLimit.Number || said.Alarm.Rule == RuleBook.AboveLimit.Number)) book.Take(entry.At, said.Alarm, said.Change);
        return [.. book.All];
    }

    [Fact]
    public void What_is_gained_and_lost_comes_in_the_order_of_time()
    {
        var compared = AlarmComparison.Of([Stood("a", 20, 30), Stood("b", 0, 10)], [], Start);
        Assert.Equal(["b", "a"], compared.Lost.Select(e => e.Subject));
    }

    [Fact]
    public void A_part_begins_and_ends_with_the_time_looked_at()
    {
        var (from, to) = (Start + TimeSpan.FromMinutes(10), Start + TimeSpan.FromMinutes(20));
        Assert.Null(Stood("a", 0, 10).Within(from, to));
        Assert.Null(Stood("a", 20, 30).Within(from, to));
        Assert.Equal((from, to), Stood("a", 0, 19).Within(from, to) is { } part ? (part.From, part.To + TimeSpan.FromMinutes(1)) : default);
        // What ends with the time stands at its end.
        Assert.False(Stood("a", 12, 20).Within(from, to)!.To.IsSet);
        Assert.False((Stood("a", 12, 20) with { To = Instant.Never }).Within(from, to)!.To.IsSet);
    }

    private static AlarmEpisode Stood(string subject, int from, int to) => new(
        RuleBook.BelowLimit.KeyFor(subject), RuleBook.BelowLimit.Number, subject, Priority.Medium, Reason.Of("limit.below"), Start + TimeSpan.FromMinutes(from), Start + TimeSpan.FromMinutes(to), true);

    private static AlarmRecord Alarm(string subject) =>
        new() { Key = RuleBook.BelowLimit.KeyFor(subject), Rule = RuleBook.BelowLimit.Number, Subject = subject, Priority = Priority.Medium, Cause = Reason.Of("limit.below"), Active = true, IsAcknowledged = false };

    private static int Minutes(Instant at) => (int)Math.Round((at - Start).TotalMinutes);
}
