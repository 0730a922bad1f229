using CsCheck;
using PlantWatch.Core.Chemistry;

namespace PlantWatch.Core.Tests.Chemistry.Methods;

public class MethodTests
{
    [Fact]
    public void A_larger_sample_has_a_finer_step_and_the_count_moves_by_it() => Gen.Select(Gen.Int[1, 99], Gen.Double[10, 400]).Sample((tablets, millilitres) =>
    {
        var step = TabletCount.Step(millilitres).Value;
        Assert.True(TabletCount.Step(millilitres + 50).Value < step);
        Assert.Equal(step, TabletCount.Result(tablets + 1, millilitres).Value - TabletCount.Result(tablets, millilitres).Value, 1e-6);
        Assert.True(TabletCount.Uncertainty(step) < step);
    });

    [Theory]
    [InlineData(0, 50, "input_tablets")]
    [InlineData(3, 5, "input_sample_volume")]
    [InlineData(3, double.NaN, "input_sample_volume")]
    public void A_count_out_of_range_is_named(int tablets, double millilitres, string input) => Assert.Equal(input, TabletCount.Result(tablets, millilitres).Why!.Facts[0].Text);

    [Theory]
    [InlineData(0, 4, "input_sample_parts")]
    [InlineData(1, -1, "input_water_parts")]
    [InlineData(1, 100, "input_dilution")]
    public void A_dilution_out_of_range_is_named(double sample, double water, string input) => Assert.Equal(input, SampleDilution.Factor(sample, water).Why!.Facts[0].Text);

    [Fact]
    public void Diluting_more_never_makes_a_result_surer() => Gen.Select(Gen.Double[0.1, 5], Gen.Double[0.01, 0.5], Gen.Double[1, 50], Gen.Double[0.1, 50]).Sample((reading, u, factor, more) =>
    {
        var (less, much) = (SampleDilution.Undiluted(new(reading, u), factor), SampleDilution.Undiluted(new(reading, u), factor + more));
        Assert.True(much.StandardUncertainty > less.StandardUncertainty);
        Assert.Equal(factor * reading, less.Value, 1e-9);
    });

    [Fact]
    public void A_bound_stays_without_a_number_when_diluted() => Assert.False(SampleDilution.Undiluted(default, 5).IsKnown);

    [Fact]
    public void Ph_and_millivolts_are_each_other_backwards() => Gen.Select(Gen.Double[0, 14], Gen.Double[0, 60], Gen.Double[-30, 30], Gen.Double[85, 105]).Sample((ph, celsius, offset, slope) =>
    {
        var millivolts = offset - ((ph - 7) * slope / 100 * Nernst.Slope(celsius));
        Assert.Equal(ph, new PhElectrode(offset, slope).Ph(millivolts, celsius).Value, 1e-9);
    });

    [Fact]
    public void Temperature_does_not_matter_at_the_isopotential_point() => Assert.Equal(0, PhElectrode.ErrorUncompensated(7, 40));

    [Fact]
    public void Buffers_that_are_too_close_make_no_electrode()
    {
        Assert.Equal(default, PhElectrode.FromBuffers((7.00, 0), (6.86, 8), 25));
        Assert.Equal("input_slope", default(PhElectrode).Ph(-25, 25).Why!.Facts[0].Text);
    }

    [Fact]
    public void A_buffer_that_is_not_at_seven_gives_the_offset_at_seven()
    {
        var electrode = PhElectrode.FromBuffers((9.18, 2 - (2.18 * Nernst.Slope(25))), (4.01, 2 + (2.99 * Nernst.Slope(25))), 25);
        Assert.Equal((2.0, 100.0), (Math.Round(electrode.OffsetMillivolts, 9), Math.Round(electrode.SlopePercent, 9)));
    }

    [Fact]
    public void Conductivity_is_referred_to_25_degrees_by_two_per_cent_a_kelvin()
    {
        Assert.Equal(1000, ConductivityMeter.At25(1060, 28).Value, 1e-9);
        Assert.Equal(1000, ConductivityMeter.At25(1000, 25).Value);
        Assert.Equal("input_temperature", ConductivityMeter.At25(1000, 60).Why!.Facts[0].Text);
    }

    [Fact]
    public void Solids_of_a_conductivity_are_met_within_their_uncertainty_on_every_computed_water()
    {
        // ec_tds_25C.csv: generated with PHREEQC 3.8.9.
        foreach (var row in ReferenceRows.Of("Chemistry", "ec_tds_25C.csv"))
        {
            var solids = ConductivityMeter.Solids(row.Number("SC25_uS_cm"));
            Assert.InRange(row.Number("TDS_mgL"), solids.Value - solids.Expanded, solids.Value + solids.Expanded);
        }
    }

    [Fact]
    public void Formulas_of_methods_answer_every_number_in_range_with_a_number() =>
        Gen.Select(Gen.Double[0, 200_000], Gen.Double[0, 50]).Sample((microsiemens, celsius) =>
        {
            var at25 = ConductivityMeter.At25(microsiemens, celsius);
            Assert.True(at25.IsKnown && double.IsFinite(at25.Value) && at25.Value >= 0);
        });
}
