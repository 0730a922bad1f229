using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Deaths: Sparkplug 3.0.0, chapter 5, the terminations of edge node and device sessions.</summary>
public class SparkNodeDeathTests
{
    private readonly SparkEdge _edge = new();

    private SparkHost Alive() => new SparkHost(SparkHost.Asking).Hears(_edge.Birth(), _edge.DeviceBirth()).Then();

    [Fact]
    public void A_death_marks_the_node_offline_by_our_clock()
    {
        var host = Alive().Hears(_edge.Death());
        Assert.Equal((SparkLife.Offline, host.Now), (host.State.Life, host.State.Since));
        Assert.Equal((SparkNoteKind.NodeOffline, host.Now, "0"), host.Notes.Where(n => n.Kind == SparkNoteKind.NodeOffline).Select(n => (n.Kind, n.At, n.Detail)).Single());
    }

    [Fact]
    public void A_death_makes_all_metrics_of_the_node_stale_by_our_clock()
    {
        var host = Alive().Hears(_edge.Death());
        Assert.All(host.State.Devices[""].Metrics.Where(m => m.Key is "pH" or "Temperature"), m => Assert.Equal(host.Now, m.Value.StaleSince));
        Assert.True(host.State.IsStale("", "pH"));
    }

    [Fact]
    public void A_death_marks_all_devices_of_the_node_offline_by_our_clock()
    {
        var host = Alive().Hears(_edge.Death());
        Assert.Equal((false, host.Now), (host.State.Devices["probe"].IsOnline, host.State.Devices["probe"].Since));
        Assert.Contains((SparkNoteKind.DeviceOffline, "probe", host.Now), host.Notes.Select(n => (n.Kind, n.Device, n.At)));
    }

    [Fact]
    public void A_death_makes_all_metrics_of_its_devices_stale_by_our_clock()
    {
        var host = Alive().Hears(_edge.Death());
        Assert.Equal(host.Now, host.State.Devices["probe"].Metrics["Redox"].StaleSince);
    }

    [Fact]
    public void The_late_death_of_an_older_session_is_ignored()
    {
        var late = _edge.Death();
        _edge.Session = 1;
        var host = Alive().Hears(late, _edge.Ph(7.3));
        Assert.Equal([(SparkNoteKind.DeathIgnored, "0")], host.Notes.Select(n => (n.Kind, n.Detail)));
        Assert.Equal([7.3], host.Values);
        Assert.Equal(SparkLife.Online, host.State.Life);
    }

    [Fact]
    public void A_death_that_is_said_twice_is_ignored_the_second_time()
    {
        // On purpose before leaving, and then by the broker.
        var host = Alive().Hears(_edge.Death());
        var since = host.State.Since;
        host.Then().Hears(_edge.Death());
        Assert.Equal([SparkNoteKind.DeathIgnored], host.Kinds);
        Assert.Equal(since, host.State.Since);
    }

    [Fact]
    public void A_rebirth_keeps_its_session_and_its_death_still_counts()
    {
        _edge.Session = 255;
        var host = new SparkHost().Hears(_edge.Birth(), _edge.Birth(7.3), _edge.Death());
        Assert.Equal(SparkLife.Offline, host.State.Life);
    }

    [Fact]
    public void A_death_or_birth_without_its_session_is_taken_for_this_one()
    {
        var host = Alive().Hears(SparkEdge.Of(SparkplugKind.NodeDeath, "", Payload(Start, null)));
        Assert.Equal(SparkLife.Offline, host.State.Life);
        host = new SparkHost().Hears(SparkEdge.Of(SparkplugKind.NodeBirth, "", Payload(Start, 0)), _edge.Death());
        Assert.Equal(SparkLife.Offline, host.State.Life);
    }

    [Fact]
    public void After_a_death_data_is_refused_until_the_next_birth()
    {
        var host = Alive().Hears(_edge.Death()).Then().Hears(_edge.Ph(7.3));
        Assert.Equal([SparkNoteKind.BeforeBirth], host.Kinds);
        Assert.Equal(1, host.Rebirths);
        _edge.Session++;
        host.Then().Hears(_edge.Birth(7.4));
        Assert.Equal([7.4, 28.5], host.Values);
        Assert.Equal((SparkLife.Online, 1UL), (host.State.Life, host.State.BirthNumber!.Value));
        Assert.True(host.State.IsStale("probe", "Redox"));
        Assert.False(host.State.IsStale("", "pH"));
    }

    [Fact]
    public void The_death_of_a_node_that_was_never_born_leaves_it_offline() => Assert.Equal(SparkLife.Offline, new SparkHost().Hears(_edge.Death()).State.Life);

    [Fact]
    public void What_waited_when_the_node_died_is_read_before_it_is_stale()
    {
        var host = Alive();
        _edge.Ph(1);
        host.Hears(_edge.Temperature(27), _edge.Death());
        Assert.Equal([27], host.Values);
        Assert.Equal([SparkNoteKind.GapOpened, SparkNoteKind.MessagesLost, SparkNoteKind.DeviceOffline, SparkNoteKind.NodeOffline], host.Kinds);
        Assert.True(host.State.IsStale("", "Temperature"));
        Assert.Equal(0, host.Waits(3600).Rebirths);
    }

    [Fact]
    public void The_death_of_a_device_marks_it_offline_by_its_payload()
    {
        var host = Alive().Hears(_edge.DeviceDeath());
        Assert.Equal((false, _edge.Clock), (host.State.Devices["probe"].IsOnline, host.State.Devices["probe"].Since));
        Assert.Equal([(SparkNoteKind.DeviceOffline, "probe", _edge.Clock)], host.Notes.Select(n => (n.Kind, n.Device, n.At)));
        Assert.NotEqual(host.Now, _edge.Clock);
    }

    [Fact]
    public void The_death_of_a_device_makes_its_metrics_stale_by_its_payload_and_no_others()
    {
        var host = Alive().Hears(_edge.DeviceDeath());
        Assert.Equal(_edge.Clock, host.State.Devices["probe"].Metrics["Redox"].StaleSince);
        Assert.False(host.State.IsStale("", "pH"));
        host.Then().Hears(_edge.Redox(1), _edge.DeviceDeath());
        Assert.Equal([SparkNoteKind.DeviceBeforeBirth, SparkNoteKind.DeviceBeforeBirth], host.Kinds);
        host.Then().Hears(_edge.DeviceBirth());
        Assert.Equal([700], host.Values);
        Assert.False(host.State.IsStale("probe", "Redox"));
    }
}
