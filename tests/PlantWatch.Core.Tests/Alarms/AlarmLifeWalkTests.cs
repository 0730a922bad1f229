using System.Text.Json;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>An alarm walks at random beside the standard's own telling of it, a step of either kind at a time, and the letters never differ.</summary>
public sealed class AlarmLifeWalkTests
{
    private const int Steps = 1_000_000;
    private static readonly Instant Start = Instant.FromUtc(2026, 5, 5, 6);
    private static readonly Reason Cause = Reason.Of("limit.below");
    private static readonly Reason Dry = Reason.Of("suppressed.drained", "Main pool");

    [Theory, InlineData(false, 1), InlineData(true, 2)]
    public void A_million_random_steps_agree_with_the_figure_of_the_standard(bool latches, int seed)
    {
        var (walk, met) = (new Walk(latches, seed), new HashSet<char>());
        for (var i = 0; i < Steps / 2; i++)
        {
            walk.Step();
            Assert.Equal(walk.Plain.Letter, Letters[walk.Alarm.State]);
            Assert.Equal(walk.Plain.ReAlarms, walk.Alarm.ReAlarms);
            met.Add(walk.Plain.Letter);
        }

        // A walk that never comes somewhere says nothing about it.
        Assert.Equal(latches ? "ABCEFGHI" : "ABCDGHI", string.Concat(met.Order()));
        Assert.True(walk.ReAlarmsMet > 50, $"only {walk.ReAlarmsMet} re-alarms met");
    }

    [Theory, InlineData(false, 3), InlineData(true, 4)]
    public void With_a_restart_at_every_step_nothing_is_lost(bool latches, int seed)
    {
        var walk = new Walk(latches, seed);
        for (var i = 0; i < 50_000; i++)
        {
            walk.Step();
            var read = JsonSerializer.Deserialize<AlarmRecord>(JsonSerializer.SerializeToUtf8Bytes(walk.Alarm, PlantJson.Options), PlantJson.Options)!;
            Assert.Equal(walk.Alarm, read);
            walk.Alarm = read;
            Assert.Equal(walk.Plain.Letter, Letters[walk.Alarm.State]);
        }
    }

    [Theory, InlineData(5), InlineData(6)]
    public void A_memory_that_lost_what_hides_an_alarm_shows_it(int seed)
    {
        // OPC 10000-9, 5.8.17.1: where shelving cannot be recovered the alarm is unshelved.
        var walk = new Walk(latches: false, seed);
        for (var i = 0; i < 20_000; i++)
        {
            walk.Step();
            var json = JsonSerializer.SerializeToNode(walk.Alarm, PlantJson.Options)!.AsObject();
            foreach (var key in new[] { "shelvedUntil", "suppressed", "outOfService" }) json.Remove(key);
            var shown = json.Deserialize<AlarmRecord>(PlantJson.Options)!.State;
            Assert.Equal(walk.Alarm.Active ? walk.Alarm.IsAcknowledged ? AlarmState.Acknowledged : AlarmState.Unacknowledged : walk.Alarm.IsAcknowledged ? AlarmState.Normal : AlarmState.ReturnedUnacknowledged, shown);
        }
    }

    [Fact]
    public void A_shelf_that_no_shelving_can_have_set_is_ended()
    {
        var alarm = AlarmLife.Shelve(Fresh(false) with { Active = true }, Start + AlarmLife.LongestShelf + TimeSpan.FromMinutes(1), "J. Sample", "broken", oneShot: false);
        var (next, change) = AlarmLife.Wait(alarm, RuleBook.BelowLimit, Start);
        Assert.Equal((AlarmState.Unacknowledged, AlarmChange.Unshelved), (next.State, change));
    }

    private static AlarmRecord Fresh(bool latches) => new() { Key = "R-010/x", Rule = "R-010", Subject = "x", Priority = Priority.Medium, Cause = Cause, Latches = latches };

    private static readonly Dictionary<AlarmState, char> Letters = new()
    {
        [AlarmState.Normal] = 'A', [AlarmState.Unacknowledged] = 'B', [AlarmState.Acknowledged] = 'C', [AlarmState.ReturnedUnacknowledged] = 'D',
        [AlarmState.LatchedUnacknowledged] = 'E', [AlarmState.LatchedAcknowledged] = 'F', [AlarmState.Shelved] = 'G', [AlarmState.SuppressedByDesign] = 'H',
        [AlarmState.OutOfService] = 'I',
    };

