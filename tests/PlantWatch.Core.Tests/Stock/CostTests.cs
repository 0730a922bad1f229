using System.Collections.Immutable;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>What a time used and cost, for a bather and for a cubic metre, worked out by hand.</summary>
public sealed class CostTests
{
    private static readonly DateOnly First = new(2026, 4, 1);

    [Fact]
    public void Use_and_cost_come_to_so_much_a_bather_and_a_cubic_metre()
    {
        // Four days: 10, 12, 8 and 14 L; at 1.00 a litre, from the third day on at 1.20 since a delivery was dearer.
        UseRow[] rows = [Row(0, 10, 1), Row(1, 12, 1), Row(2, 8, 1.2), Row(3, 14, 1.2)];
        // The bathers of the second and the fourth day were counted: 300 and 350.
        var bathers = ImmutableDictionary<DateOnly, int>.Empty.Add(First.AddDays(1), 300).Add(First.AddDays(3), 350);
        var sums = UseSums.Of(rows, bathers, 400, First, First.AddDays(3));
        // 10 + 12 + 8 + 14 = 44 L; 10 + 12 + 9.60 + 16.80 = 48.40.
        Assert.Equal((44.0, 48.4, 0.0, 4), (sums.Amount, Math.Round(sums.Cost, 9), sums.Unpriced, sums.Days));
        // On the counted days 12 + 14 = 26 L for 650 bathers: 0.04 L each; 12 + 16.80 = 28.80 are 0.0443 each.
        Assert.Equal(0.04, sums.PerBather!.Value, 1e-12);
        Assert.Equal(28.8 / 650, sums.CostPerBather!.Value, 1e-12);
        // 44 L over 400 m3 and 4 days: 0.0275 L a cubic metre and day; 48.40 / 1600 = 0.03025.
        Assert.Equal(0.0275, sums.PerCubicMetreDay!.Value, 1e-12);
        Assert.Equal(0.03025, sums.CostPerCubicMetreDay!.Value, 1e-12);
    }

    [Fact]
    public void What_had_no_price_is_said_and_not_taken_for_free()
    {
        var sums = UseSums.Of([Row(0, 10, 1), Row(1, 6, null)], ImmutableDictionary<DateOnly, int>.Empty, 400, First, First.AddDays(5));
        Assert.Equal((16.0, 10.0, 6.0, (double?)null), (sums.Amount, sums.Cost, sums.Unpriced, sums.PerBather));
    }

    [Fact]
    public void Days_outside_do_not_count_and_a_time_without_use_is_nothing()
    {
        var sums = UseSums.Of([Row(-1, 99, 1), Row(2, 5, 1), Row(9, 99, 1)], ImmutableDictionary<DateOnly, int>.Empty, 400, First, First.AddDays(4));
        // From the first use in the time on: the third to the fifth day.
        Assert.Equal((5.0, 3), (sums.Amount, sums.Days));
        Assert.Equal(default, UseSums.Of([], ImmutableDictionary<DateOnly, int>.Empty, 400, First, First));
    }

    [Fact]
    public void Two_waters_add_up()
    {
        var one = UseSums.Of([Row(0, 10, 1)], ImmutableDictionary<DateOnly, int>.Empty.Add(First, 100), 400, First, First);
        var two = UseSums.Of([Row(0, 2, 1)], ImmutableDictionary<DateOnly, int>.Empty.Add(First, 20), 50, First, First);
        // 12 L for 120 bathers and 450 m3.
        Assert.Equal((0.1, 12 / 450.0), ((one + two).PerBather!.Value, (one + two).PerCubicMetreDay!.Value));
    }

    private static UseRow Row(int day, double litres, double? price) => new("hypo", "pump", First.AddDays(day), litres, StockUnit.Litre, 24, UseSource.Level, price);
}
