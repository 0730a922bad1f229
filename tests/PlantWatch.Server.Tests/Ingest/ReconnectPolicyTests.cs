using PlantWatch.Server.Ingest;

namespace PlantWatch.Server.Tests.Ingest;

public class ReconnectPolicyTests
{
    [Fact]
    public void Waits_double_from_half_a_second_to_half_a_minute_and_stay_there()
    {
        var policy = new ReconnectPolicy();
        var waits = Enumerable.Range(0, 10).Select(_ => policy.Next(TimeSpan.Zero, 1).TotalSeconds);

        Assert.Equal([0.5, 1, 2, 4, 8, 16, 30, 30, 30, 30], waits);
    }

    [Fact]
    public void Chance_spreads_a_wait_over_its_upper_half()
    {
        Assert.Equal(TimeSpan.FromMilliseconds(250), new ReconnectPolicy().Next(TimeSpan.Zero, 0));
        Assert.Equal(TimeSpan.FromMilliseconds(375), new ReconnectPolicy().Next(TimeSpan.Zero, 0.5));
        Assert.Equal(TimeSpan.FromMilliseconds(500), new ReconnectPolicy().Next(TimeSpan.Zero, 1));
    }

    [Fact]
    public void A_connection_that_held_half_a_minute_begins_the_count_anew_and_a_shorter_one_does_not()
    {
        var policy = new ReconnectPolicy();
        for (var i = 0; i < 4; i++) policy.Next(TimeSpan.Zero, 1);

        Assert.Equal(8, policy.Next(TimeSpan.FromSeconds(29.9), 1).TotalSeconds);
        Assert.Equal(0.5, policy.Next(TimeSpan.FromSeconds(30), 1).TotalSeconds);
    }

    [Fact]
    public void A_year_of_failures_does_not_overflow()
    {
        var policy = new ReconnectPolicy();
        for (var i = 0; i < 2_000_000; i++) policy.Next(TimeSpan.Zero, 1);

        Assert.Equal(30, policy.Next(TimeSpan.Zero, 1).TotalSeconds);
    }
}
