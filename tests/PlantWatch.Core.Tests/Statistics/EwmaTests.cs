using PlantWatch.Core.Statistics;
using PlantWatch.Core.Tests.Chemistry;

namespace PlantWatch.Core.Tests.Statistics;

public sealed class EwmaTests
{
    [Fact]
    public void The_example_of_the_nist_handbook_is_met_to_its_printed_digits_and_never_signals()
    {
        var average = new Ewma(50, 2.0539, 0.3);
        var limits = Figures.Expected("ST-14");
        // The page cuts its factor to 0.4201.
        Assert.Equal(limits[0], average.High, 0.001);
        Assert.Equal(limits[1], average.Low, 0.001);
        foreach (var row in ReferenceRows.Of("Statistics", "nist_ewma.csv"))
        {
            Assert.False(average.Signals(row.Number("x")));
            Assert.Equal(row.Number("ewma_published"), average.Value, 0.0051);
        }
    }

    [Fact]
    public void A_small_shift_that_stays_signals_in_the_end()
    {
        var average = new Ewma(7.2, 0.05, 0.2);
        var taken = 0;
        while (!average.Signals(7.27) && taken < 100) taken++;
        Assert.InRange(taken, 2, 20);
    }
}
