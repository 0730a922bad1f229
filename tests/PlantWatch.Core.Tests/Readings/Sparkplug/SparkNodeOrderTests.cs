using CsCheck;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The order of messages and what a gap does: Sparkplug 3.0.0, chapter 5, Sparkplug Host Application Message Ordering.</summary>
public class SparkNodeOrderTests
{
    private readonly SparkEdge _edge = new();

    [Fact]
    public void Numbers_run_to_255_and_on_from_0()
    {
        var host = new SparkHost().Hears(_edge.Birth());
        for (var i = 0; i < 600; i++) host.Hears(_edge.Ph(i));
        Assert.Equal([SparkNoteKind.NodeOnline], host.Kinds);
        Assert.Equal(Enumerable.Range(0, 600).Select(i => (double)i), host.Readings.Where(r => r.Metric == "pH").Skip(1).Select(r => r.Value));
        Assert.Equal((601) % 256, host.State.Next);
    }

    [Fact]
    public void One_sequence_runs_over_the_node_and_its_devices()
    {
        var host = new SparkHost().Hears(_edge.Birth(), _edge.DeviceBirth(), _edge.Ph(7), _edge.Redox(1), _edge.DeviceBirth("other", 11), _edge.Redox(2), _edge.DeviceDeath("other"), _edge.Ph(8));
        Assert.DoesNotContain(SparkNoteKind.GapOpened, host.Kinds);
        Assert.Equal(8, host.State.Next);
    }

