using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Charts;

public sealed class RunsTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 12);

    [Fact]
    public void A_gap_ends_a_run_and_the_next_point_begins_one()
    {
        var runs = Runs.Of(Line([1, null, 2, 3, null, null, 4], null), Start).ToList();
        Assert.Equal([[1.0], [2, 3], [4]], runs.Select(r => r.Mean));
        Assert.Equal([120.0, 180], runs[1].X);
    }

    [Fact]
    public void A_run_ends_where_a_calibration_begins_to_hold()
    {
        var runs = Runs.Of(Line([1, 2, 3], [null, null, 2.5]), Start).ToList();
        Assert.Equal([null, [2.5]], runs.Select(r => r.Corrected));
        Assert.Equal([1.0, 2], runs[0].Mean);
    }

    [Fact]
    public void Nothing_but_gaps_gives_no_run()
    {
        Assert.Empty(Runs.Of(Line([null, null], null), Start));
        Assert.Empty(Runs.Of(Line([], null), Start));
    }

    [Fact]
    public void Corrected_values_that_do_not_belong_to_the_points_are_a_fault_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => Runs.Of(Line([1, 2], [1]), Start).ToList());

    private static StripLine Line(double?[] values, double?[]? corrected) => new("p", new("p", Tier.Minute,
        [.. values.Select((v, i) => v is { } x ? new SeriesPoint(Start + TimeSpan.FromMinutes(i), 1, 1, x, x, x, x) : SeriesPoint.Gap(Start + TimeSpan.FromMinutes(i)))]), corrected);
}
