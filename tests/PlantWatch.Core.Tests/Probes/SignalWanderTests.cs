using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes;

public class SignalWanderTests
{
    private static readonly TimeSpan Day = TimeSpan.FromDays(1), Hour = TimeSpan.FromHours(1);

    private static string? Code(SignalHealth health) => health.Reasons is [{ } only] ? only.Code : null;

    [Theory, InlineData(1, Measurand.Ph), InlineData(2, Measurand.Ph), InlineData(3, Measurand.Orp), InlineData(4, Measurand.Orp)]
    public void A_probe_that_follows_the_water_is_good_at_every_reading_of_a_month(int seed, Measurand measurand)
    {
        var water = new SignalWater(seed, measurand);
        water.Pass(30 * Day, w => w, look: health => Assert.Null(Code(health)));
        Assert.False(water.Health.LeaptAt.IsSet);
        Assert.False(water.Health.Response.IsKnown);
    }

    [Theory, InlineData(11), InlineData(12), InlineData(13)]
    public void A_probe_held_at_one_value_with_only_a_flicker_is_found_within_some_hours(int seed)
    {
        var water = new SignalWater(seed);
        water.Pass(12 * Day, w => w);
        var (noise, held) = (water.Noise, 7.43);
        water.Noise = 0.003;
        water.Pass(Hour, _ => held);
        Assert.Null(Code(water.Health));
        water.Pass(5 * Hour, _ => held);
        Assert.Equal((Standing.OutOfSpecification, "signal.barely_moves"), (water.Health.Standing, Code(water.Health)));
        water.Pass(3 * Day, _ => held, look: health => Assert.Equal("signal.barely_moves", Code(health)));
        water.Noise = noise;
        water.Pass(3 * Hour, w => w);
        Assert.NotEqual("signal.barely_moves", Code(water.Health));
    }

    [Fact]
    public void A_probe_that_stopped_is_found_again_after_its_repair()
    {
        var water = new SignalWater(14);
        water.Pass(12 * Day, w => w);
        for (var again = 0; again < 2; again++)
        {
            water.Noise = 0.003;
            water.Pass(6 * Hour, _ => 7.43 + (again * 0.05));
            Assert.Equal("signal.barely_moves", Code(water.Health));
            water.Noise = 0.006;
            water.Pass(2 * Day, w => w);
            Assert.Null(Code(water.Health));
        }
    }

    [Fact]
    public void Nights_as_quiet_as_they_always_were_are_no_standstill()
    {
        var water = new SignalWater(15) { Nights = 0.03 };
        water.Pass(21 * Day, w => w, look: health => Assert.Null(Code(health)));
    }

    [Fact]
    public void Broken_glass_off_seven_by_its_offset_is_known_by_leaping_there_and_hardly_moving()
    {
        var water = new SignalWater(16);
        water.Pass(12 * Day, w => w);
        water.Pass(2 * Hour, w => 7.16 + (0.1 * (w - 7)));
        Assert.NotEqual(Standing.Failure, water.Health.Standing);
        water.Pass(Hour, w => 7.16 + (0.1 * (w - 7)));
        Assert.Equal((Standing.Failure, "signal.sits_at_seven"), (water.Health.Standing, Code(water.Health)));
        water.Pass(30 * Hour, w => 7.16 + (0.1 * (w - 7)), look: health => Assert.Equal("signal.sits_at_seven", Code(health)));
    }

    [Fact]
    public void Broken_glass_is_not_believed_again_for_having_lain_still_for_a_week()
    {
        var water = new SignalWater(22);
        water.Pass(12 * Day, w => w);
        water.Noise = 0.003;
        water.Pass(3 * Hour, _ => 7.0);
        water.Pass(8 * Day, _ => 7.0, look: health => Assert.Equal("signal.sits_at_seven", Code(health)));
    }

