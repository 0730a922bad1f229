using CsCheck;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Correction;

public sealed class CorrectionLayerTests
{
    private static readonly RecordCorrection Winter = RiverRecord.Between(RiverRecord.At("2018-12-12 00:00"), RiverRecord.At("2019-01-08 15:30"), 0.07);

    // Logan River Observatory (Jones et al. 2022, doi 10.1016/j.envsoft.2022.105364): as read, and as its technicians corrected it.
    [Theory]
    [InlineData("2019-01-01 00:00", 8.48, 8.530223249)]
    [InlineData("2019-01-01 00:15", 8.48, 8.530250192)]
    [InlineData("2019-01-01 00:30", 8.48, 8.530277136)]
    [InlineData("2019-01-01 00:45", 8.48, 8.53030408)]
    public void A_ramp_between_two_services_is_what_the_technicians_of_a_river_made_of_it(string at, double asRead, double asCorrected) =>
        Assert.Equal(asCorrected, CorrectionLayer.Apply(Winter, RiverRecord.At(at), asRead).Value, 0.001);

    [RiverFact]
    public void Every_plain_reading_of_the_winter_deployment_is_met_within_a_thousandth()
    {
        var rows = RiverRecord.Rows().Where(r => Winter.Covers(r.At) && r.Label.Length == 0).ToList();
        Assert.Equal(734, rows.Count);
        Assert.All(rows, row => Assert.Equal(row.Corrected, CorrectionLayer.Apply(Winter, row.At, row.Ph).Value, 0.001));
    }

    [RiverFact]
    public void All_five_deployments_of_the_year_are_met_but_for_the_readings_that_the_technicians_labelled()
    {
        RecordCorrection[] services = [.. RiverRecord.Services().Where(s => s.To >= RiverRecord.At("2019-01-01 00:00"))];
        Assert.Equal(5, services.Length);
        var met = 0;
        foreach (var row in RiverRecord.Rows())
        {
            // At the service itself the technicians interpolate over the time the probe was out.
            if (row.Label.Length > 0 || services.FirstOrDefault(s => s.Covers(row.At) && row.At > s.From) is not { } service) continue;
            Assert.Equal(row.Corrected, CorrectionLayer.Apply(service, row.At, row.Ph).Value, 0.001);
            met++;
        }

        Assert.InRange(met, 14_000, 15_000);
    }

    [Fact]
    public void Nothing_is_added_at_the_first_service_all_of_the_gap_just_before_the_second_and_nothing_from_then_on()
    {
        Assert.Equal(0, CorrectionLayer.Apply([Winter], "river", Winter.From, 8).Added);
        Assert.Equal(0.07, CorrectionLayer.Apply([Winter], "river", Winter.To - TimeSpan.FromSeconds(1), 8).Added, 1e-6);
        Assert.Equal(default, CorrectionLayer.Apply([Winter], "river", Winter.To, 8).Added);
        Assert.Null(CorrectionLayer.Apply([Winter], "river", Winter.From - TimeSpan.FromSeconds(1), 8).By);
        Assert.Null(CorrectionLayer.Apply([Winter], "another", Winter.From + TimeSpan.FromDays(1), 8).By);
    }

    [Fact]
    public void What_was_withdrawn_corrects_nothing()
    {
        var withdrawn = Winter with { WithdrawnAt = Winter.To, WithdrawnBy = "J. Sample", WithdrawnWhy = "wrong buffer" };
        Assert.Equal(8.0, CorrectionLayer.Apply([withdrawn], "river", Winter.From + TimeSpan.FromDays(20), 8).Value);
    }

    [Fact]
    public void Fouling_and_drift_add_up_and_a_slope_turns_about_its_pivot()
    {
        var both = Winter with { Fouling = -0.05, Drift = 0.10, DriftSlope = 0.04, Pivot = 7 };
        Assert.Equal(0.05, both.GapAt(7), 1e-12);
        Assert.Equal(0.09, both.GapAt(8), 1e-12);
        Assert.Equal(0.045, CorrectionLayer.Apply(both, Halfway(both), 8).Added, 1e-9);
    }

    [Fact]
    public void The_uncertainty_is_that_of_the_gap_at_the_end_and_in_between_also_that_nobody_looked()
    {
        var seen = Winter with { GapU = 0.02, WanderPerDay = 0.148 * 0.148 / 30.44 };
        Assert.Equal(0, seen.UncertaintyAt(seen.From), 1e-9);
        Assert.Equal(0.02, seen.UncertaintyAt(seen.To), 1e-9);
        // Half way: half the gap's own, and a quarter of the variance that 27.65 days of wandering would have.
        Assert.Equal(Math.Sqrt((0.01 * 0.01) + (0.148 * 0.148 * 27.65 / 30.44 / 4)), seen.UncertaintyAt(Halfway(seen)), 1e-4);
    }

    [Fact]
    public void What_a_correction_adds_grows_steadily_and_never_beyond_the_gap() =>
        (from gap in Gen.Double[-2, 2] from a in Gen.Double[0, 1] from b in Gen.Double[0, 1] select (gap, a, b)).Sample(asked =>
        {
            var made = Winter with { Drift = asked.gap };
            double Added(double share) => CorrectionLayer.Apply(made, made.From + ((made.To - made.From) * share), 8).Added;
            var (early, late) = (Added(Math.Min(asked.a, asked.b)), Added(Math.Max(asked.a, asked.b)));
            Assert.True(Math.Abs(early) <= Math.Abs(late) + 1e-12);
            Assert.True(Math.Abs(late) <= Math.Abs(asked.gap) + 1e-12);
        });

    private static Instant Halfway(RecordCorrection correction) => correction.From + ((correction.To - correction.From) / 2);
}
