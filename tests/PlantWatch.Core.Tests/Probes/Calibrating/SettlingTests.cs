using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>When a reading in a buffer is taken: no more than 0.02 pH, or 1 mV, within a minute (common practice).</summary>
public sealed class SettlingTests
{
    private static readonly TimeSpan Ten = TimeSpan.FromSeconds(10);

    [Fact]
    public void A_reading_that_stands_for_a_minute_is_settled_on_its_mean()
    {
        var settled = Look(7.3, 7.1, 7.03, 7.01, 7.02, 7.01, 7.02, 7.01, 7.02);
        Assert.True(settled.IsSettled);
        Assert.Equal(7.0171, settled.Mean!.Value, 4);
    }

    [Fact]
    public void A_reading_that_still_creeps_is_not() => Assert.False(Look(7.00, 7.01, 7.02, 7.03, 7.04, 7.05, 7.06, 7.07).IsSettled);

    [Fact]
    public void Half_a_minute_is_too_short_however_still_it_stands()
    {
        var settled = Look(7.01, 7.01, 7.01, 7.01);
        Assert.Equal((false, 4, 30.0, 60.0), (settled.IsSettled, settled.Readings, settled.Seconds, settled.SecondsNeeded));
    }

    [Fact]
    public void What_was_read_before_the_window_is_forgotten() => Assert.True(Look([9, 8, .. Enumerable.Repeat(7.01, 8)]).IsSettled);

    [Fact]
    public void A_probe_that_reports_once_a_minute_needs_four_readings()
    {
        var minute = TimeSpan.FromMinutes(1);
        Assert.False(Settling.Of(Measurand.Ph, minute, Every(minute, 7, 7, 7)).IsSettled);
        Assert.True(Settling.Of(Measurand.Ph, minute, Every(minute, 7, 7, 7, 7)).IsSettled);
    }

    [Fact]
    public void Nothing_read_is_nothing_known() => Assert.Equal((false, null, 0), (Look().IsSettled, Look().Mean, Look().Readings));

    [Fact]
    public void An_orp_electrode_may_flicker_by_its_last_digit() => Assert.True(Settling.Of(Measurand.Orp, Ten, Every(Ten, 470, 471, 470, 471, 470, 471, 470)).IsSettled);

    private static Settled Look(params double[] raw) => Settling.Of(Measurand.Ph, Ten, Every(Ten, raw));

    private static (Instant, double)[] Every(TimeSpan step, params double[] raw) => [.. raw.Select((value, i) => (Sheets.Noon + (step * i), value))];
}
