using System.Collections.Immutable;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>How long a stock lasts: worked out by hand, and held against uses whose end is known.</summary>
public sealed class OutlookTests
{
    private static readonly DateOnly Today = new(2026, 5, 4);

    [Fact]
    public void A_steady_use_ends_when_the_stock_is_divided_by_it()
    {
        // 10 L a day and no scatter: 45 L last four days and a half, at both ends.
        var found = Outlook.Of(45, Days(20, _ => 10), Today).Found!;
        Assert.Equal((4.5, 4.5, 4.5, 10.0), (found.Earliest!.Value, found.Middle!.Value, found.Latest!.Value, found.PerDay), Near);
    }

    [Fact]
    public void The_ends_are_those_of_a_hand_computed_example()
    {
        // Ten days, 8 and 12 in turn: mean 10, variance 10 x 4 / 9 = 4.444, r below nothing and so taken as 0. Student's t for 80 per cent and nine degrees of freedom: 1.383.
        // After 5 days 50 +- 1.383 sqrt(4.444 (5 + 25/10)) = 50 +- 7.985; after 6 days 60 +- 1.383 sqrt(4.444 (6 + 36/10)) = 60 +- 9.034.
        // With 57.985 in stock the early end is at 5 days: 50 + 7.985.
        var early = Outlook.Of(57.985, Days(10, i => i % 2 == 0 ? 8 : 12), Today).Found!;
        Assert.Equal(5, early.Earliest!.Value, 0.001);
        // With 50.966 the late end is at 6 days: 60 - 9.034.
        var late = Outlook.Of(50.966, Days(10, i => i % 2 == 0 ? 8 : 12), Today).Found!;
        Assert.Equal(6, late.Latest!.Value, 0.001);
    }

    [Fact]
    public void Weekdays_are_told_apart_where_they_differ()
    {
        // 30 on Saturday and Sunday, 10 on the others, with a little scatter: from a Monday 50 last five days, from a Saturday less than two.
        static double Use(DateOnly day, int i) => (day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? 30 : 10) + (i % 3 * 0.2);
        ImmutableArray<DayUse> days = [.. Enumerable.Range(1, 28).Select(i => Today.AddDays(i - 29)).Select((d, i) => new DayUse(d, Use(d, i), 24))];
        var found = Outlook.Of(50, days, Today).Found!;
        Assert.True(found.ByWeekday);
        Assert.Equal(4.9, found.Middle!.Value, 0.1);
        var weekend = Outlook.Of(50, [.. days.Select(d => d with { Day = d.Day.AddDays(5) }).Select((d, i) => d with { Amount = Use(d.Day, i) })], Today.AddDays(5)).Found!;
        Assert.Equal(1.66, weekend.Middle!.Value, 0.1);
    }

    [Fact]
    public void Too_few_days_days_half_known_and_no_use_are_said_by_name()
    {
        Assert.Equal("stock.too_few_days", Outlook.Of(50, Days(4, _ => 10), Today).Why!.Code);
        Assert.Equal("stock.too_few_days", Outlook.Of(50, [.. Days(30, _ => 10).Select(d => d with { Hours = 12 })], Today).Why!.Code);
        var (found, why) = Outlook.Of(50, Days(10, _ => 0), Today);
        Assert.Equal(("stock.not_used", (double?)null), (why!.Code, found!.Earliest));
        Assert.Equal(0, Outlook.Of(0, Days(10, _ => 10), Today).Found!.Latest);
        Assert.Null(Outlook.Of(50_000, Days(10, _ => 10), Today).Found!.Middle);
    }

    // Uses as plants have them: no day is below nothing, some are busy, weekends differ, warm weeks follow on each other. Fixed seeds.
    [Theory]
    [InlineData(10, false, 0.0)]
    [InlineData(28, false, 0.0)]
    [InlineData(28, true, 0.0)]
    [InlineData(42, true, 0.3)]
    [InlineData(56, true, 0.5)]
    public void Four_times_in_five_the_stock_ends_between_the_ends(int known, bool weekend, double alike)
    {
        var random = new Random(20260504 + known);
        var (inside, below) = (0, 0);
        const int runs = 600;
        for (var run = 0; run < runs; run++)
        {
            var uses = Uses(random, known + 120, weekend, alike);
            ImmutableArray<DayUse> days = [.. uses.Take(known).Select((u, i) => new DayUse(Today.AddDays(i - known), u, 24))];
            var stock = 10 * (3 + (20 * random.NextDouble()));
            var end = Ends(uses.Skip(known), stock);
            var found = Outlook.Of(stock, days, Today).Found!;
            if (end < found.Earliest) below++;
            if (end >= found.Earliest && !(end > found.Latest)) inside++;
        }

        // 80 per cent, with three standard errors of 600 runs (4.9 per cent) and some width to spare: a forecast that is too sure of itself is the worse one.
        Assert.InRange(inside / (double)runs, 0.72, 0.90);
        Assert.InRange(below / (double)runs, 0, 0.16);
    }

    [Fact]
    public void Days_of_several_tanks_and_of_hands_add_up_where_all_are_known()
    {
        var (d1, d2) = (Today.AddDays(-2), Today.AddDays(-1));
        var together = UseDays.Together([[new(d1, 5, 24), new(d2, 6, 24)], [new(d1, 1, 24), new(d2, 2, 9)]], [[new(d2, 3, 24)]], Today);
        Assert.Equal([(6.0, true), (11.0, false)], together.Select(d => (d.Amount, d.IsWhole)));
        // By hand alone a day without a dose is a day of nothing.
        Assert.Equal([3.0, 0, 0], UseDays.Together([], [[new(Today.AddDays(-3), 3, 24)]], Today).Select(d => d.Amount));
    }

    private static List<double> Uses(Random random, int days, bool weekend, double alike)
    {
        var (uses, warm) = (new List<double>(), 0.0);
        for (var i = 0; i < days; i++)
        {
            warm = (alike * warm) + (Math.Sqrt(1 - (alike * alike)) * Normal(random));
            var day = Today.AddDays(i - days).DayOfWeek;
            uses.Add((weekend && day is DayOfWeek.Saturday or DayOfWeek.Sunday ? 16 : 10) * Math.Max(0, 1 + (0.25 * warm)));
        }

        return uses;
    }

    private static double Ends(IEnumerable<double> uses, double stock)
    {
        var day = 0.0;
        foreach (var use in uses)
        {
            if (use >= stock) return day + (stock / use);
            (stock, day) = (stock - use, day + 1);
        }

        return double.PositiveInfinity;
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static ImmutableArray<DayUse> Days(int count, Func<int, double> use) => [.. Enumerable.Range(0, count).Select(i => new DayUse(Today.AddDays(i - count), use(i), 24))];

    private static readonly IEqualityComparer<(double, double, double, double)> Near = EqualityComparer<(double, double, double, double)>.Create(
        (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) + Math.Abs(a.Item4 - b.Item4) < 1e-9, _ => 0);
}