    /// <summary>Both tellings, moved together. Conditions and time outweigh people, who are asked only for what the table of requests allows.</summary>
    private sealed class Walk(bool latches, int seed)
    {
        // Short delays and a short re-alarm, so that each is met half way, to the second, and after it.
        private static readonly TimeSpan Delay = TimeSpan.FromSeconds(60);
        private readonly Rule _rule = new("R-010", Priority.Medium, Delay, Delay, ClearsByReading: true, Latches: latches) { ReAlarmAfter = TimeSpan.FromMinutes(20) };
        private readonly Random _random = new(seed);
        private double _now;

        public StandardAlarm Plain { get; } = new(60, 60, latches, 1200, AlarmLife.LongestShelf.TotalSeconds);
        public AlarmRecord Alarm { get; set; } = Fresh(latches);
        public int ReAlarmsMet { get; private set; }

        private Instant At => Start + TimeSpan.FromSeconds(_now);

        public void Step()
        {
            _now += _random.Next(20) == 0 ? 900 : _random.Next(1, 50);
            switch (_random.Next(32))
            {
                case < 5: Look(false); break;
                case < 14: Look(true); break;
                case < 22: Wait(); break;
                case 22 or 23: Alarm = Alarm.IsAcknowledged ? Alarm : AlarmLife.Acknowledge(Alarm, At, "J. Sample", "seen"); Plain.Acknowledge(_now); break;
                case 24: Shelve(_random.Next(3)); break;
                case 25: if (Plain.IsShelved) { Alarm = AlarmLife.OffShelf(Alarm, At); Plain.Unshelve(_now); } break;
                case 26: Alarm = AlarmLife.Suppress(Alarm, Dry); Plain.Suppress(); break;
                case 27 or 28: if (Alarm.Suppressed) Alarm = AlarmLife.Release(Alarm, At); Plain.Release(_now); break;
                case 29: TakeOut(_random.Next(2) == 0 ? null : _now + _random.Next(30, 2000)); break;
                case 30: if (Alarm.OutOfService) Alarm = AlarmLife.Return(Alarm, At); Plain.Return(_now); break;
                default: Reset(); break;
            }

            Assert.Equal(Plain.IsForgotten, AlarmLife.IsOver(Alarm));
            // As on the desk: what is over is thrown away, and asked anew whether design suppresses it when there is something to suppress.
            if (AlarmLife.IsOver(Alarm)) Alarm = Fresh(latches) with { Suppressed = Alarm.Suppressed, SuppressedBy = Alarm.SuppressedBy, ReAlarms = Alarm.ReAlarms };
            if (Alarm.Suppressed && AlarmLife.IsOver(Alarm)) { Alarm = AlarmLife.Release(Alarm, At); Plain.Release(_now); }
        }

        private void Look(bool holds)
        {
            (Alarm, _) = AlarmLife.Look(Alarm, _rule, holds, At);
            Plain.Condition(_now, holds);
        }

        private void Wait()
        {
            (Alarm, var change) = AlarmLife.Wait(Alarm, _rule, At);
            if (change == AlarmChange.ReAlarmed) ReAlarmsMet++;
            Plain.Time(_now);
        }

        private void TakeOut(double? until)
        {
            Alarm = AlarmLife.TakeOut(Alarm, At, until is { } end ? Start + TimeSpan.FromSeconds(end) : Instant.Never, "M. Invented", "rebuilt");
            Plain.TakeOut(until);
        }

        private void Shelve(int kind)
        {
            var until = _now + (kind == 0 ? 30_000 : _random.Next(30, 2000));
            var no = AlarmRequests.ToShelve(_rule, At, Start + TimeSpan.FromSeconds(until), "work on it");
            Assert.Equal(Plain.Shelve(_now, until, kind == 1), no is null);
            if (no is null) Alarm = AlarmLife.Shelve(Alarm, Start + TimeSpan.FromSeconds(until), "J. Sample", "work on it", kind == 1);
        }

        private void Reset()
        {
            var no = AlarmRequests.ToReset(Alarm);
            Assert.Equal(Plain.Reset(), no is null);
            if (no is null) Alarm = AlarmLife.Reset(Alarm);
        }
    }
}
