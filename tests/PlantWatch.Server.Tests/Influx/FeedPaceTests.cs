using PlantWatch.Server.Series;

namespace PlantWatch.Server.Tests.Influx;

public sealed class FeedPaceTests
{
    private readonly FeedPace _pace = new();

    [Fact]
    public void While_more_is_owed_nobody_waits() => Assert.Equal((TimeSpan.Zero, FeedPace.Beat), (_pace.AfterSuccess(isMore: true), _pace.AfterSuccess(isMore: false)));

    [Fact]
    public void Waits_double_up_to_half_a_minute_for_ever_and_a_success_begins_anew()
    {
        var waits = Enumerable.Range(0, 40).Select(_ => _pace.AfterFailure(TimeSpan.Zero, 1)).ToArray();

        Assert.Equal([0.5, 1, 2, 4, 8, 16, 30, 30], waits.Take(8).Select(w => w.TotalSeconds));
        Assert.Equal((40, 30d), (_pace.Failures, waits[^1].TotalSeconds));
        _pace.AfterSuccess(isMore: false);
        Assert.Equal(TimeSpan.FromMilliseconds(250), _pace.AfterFailure(TimeSpan.Zero, 0));
    }

    [Fact]
    public void A_server_that_asks_for_rest_gets_it_within_reason()
    {
        Assert.Equal(TimeSpan.FromSeconds(90), _pace.AfterFailure(TimeSpan.FromSeconds(90), 1));
        Assert.Equal(FeedPace.LongestRest, _pace.AfterFailure(TimeSpan.FromDays(3), 1));
    }
}
