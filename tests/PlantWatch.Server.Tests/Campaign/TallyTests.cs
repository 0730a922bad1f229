using PlantWatch.Campaign;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>The comparison itself sees what it is there to see. Numbers 0 to 5 say 0 0 1 1 2 2.</summary>
public sealed class TallyTests
{
    [Fact]
    public void Everything_once_is_nothing_to_complain_of() => Assert.Equal(default, Of([0, 0, 1, 1, 2, 2]));

    [Fact]
    public void One_of_two_equal_values_that_is_not_there_is_missing() => Assert.Equal(new Tally(1, 0, 0), Of([0, 0, 1, 2, 2]));

    [Fact]
    public void A_third_of_two_equal_values_is_doubled() => Assert.Equal(new Tally(0, 1, 0), Of([0, 0, 1, 1, 1, 2, 2]));

    [Fact]
    public void A_doubled_one_does_not_make_up_for_a_missing_one() => Assert.Equal(new Tally(1, 1, 0), Of([0, 0, 0, 1, 2, 2]));

    [Fact]
    public void A_value_that_was_never_said_is_doubled() => Assert.Equal(new Tally(0, 1, 0), Of([0, 0, 1, 1, 2, 2, 9]));

    [Fact]
    public void A_smaller_value_after_a_larger_one_is_out_of_order() => Assert.Equal(new Tally(0, 0, 1), Of([0, 1, 0, 1, 2, 2]));

    [Fact]
    public void What_was_not_acknowledged_may_be_there_or_not()
    {
        Assert.Equal(default, Of([0, 0, 1, 1, 2], acknowledged: 5));
        Assert.Equal(default, Of([0, 0, 1, 1, 2, 2], acknowledged: 5));
    }

    private static Tally Of(double[] stored, int acknowledged = 6) => Tally.Of(stored, 6, n => n < acknowledged);
}
