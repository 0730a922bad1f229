using PlantWatch.Core.Dosing;
using PlantWatch.Core.Dosing.Volume;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;

namespace PlantWatch.Server.Tests.Live;

/// <summary>The volume of the plant file against doses and retests of the record, as people read it.</summary>
public sealed class VolumeViewsTests
{
    private static readonly Instant Noon = Instant.From(new DateTimeOffset(2026, 3, 2, 12, 0, 0, TimeSpan.Zero));

    private static readonly CircuitPlan Circuit = new()
    {
        Id = "c", Name = "Circuit", TimeZone = "Europe/London", BalanceTankCubicMetres = 40, Pools = [new() { Id = "main", Name = "Main pool", VolumeCubicMetres = 360 }],
    };

    [Fact]
    public void More_water_than_stated_is_said_with_its_interval_and_every_retest_that_it_rests_on()
    {
        var doses = Enumerable.Range(0, 4).Select(i => Dose(i)).ToList();
        // The last was typed wrong and corrected: neither it nor its retest counts. Measured rises of 14, 15 and 16 where 20 was predicted.
        doses.Add(Dose(9) with { Corrects = doses[3].Id, CorrectionReason = "another product" });
        var answers = doses.Take(4).Select((d, i) => new DoseResponse(d.Id, Guid.CreateVersion7(), Noon + TimeSpan.FromDays(i), [
            new(Measurand.TotalAlkalinity, 100, i == 3 ? 82 : 94 + i, Math.Sqrt(2 + 1), ResponseWord.Less), new(Measurand.FreeChlorine, 2, 1.5, 0.1, ResponseWord.Less)]));
        var view = VolumeViews.Of(Circuit, doses, answers, UnitSystem.Metric);
        // 400 m3 by 15/20.
        Assert.Equal((VolumeWord.More, 400.0, 533.3), (view.Word, view.Stated.Value, Math.Round(view.Effective!.Value, 1)));
        Assert.True(view.Low!.Value > 400 && view.High!.Value < 800);
        Assert.Equal([2, 1, 0], view.Signs.Select(s => (s.At - Noon).TotalDays));
        Assert.Equal(["volume.more", "volume.do_more", "volume.one_product", "volume.acid_eats_alkalinity", "volume.chlorine_left_out"], view.Says.Select(s => s.Code));
        Assert.Contains("from 3 retests", view.Says[0].Text, StringComparison.Ordinal);
        Assert.Contains("the plant file says 400", view.Says[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_doses_it_says_how_many_it_takes() =>
        Assert.Equal((VolumeWord.TooFew, null, "volume.too_few"), VolumeViews.Of(Circuit, [], [], UnitSystem.Us) is var view ? (view.Word, view.Effective, view.Says[0].Code) : default);

    private static GivenDose Dose(int day) => new()
    {
        Id = Guid.CreateVersion7(), PoolId = "main", ProductId = "bicarbonate", Product = "Sodium bicarbonate", Kilograms = 13.4, GivenAt = Noon + TimeSpan.FromDays(day), By = "R. Example", PredictedFor = 400,
        StrengthUncertainty = 0.01, Predicted = [new(Measurand.TotalAlkalinity, 80, 1, 20, 1, Noon), new(Measurand.FreeChlorine, 1, 0.05, 1, 0.1, Noon)],
    };
}
