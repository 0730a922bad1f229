using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

public class SignalHealthTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 5, 4, 0);

    private readonly ProbePlan _probe = new() { Id = "p", Name = "pH", Measurand = Measurand.Ph, Topic = "t", Range = new(0, 14), Every = TimeSpan.FromSeconds(10) };
    private SignalHealth _health = SignalHealth.New;
    private Instant _at = Start;

    // A lively pH: a daily swing, and flicker in the second decimal.
    private static double Lively(Instant at)
    {
        var seconds = (at - Start).TotalSeconds;
        return Math.Round(7.4 + (0.1 * Math.Sin(seconds / 13_750)) + (0.008 * Math.Sin(seconds * 0.7)), 2);
    }

    private void Hear(TimeSpan span, Func<Instant, double> value, bool? flow = true)
    {
        for (var end = _at + span; _at < end; _at += _probe.Every) _health = SignalHealth.Next(_probe, _health, _at, value(_at), flow);
    }

    private void Is(Standing standing, string? code = null)
    {
        Assert.Equal(standing, _health.Standing);
        Assert.Equal(code, _health.Reasons is [{ } only] ? only.Code : null);
    }

    [Fact]
    public void A_probe_never_heard_is_unknown_and_stays_so_by_waiting()
    {
        Is(Standing.Unknown);
        Assert.Same(SignalHealth.New, SignalHealth.Wait(_probe, SignalHealth.New, Start));
    }

    [Fact]
    public void A_lively_signal_stays_good_for_days()
    {
        for (var hour = 0; hour < 72; hour++)
        {
            Hear(TimeSpan.FromHours(1), Lively);
            Is(Standing.Good);
        }
    }

    [Fact]
    public void A_signal_that_stops_moving_is_stuck()
    {
        Hear(TimeSpan.FromHours(6), Lively);
        Hear(TimeSpan.FromMinutes(100), _ => 7.41);
        Is(Standing.Good);
        Hear(TimeSpan.FromHours(1), _ => 7.41);
        Is(Standing.Failure, "signal.stuck");
        Hear(TimeSpan.FromMinutes(1), Lively);
        Is(Standing.Good);
    }

    [Fact]
    public void A_signal_that_always_was_quiet_is_not_called_stuck()
    {
        Hear(TimeSpan.FromHours(30), t => 7.4 + (0.01 * Math.Floor((t - Start).TotalMinutes / 50 % 2)));
        Hear(TimeSpan.FromHours(2.5), _ => 7.4);
        Is(Standing.Good);
    }

    [Fact]
    public void A_single_leap_is_doubted_and_turns_out_a_spike()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        Hear(_probe.Every, _ => 9.1);
        Assert.True(_health.LastDoubted);
        Is(Standing.Good);
        Hear(TimeSpan.FromMinutes(1), Lively);
        Assert.False(_health.LastDoubted);
        Is(Standing.Good);
    }

    [Fact]
    public void Spike_after_spike_asks_for_maintenance_and_fades_with_time()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        for (var i = 0; i < 5; i++)
        {
            Hear(_probe.Every, _ => 9.1);
            Hear(TimeSpan.FromMinutes(1), Lively);
        }

        Is(Standing.MaintenanceRequired, "signal.spikes");
        Hear(TimeSpan.FromHours(2), Lively);
        Is(Standing.Good);
    }

    [Theory, InlineData(0.6), InlineData(-0.15)]
    public void A_leap_that_stays_for_a_quarter_of_an_hour_is_known_with_its_time_and_size_and_shown_for_half_an_hour(double by)
    {
        Hear(TimeSpan.FromHours(1), Lively);
        var leapt = _at;
        Hear(TimeSpan.FromMinutes(14), t => Lively(t) + by);
        Is(Standing.Good);
        Assert.True(_health.LastDoubted);
        Hear(TimeSpan.FromMinutes(2), t => Lively(t) + by);
        Is(Standing.OutOfSpecification, "signal.leapt");
        Assert.Equal(leapt, _health.LeaptAt);
        Assert.Equal(by, _health.LeaptBy, 0.02);
        Assert.True(_health.BlindAt < leapt);
        Hear(TimeSpan.FromMinutes(40), t => Lively(t) + by);
        Is(Standing.Good);
    }

    [Fact]
    public void A_slug_of_dosing_water_that_passes_the_cell_is_neither_leap_nor_spike()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        for (var i = 0; i < 6; i++)
        {
            Hear(TimeSpan.FromMinutes(6), t => Lively(t) - 0.25);
            Hear(TimeSpan.FromMinutes(9), Lively);
        }

        Is(Standing.Good);
        Assert.False(_health.LeaptAt.IsSet);
        Assert.Equal(0, _health.Spikes);
    }

    [Fact]
    public void Acid_poured_into_the_pool_is_no_leap_however_much_it_is()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        var poured = _at;
        // Half a pH, mixing in with a time constant of 20 minutes, and a stroke of the pump on top.
        Hear(TimeSpan.FromHours(2), t => Lively(t) - (0.5 * (1 - Math.Exp(-(t - poured).TotalMinutes / 20))) - (t - poured > TimeSpan.FromMinutes(2) ? 0.03 : 0));
        Is(Standing.Good);
        Assert.False(_health.LeaptAt.IsSet);
    }

    [Fact]
    public void Blindness_ends_with_flushing_and_begins_anew_with_a_gap()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        Assert.Equal(Start, _health.BlindAt);
        Hear(TimeSpan.FromMinutes(30), Lively, flow: false);
        Hear(TimeSpan.FromMinutes(30), Lively);
        Assert.InRange((_at - _health.BlindAt).TotalMinutes, 14, 30);
        _at += TimeSpan.FromHours(3);
        var back = _at;
        Hear(TimeSpan.FromMinutes(30), Lively);
        Assert.Equal(back, _health.BlindAt);
    }

    [Fact]
    public void Broken_glass_leaps_to_ph_seven_and_sits_there()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        Hear(TimeSpan.FromMinutes(25), t => 7.02 + (0.01 * ((t - Start).TotalSeconds / 10 % 2)));
        Is(Standing.Failure, "signal.sits_at_seven");
        Hear(TimeSpan.FromMinutes(5), Lively);
        Assert.NotEqual(Standing.Failure, _health.Standing);
    }

    [Fact]
    public void A_pool_that_is_run_near_ph_seven_has_no_broken_glass()
    {
        Hear(TimeSpan.FromHours(12), t => Lively(t) - 0.38);
        Is(Standing.Good);
    }

    [Fact]
    public void Without_flow_the_function_is_checked_and_after_it_the_cell_is_flushed_first()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        Hear(TimeSpan.FromMinutes(30), t => 7.1, flow: false);
        Is(Standing.CheckFunction, "signal.no_flow");
        Hear(TimeSpan.FromMinutes(4), Lively);
        Is(Standing.CheckFunction, "signal.flushing");
        Hear(TimeSpan.FromMinutes(2), Lively);
        Is(Standing.Good);
    }

    [Fact]
    public void Water_that_arrives_after_a_standstill_is_no_leap()
    {
        Hear(TimeSpan.FromHours(1), Lively);
        Hear(TimeSpan.FromMinutes(30), _ => 6.6, flow: false);
        Hear(TimeSpan.FromMinutes(7), _ => 6.6);
        Hear(TimeSpan.FromMinutes(1), Lively);
        Is(Standing.Good);
        Assert.False(_health.LastDoubted);
    }

    [Fact]
    public void Over_a_gap_the_value_may_move_and_time_does_not_count_as_stuck()
    {
        Hear(TimeSpan.FromHours(6), Lively);
        _at += TimeSpan.FromHours(5);
        Hear(TimeSpan.FromMinutes(10), t => Lively(t) - 0.5);
        Is(Standing.Good);
    }

    [Fact]
    public void Silence_beyond_two_minutes_and_three_intervals_is_a_failure_until_it_speaks_again()
    {
        Hear(TimeSpan.FromMinutes(10), Lively);
        Assert.Same(_health, SignalHealth.Wait(_probe, _health, _at + TimeSpan.FromSeconds(100)));
        _health = SignalHealth.Wait(_probe, _health, _at + TimeSpan.FromMinutes(3));
        Is(Standing.Failure, "signal.silent");
        Assert.Same(_health, SignalHealth.Wait(_probe, _health, _at + TimeSpan.FromMinutes(9)));
        _at += TimeSpan.FromMinutes(9);
        Hear(TimeSpan.FromMinutes(1), Lively);
        Is(Standing.Good);
        var slow = _probe with { Every = TimeSpan.FromMinutes(5) };
        Assert.Same(_health, SignalHealth.Wait(slow, _health, _at + TimeSpan.FromMinutes(14)));
    }

    [Fact]
    public void What_is_not_newer_changes_nothing()
    {
        Hear(TimeSpan.FromMinutes(10), Lively);
        Assert.Same(_health, SignalHealth.Next(_probe, _health, _at - TimeSpan.FromMinutes(1), 9, true));
    }

    [Fact]
    public void A_clock_that_is_wrong_is_reported_and_a_late_delivery_is_not_a_wrong_clock()
    {
        SignalHealth With(double lag, int readings)
        {
            var heard = SignalHealth.New;
            for (var i = 0; i < readings; i++)
                heard = SignalHealth.Next(_probe, heard, Start + (_probe.Every * i), Lively(Start + (_probe.Every * i)), true, i == 0 && lag > 0 ? 0.2 : lag);
            return heard;
        }

        Assert.Equal("signal.clock_ahead", Assert.Single(With(-3600, 5).Reasons).Code);
        Assert.Equal(Standing.Good, With(3600, 5).Standing);
        Assert.Equal("signal.clock_behind", Assert.Single(With(3600, 300).Reasons).Code);
    }
}
