using PlantWatch.Core.Dosing;
using PlantWatch.Core.Dosing.Volume;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Dosing.Volume;

/// <summary>The water that doses and retests tell of, against an example worked by hand and by how often its interval holds the truth.</summary>
public sealed class EffectiveVolumeTests
{
    private static readonly Instant Noon = Instant.From(new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero));

    private static VolumeSign Sign(double ratio, double testU = 0.05, double strengthU = 0, string product = "bicarbonate", double cubicMetres = 400, double hour = 0) =>
        new(Guid.CreateVersion7(), Measurand.TotalAlkalinity, product, Noon + TimeSpan.FromHours(hour), cubicMetres, ratio, testU, strengthU);

    [Fact]
    public void Three_retests_worked_by_hand()
    {
        // Mean of 0.80, 0.85 and 0.90 is 0.85; u = 0.05/√3 = 0.02887, and their scatter is just that of their tests (Birge's ratio 1). 400/0.85 = 470.6; 400/(0.85 ± 0.05774) = 440.7 and 504.9.
        var volume = EffectiveVolume.Of([Sign(0.80), Sign(0.85), Sign(0.90)], 400);
        Assert.Equal((VolumeWord.More, 470.6, 440.7, 504.9), (volume.Word, Math.Round(volume.CubicMetres, 1), Math.Round(volume.Low, 1), Math.Round(volume.High, 1)));
        // A strength of the one product that is good to 3 % stays in all three: 2 x 0.03 x 0.85 = 0.051 beside 0.05774 makes 0.07704.
        var strength = EffectiveVolume.Of([Sign(0.80, strengthU: 0.03), Sign(0.85, strengthU: 0.03), Sign(0.90, strengthU: 0.03)], 400);
        Assert.Equal((470.6, 431.5, 517.5), (Math.Round(strength.CubicMetres, 1), Math.Round(strength.Low, 1), Math.Round(strength.High, 1)));
    }

    [Fact]
    public void What_was_predicted_for_another_volume_tells_of_the_same_water()
    {
        // 0.85 of what 400 m3 would show is 1.0625 of what 500 m3 would.
        var volume = EffectiveVolume.Of([Sign(0.85), Sign(0.85), Sign(1.0625, testU: 0.0625, cubicMetres: 500)], 400);
        Assert.Equal(470.6, volume.CubicMetres, 0.1);
        Assert.Equal(VolumeWord.Agrees, EffectiveVolume.Of([Sign(0.85), Sign(0.85), Sign(0.85)], 460).Word);
    }

    [Fact]
    public void One_bad_test_cannot_carry_it_off_and_is_named()
    {
        var volume = EffectiveVolume.Of([Sign(1.0), Sign(1.03), Sign(0.97), Sign(1.01), Sign(0.2)], 400);
        Assert.Equal(VolumeWord.Agrees, volume.Word);
        // The plain mean would say 475 m3.
        Assert.InRange(volume.CubicMetres, 395, 420);
        Assert.Equal([0.2], volume.Signs.Where(s => s.Apart).Select(s => s.Sign.Ratio));
        Assert.Equal(2000, volume.Signs.Single(s => s.Apart).CubicMetres, 1e-6);
    }

    [Fact]
    public void Too_few_say_nothing_a_small_difference_is_none_and_no_rise_at_all_has_no_upper_end()
    {
        Assert.Equal((VolumeWord.TooFew, 2), (EffectiveVolume.Of([Sign(0.5), Sign(0.5)], 400) is var few ? (few.Word, few.Signs.Length) : default));
        Assert.Equal(VolumeWord.Agrees, EffectiveVolume.Of([Sign(0.96, 0.001), Sign(0.96, 0.001), Sign(0.96, 0.001)], 400).Word);
        Assert.Equal(VolumeWord.Less, EffectiveVolume.Of([Sign(1.3), Sign(1.28), Sign(1.32)], 400).Word);
        Assert.Equal((VolumeWord.More, true), (EffectiveVolume.Of([Sign(0.02), Sign(0.05), Sign(-0.01)], 400) is var none ? (none.Word, double.IsPositiveInfinity(none.High)) : default));
        Assert.Throws<ArgumentOutOfRangeException>(() => EffectiveVolume.Of([], 0));
    }

    [Theory]
    [InlineData(3, 0)]
    [InlineData(5, 0)]
    [InlineData(8, 0)]
    // One test in six or so bad by five times its uncertainty: the interval is for good tests, and gives way by a few per cent.
    [InlineData(6, 1)]
    [InlineData(12, 1)]
    public void Its_interval_holds_the_true_water_about_nineteen_times_in_twenty(int signs, int bad)
    {
        const int Pools = 2000;
        var (random, held) = (new Random(20260302 + signs + (100 * bad)), 0);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        for (var pool = 0; pool < Pools; pool++)
        {
            var truth = 300 + (300 * random.NextDouble());
            double[] strengths = [1 + (0.03 * Normal()), 1 + (0.05 * Normal())];
            var made = Enumerable.Range(0, signs).Select(i =>
            {
                var u = 0.04 + (0.08 * random.NextDouble());
                var error = (Normal() + (i < bad ? 5 : 0)) * u;
                return Sign((400 / truth * strengths[i % 2]) + error, u, i % 2 == 0 ? 0.03 : 0.05, i % 2 == 0 ? "bicarbonate" : "calcium", hour: i);
            });
            var volume = EffectiveVolume.Of(made, 400);
            if (truth >= volume.Low && truth <= volume.High) held++;
        }

        Assert.InRange(held / (double)Pools, bad == 0 ? 0.94 : 0.90, 0.995);
    }

    [Fact]
    public void An_answered_prediction_is_a_sign_and_what_water_consumes_or_another_dose_moved_is_none()
    {
        var dose = new GivenDose
        {
            Id = Guid.CreateVersion7(), PoolId = "main", ProductId = "bicarbonate", Product = "Sodium bicarbonate", Kilograms = 13.4, GivenAt = Noon, By = "R. Example", PredictedFor = 400, StrengthUncertainty = 0.02,
            Predicted = [new(Measurand.TotalAlkalinity, 80, 3, 20, 1.1, Noon), new(Measurand.FreeChlorine, 1, 0.05, 1, 0.1, Noon), new(Measurand.CalciumHardness, 200, 5, 10, 1, Noon, Disturbed: true)],
        };
        // 80 to 97 where 100 was predicted: 17 of 20. Both tests 3 mg/L: √(9 + 9) / 20.
        var sign = VolumeSign.Of(dose, Noon, new(Measurand.TotalAlkalinity, 100, 97, Math.Sqrt(9 + 9 + (1.1 * 1.1)), ResponseWord.AsPredicted))!.Value;
        Assert.Equal((0.85, 0.212, 400.0, 0.02), (Math.Round(sign.Ratio, 9), Math.Round(sign.TestU, 3), sign.CubicMetres, sign.StrengthU));
        Assert.Null(VolumeSign.Of(dose, Noon, new(Measurand.FreeChlorine, 2, 1.4, 0.1, ResponseWord.Less)));
        Assert.Null(VolumeSign.Of(dose, Noon, new(Measurand.CalciumHardness, 210, 205, 7, ResponseWord.NotComparable)));
        Assert.Null(VolumeSign.Of(dose with { PredictedFor = null }, Noon, new(Measurand.TotalAlkalinity, 100, 97, 4, ResponseWord.AsPredicted)));
    }

    [Fact]
    public void It_is_said_with_what_to_do_and_what_it_rests_on()
    {
        string[] Codes(double ratio, string second, int chlorine = 0) => [.. EffectiveVolume.Of([Sign(ratio), Sign(ratio), Sign(ratio, product: second)], 400).Says(chlorine).Select(r => r.Code)];
        Assert.Equal(["volume.more", "volume.do_more", "volume.one_product", "volume.acid_eats_alkalinity", "volume.chlorine_left_out"], Codes(0.7, "bicarbonate", 4));
        Assert.Equal(["volume.less", "volume.do_less", "volume.several_products", "volume.acid_eats_alkalinity"], Codes(1.4, "calcium"));
        Assert.Equal(["volume.agrees", "volume.acid_eats_alkalinity"], Codes(1.0, "calcium"));
        Assert.Equal(["volume.too_few"], EffectiveVolume.Of([], 400).Says(0).Select(r => r.Code));
    }
}