    [Fact]
    public void An_early_message_waits_and_is_read_in_its_turn()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth());
        SparkMessage first = _edge.Ph(1), second = _edge.Ph(2), third = _edge.Ph(3);
        host.Then().Hears(third).Waits(0.5).Hears(second);
        Assert.Equal([(SparkNoteKind.GapOpened, "1 3")], host.Notes.Select(n => (n.Kind, n.Detail)));
        Assert.Empty(host.Readings);
        host.Hears(first);
        Assert.Equal([1, 2, 3], host.Values);
        Assert.Equal([SparkNoteKind.GapOpened, SparkNoteKind.GapClosed], host.Kinds);
        Assert.True(host.Readings[0].ReceivedAt > host.Readings[2].ReceivedAt);
        // The wait is over: nothing comes of it later.
        host.Waits(60);
        Assert.Equal((2, 0), (host.Notes.Count, host.Rebirths));
    }

    [Fact]
    public void What_does_not_come_in_time_is_lost_everything_is_stale_and_a_rebirth_is_wanted()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth(), _edge.DeviceBirth());
        _edge.Ph(1);
        _edge.Ph(2);
        host.Then().Hears(_edge.Redox(3)).Waits(1.9);
        Assert.Equal((0, 0), (host.Readings.Count, host.Rebirths));
        host.Waits(0.1);
        Assert.Equal([(SparkNoteKind.GapOpened, "2 4"), (SparkNoteKind.MessagesLost, "2")], host.Notes.Select(n => (n.Kind, n.Detail)));
        Assert.Equal(1, host.Rebirths);
        Assert.True(host.State.IsStale("", "pH") && host.State.IsStale("", "Temperature") && host.State.IsStale("probe", "Redox"));
        Assert.Equal(5, host.State.Next);
    }

    [Fact]
    public void After_a_loss_a_name_is_certain_and_an_alias_is_not_until_the_next_birth()
    {
        var host = new SparkHost().Hears(_edge.Birth());
        _edge.Ph(1);
        host.Then().Hears(_edge.Ph(2)).Waits(2).Hears(_edge.Temperature(29), _edge.Ph(3));
        Assert.Equal([(2, Quality.Received | Quality.Suspect), (29, Quality.Received), (3, Quality.Received | Quality.Suspect)], host.Readings.Select(r => (r.Value, r.Quality)));
        Assert.False(host.State.IsStale("", "Temperature"));
        Assert.True(host.State.IsStale("", "pH"));
        host.Hears(_edge.Birth(7.2)).Then().Hears(_edge.Ph(4));
        Assert.Equal(Quality.Received, host.Readings[0].Quality);
        Assert.False(host.State.IsStale("", "pH"));
    }

    [Fact]
    public void The_timeout_can_be_set_and_nought_waits_for_nothing()
    {
        SparkHost Lost(double seconds)
        {
            var edge = new SparkEdge();
            var host = new SparkHost(new() { ReorderTimeout = TimeSpan.FromSeconds(seconds) }).Hears(edge.Birth());
            edge.Ph(1);
            return host.Hears(edge.Ph(2));
        }

        Assert.Contains(SparkNoteKind.MessagesLost, Lost(0).Kinds);
        Assert.DoesNotContain(SparkNoteKind.MessagesLost, Lost(10).Waits(9.9).Kinds);
        Assert.Contains(SparkNoteKind.MessagesLost, Lost(10).Waits(10).Kinds);
    }

    [Fact]
    public void A_message_that_comes_twice_is_refused_the_second_time()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth());
        SparkMessage first = _edge.Ph(1), second = _edge.Ph(2), third = _edge.Ph(3);
        host.Then().Hears(first, first, third, third, second, second, third).Waits(60);
        Assert.Equal([1, 2, 3], host.Values);
        Assert.Equal([SparkNoteKind.Repeated, SparkNoteKind.GapOpened, SparkNoteKind.Repeated, SparkNoteKind.GapClosed, SparkNoteKind.Repeated, SparkNoteKind.Repeated], host.Kinds);
        Assert.Equal(0, host.Rebirths);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(100)]
    [InlineData(200)]
    [InlineData(254)]
    public void A_loss_is_seen_however_many_messages_it_took(int lost)
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth());
        for (var i = 0; i < lost; i++) _edge.Ph(i);
        host.Hears(_edge.Ph(1)).Waits(3);
        Assert.Equal($"{lost}", host.Notes.Single(n => n.Kind == SparkNoteKind.MessagesLost).Detail);
    }

    [Fact]
    public void No_more_messages_wait_than_may()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth());
        _edge.Ph(0);
        for (var i = 0; i < SparkNodeState.MostHeld; i++) host.Hears(_edge.Temperature(i));
        Assert.Equal(SparkNodeState.MostHeld, host.State.Held.Length);
        host.Then().Hears(_edge.Temperature(100));
        Assert.Empty(host.State.Held);
        Assert.Equal(SparkNodeState.MostHeld + 1, host.Readings.Count);
        Assert.Contains(SparkNoteKind.MessagesLost, host.Kinds);
    }

    [Fact]
    public void A_message_without_a_number_has_no_place_in_the_order()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(SparkEdge.Of(SparkplugKind.NodeData, "", Payload(_edge.Clock, null, Nameless(Alias(1), F64(7)))), _edge.Ph(8));
        Assert.Equal([SparkNoteKind.WithoutSequence], host.Kinds);
        Assert.Equal([8], host.Values);
    }

    [Fact]
    public void What_was_sent_after_a_rebirth_and_overtook_it_is_read_by_the_new_birth()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth(), _edge.Ph(1), _edge.Ph(2));
        SparkMessage birth = _edge.Birth(7), device = _edge.DeviceBirth(), redox = _edge.Redox(700);
        host.Then().Hears(redox, device, birth).Waits(60);
        Assert.Equal([7, 28.5, 700, 700], host.Values);
        Assert.DoesNotContain(SparkNoteKind.MessagesLost, host.Kinds);
        Assert.Equal(0, host.Rebirths);
    }

    [Fact]
    public void A_lost_rebirth_is_seen_when_its_numbers_pass_the_one_that_is_due()
    {
        // Five are taken, the sixth is a birth that is lost, and the messages after it count from 1 again: the sixth of them has the number that is due.
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth(), _edge.Ph(1), _edge.Ph(2), _edge.Ph(3), _edge.Ph(4));
        _edge.Birth();
        host.Then();
        for (var i = 1; i <= 6; i++) host.Hears(_edge.Ph(i));
        Assert.Contains(SparkNoteKind.MessagesLost, host.Kinds);
        Assert.Equal([1, 2, 3, 4, 5, 6], host.Values);
        Assert.All(host.Readings, r => Assert.False(r.Quality.IsGood()));
        Assert.Equal((7, 1), ((int)host.State.Next, host.Rebirths));
    }

    [Fact]
    public void A_rebirth_is_only_asked_for_where_it_is_allowed()
    {
        var host = new SparkHost(new() { MayAskForRebirth = false }).Hears(_edge.Ph(1), _edge.Birth());
        _edge.Ph(2);
        host.Hears(_edge.Ph(3), _edge.Data(Nameless(Alias(77), F64(1)))).Waits(3).Waits(3600);
        Assert.Equal(0, host.Rebirths);
        Assert.False(new SparkRules().MayAskForRebirth);
    }

    [Fact]
    public void A_rebirth_is_asked_for_no_more_often_than_it_may_and_again_until_it_is_answered()
    {
        var host = new SparkHost(SparkHost.Asking with { RebirthEvery = TimeSpan.FromMinutes(5) });
        for (var i = 0; i < 1000; i++) host.Hears(_edge.Ph(i));
        Assert.Equal(1, host.Rebirths);
        host.Hears(_edge.Birth());
        _edge.Ph(0);
        host.Hears(_edge.Ph(1)).Waits(2).Waits(280);
        Assert.Equal(1, host.Rebirths);
        host.Waits(10).Waits(10).Waits(10).Waits(300);
        Assert.Equal(3, host.Rebirths);
        host.Hears(_edge.Birth()).Waits(3600);
        Assert.Equal(3, host.Rebirths);
    }

    [Fact]
    public void A_clock_that_is_set_back_does_not_silence_the_request()
    {
        var rules = SparkHost.Asking;
        var state = SparkNode.Step(SparkNodeState.Of(SparkEdge.Group, SparkEdge.Node), _edge.Ph(1), Start, rules).Next;
        Assert.Null(SparkNode.Step(state, _edge.Ph(2), Start + TimeSpan.FromSeconds(59), rules).Rebirth);
        Assert.NotNull(SparkNode.Step(state, _edge.Ph(2), Start - TimeSpan.FromDays(3650), rules).Rebirth);
    }

    // Each message may be overtaken by up to eight that were sent after it, within the timeout.
    [Fact]
    public void Any_reordering_within_the_window_gives_the_same_readings() =>
        Gen.Select(Gen.Int[0, 4].Array[1, 400], Gen.Int[0, 8].Array[400]).Sample(
            (kinds, delays) =>
            {
                var edge = new SparkEdge();
                List<SparkMessage> sent = [edge.Birth(), edge.DeviceBirth()];
                foreach (var (kind, i) in kinds.Select((k, i) => (k, i)))
                    sent.Add(kind switch { 0 => edge.Ph(i), 1 => edge.Temperature(i), 2 => edge.Redox(i), 3 => edge.DeviceBirth("other", 11), _ => edge.Says(SparkplugKind.NodeData, "") });
                var arrived = sent.Take(1).Concat(sent.Skip(1).Select((m, i) => (m, Place: i + (i < delays.Length ? delays[i] : 0))).OrderBy(x => x.Place).Select(x => x.m)).ToArray();
                var (ordered, mixed) = (new SparkHost(SparkHost.Asking).Hears([.. sent]), new SparkHost(SparkHost.Asking).Hears(arrived));
                Assert.Equal(Said(ordered), Said(mixed));
                Assert.Equal((0, 0), (mixed.Rebirths, mixed.State.Held.Length));
                Assert.Equal(ordered.State.Next, mixed.State.Next);
            },
            iter: 300);

    private static IEnumerable<object> Said(SparkHost host) => host.Readings.Select(r => (object)(r.Device, r.Metric, r.MeasuredAt, r.Value, r.Quality));

    // What no host can see: a loss straight before a birth, which begins the numbers anew, and one that ends where the next number happens to be the one that is due.
    [Fact]
    public void Any_other_run_of_losses_is_seen_and_no_value_is_read_as_good_under_another_name() =>
        Gen.Select(Gen.Int[0, 100], Gen.Int[0, 100], Gen.Int[1, 15]).Sample(
            (rebirth, from, count) =>
            {
                var edge = new SparkEdge();
                List<(int Number, SparkMessage Message)> sent = [];
                var birth = Born(edge, pH: 1, redox: 2);
                for (var i = 0; i < 120; i++)
                {
                    // The aliases change places at the rebirth.
                    var (ph, redox) = i > rebirth ? (2UL, 1UL) : (1, 2);
                    var message = i == rebirth ? Born(edge, pH: 2, redox: 1) : edge.Data(Nameless(Alias(ph), F64(7)), Nameless(Alias(redox), F64(700)));
                    sent.Add((message.Payload.Sequence!.Value, message));
                }

                var host = new SparkHost().Hears(birth).Hears([.. sent.Where((_, i) => i < from || i >= from + count).Select(s => s.Message)]).Waits(5);
                var due = from == 0 ? 1 : sent[from - 1].Number + 1;
                if (from + count == rebirth || sent[from + count].Number == due) return;
                Assert.Contains(SparkNoteKind.MessagesLost, host.Kinds);
                Assert.All(host.Readings.Where(r => r.Quality.IsGood()), r => Assert.Equal(r.Metric == "pH" ? 7 : 700, r.Value));
            },
            iter: 3000);

    private static SparkMessage Born(SparkEdge edge, ulong pH, ulong redox)
    {
        edge.Sequence = 0;
        return edge.Says(SparkplugKind.NodeBirth, "", Named("bdSeq", I64(0)), Named("pH", Alias(pH), Typed(SparkplugType.Double), F64(7)), Named("Redox", Alias(redox), Typed(SparkplugType.Double), F64(700)));
    }
}
