using PlantWatch.Core.Statistics;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Tests.Chemistry;

namespace PlantWatch.Core.Tests.Statistics;

public class CusumTests
{
    [Fact]
    public void The_example_of_the_nist_handbook_is_met_to_its_printed_digits()
    {
        // NIST/SEMATECH e-Handbook 6.3.2.3: target 325, k 0.3175, h 4.1959; the first signal is at sample 14.
        var cusum = new Cusum(0.3175, 4.1959);
        var first = 0;
        foreach (var row in ReferenceRows.Of("Statistics", "nist_cusum.csv"))
        {
            if (cusum.Signals(row.Number("x") - 325) && first == 0) first = (int)row.Number("i");
            Assert.Equal(row.Number("S_hi_published"), cusum.High, 0.0051);
            Assert.Equal(row.Number("S_lo"), cusum.Low, 0.0001);
        }

        Assert.Equal(14, first);
    }
}