    [Fact]
    public void A_leap_is_not_taken_for_liveliness_of_the_water()
    {
        var water = new SignalWater(23);
        water.Pass(12 * Day, w => w);
        water.Pass(6 * Hour, w => w + 0.6, look: health => Assert.InRange(health.Wander.Lively, 0, 20 * health.Wander.Hours.Usual));
        Assert.True(water.Health.LeaptAt.IsSet);
    }

    [Fact]
    public void A_probe_that_leapt_to_seven_and_follows_the_water_there_has_whole_glass()
    {
        var water = new SignalWater(17);
        water.Pass(12 * Day, w => w);
        water.Pass(6 * Hour, w => w - 0.4);
        Assert.Null(Code(water.Health));
        Assert.Equal(-0.4, water.Health.LeaptBy, 0.03);
    }

    [Theory, InlineData(21, 35), InlineData(22, 60), InlineData(23, 120), InlineData(24, 170)]
    public void A_slow_probe_is_found_with_its_time_constant(int seed, double minutes)
    {
        var water = new SignalWater(seed);
        water.Pass(14 * Day, w => w);
        water.Pass(7 * Day, SignalWater.Slow(minutes));
        Assert.Equal((Standing.MaintenanceRequired, "signal.slow"), (water.Health.Standing, Code(water.Health)));
        Assert.InRange(water.Health.Response.Value, minutes / 1.5, minutes * 1.5);
        Assert.InRange(minutes, water.Health.Response.Value - water.Health.Response.Expanded, water.Health.Response.Value + water.Health.Response.Expanded);
        water.Pass(3 * Day, w => w);
        Assert.Null(Code(water.Health));
        Assert.False(water.Health.Response.IsKnown);
    }

    [Fact]
    public void A_slow_probe_is_not_called_slow_when_it_always_was()
    {
        var water = new SignalWater(25);
        water.Pass(30 * Day, SignalWater.Slow(60), look: health => Assert.Null(Code(health)));
    }

    [Fact]
    public void A_signal_that_scatters_six_times_as_much_as_it_used_to_asks_for_maintenance_until_it_is_quiet_again()
    {
        var water = new SignalWater(31);
        water.Pass(5 * Day, w => w);
        water.Noise = 0.036;
        water.Pass(3 * Hour, w => w);
        Assert.Equal((Standing.MaintenanceRequired, "signal.noisy"), (water.Health.Standing, Code(water.Health)));
        water.Pass(2 * Day, w => w, look: health => Assert.Equal("signal.noisy", Code(health)));
        water.Noise = 0.006;
        water.Pass(8 * Hour, w => w);
        Assert.Null(Code(water.Health));
    }

    [Fact]
    public void A_signal_that_always_was_noisy_is_not_called_noisy()
    {
        var water = new SignalWater(32) { Noise = 0.022 };
        water.Pass(10 * Day, w => w, look: health => Assert.Null(Code(health)));
    }

    [Fact]
    public void Broken_glass_is_not_called_slow()
    {
        var water = new SignalWater(33);
        water.Pass(14 * Day, w => w);
        water.Pass(10 * Day, w => 7.02 + (0.1 * (w - 7)), look: health => Assert.False(health.Response.IsKnown));
    }

    [Fact]
    public void Health_is_the_same_after_it_was_written_and_read_and_goes_on_the_same()
    {
        var (live, restored) = (new SignalWater(26), new SignalWater(26));
        live.Pass(9 * Day, w => w);
        restored.Pass(9 * Day, w => w);
        restored.Pass(TimeSpan.FromMinutes(30), w => w, flow: false);
        live.Pass(TimeSpan.FromMinutes(30), w => w, flow: false);
        restored.Health = JsonSerializer.Deserialize<SignalHealth>(JsonSerializer.Serialize(restored.Health, PlantJson.Options), PlantJson.Options)!;
        live.Pass(2 * Day, SignalWater.Slow(100));
        restored.Pass(2 * Day, SignalWater.Slow(100));
        Assert.Equal(JsonSerializer.Serialize(live.Health, PlantJson.Options), JsonSerializer.Serialize(restored.Health, PlantJson.Options));
    }
}
