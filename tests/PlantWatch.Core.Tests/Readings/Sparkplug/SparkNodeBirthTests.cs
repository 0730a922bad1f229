using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Births and values: Sparkplug 3.0.0, chapters 5 and 6.</summary>
public class SparkNodeBirthTests
{
    private readonly SparkEdge _edge = new();

    [Fact]
    public void A_birth_brings_the_node_online_with_its_values()
    {
        var host = new SparkHost().Hears(_edge.Birth());
        Assert.Equal((SparkLife.Online, 0UL, (byte)1), (host.State.Life, host.State.BirthNumber!.Value, host.State.Next));
        Assert.Equal([("pH", 7.2), ("Temperature", 28.5)], host.Readings.Select(r => (r.Metric, r.Value)));
        Assert.Equal([SparkNoteKind.NodeOnline], host.Kinds);
        Assert.False(host.State.IsStale("", "pH"));
        Assert.True(host.State.IsStale("", "nothing of the kind"));
    }

    [Fact]
    public void A_value_by_alias_is_read_by_the_name_and_type_of_the_birth()
    {
        var host = new SparkHost().Hears(_edge.Birth(), _edge.DeviceBirth()).Then().Hears(_edge.Ph(7.3), _edge.Temperature(28.25f), _edge.Redox(-5));
        Assert.Equal([("", "pH", 7.3), ("", "Temperature", 28.25), ("probe", "Redox", -5)], host.Readings.Select(r => (r.Device, r.Metric, r.Value)));
        Assert.All(host.Readings, r => Assert.Equal(Quality.Received, r.Quality));
        Assert.Empty(host.Notes);
    }

    [Theory]
    [InlineData(SparkplugKind.NodeData)]
    [InlineData(SparkplugKind.DeviceData)]
    [InlineData(SparkplugKind.DeviceBirth)]
    [InlineData(SparkplugKind.DeviceDeath)]
    public void What_comes_before_the_birth_is_refused_by_name_and_a_rebirth_is_wanted(SparkplugKind kind)
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Says(kind, kind == SparkplugKind.NodeData ? "" : "probe", Named("pH", Typed(SparkplugType.Double), F64(7))));
        Assert.Equal([(SparkNoteKind.BeforeBirth, $"{kind}")], host.Notes.Select(n => (n.Kind, n.Detail)));
        Assert.Empty(host.Readings);
        Assert.Equal((SparkLife.Unborn, 1), (host.State.Life, host.Rebirths));
    }

    [Fact]
    public void Data_of_a_device_that_was_not_born_is_refused_by_name_and_a_rebirth_is_wanted()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth()).Then().Hears(_edge.Redox(700));
        Assert.Equal([SparkNoteKind.DeviceBeforeBirth], host.Kinds);
        Assert.Equal(1, host.Rebirths);
        Assert.Empty(host.Readings);
    }

    [Fact]
    public void A_name_or_alias_that_no_birth_gave_is_refused_by_name_and_a_rebirth_is_wanted()
    {
        var host = new SparkHost(SparkHost.Asking).Hears(_edge.Birth(), _edge.DeviceBirth()).Then().Hears(_edge.Data(Named("ph", F64(7)), Nameless(Alias(10), F64(7)), Nameless(Alias(99), F64(7)), Nameless(F64(7)), Nameless(Alias(1), F64(7.4))));
        Assert.Equal([(SparkNoteKind.UnknownName, "ph"), (SparkNoteKind.UnknownAlias, "10"), (SparkNoteKind.UnknownAlias, "99"), (SparkNoteKind.WithoutName, "")], host.Notes.Select(n => (n.Kind, n.Detail)));
        Assert.Equal([7.4], host.Values);
        Assert.Equal(1, host.Rebirths);
    }

    // tck-id-payloads-alias-uniqueness
    [Fact]
    public void An_alias_that_two_metrics_claim_stands_for_neither()
    {
        var host = new SparkHost().Hears(_edge.Birth(), _edge.DeviceBirth(alias: 1)).Then().Hears(_edge.Ph(7.3), _edge.Redox(700, alias: 1), _edge.Temperature(29));
        Assert.Equal([SparkNoteKind.UnknownAlias, SparkNoteKind.UnknownAlias], host.Kinds);
        Assert.Equal([29], host.Values);

        host = new SparkHost().Hears(_edge.Birth(), _edge.DeviceBirth(alias: 1));
        Assert.Contains((SparkNoteKind.AliasTwice, "probe", "Redox", "1"), host.Notes.Select(n => (n.Kind, n.Device, n.Metric, n.Detail)));
    }

    [Fact]
    public void A_rebirth_starts_the_numbers_and_the_aliases_anew_and_its_devices_are_stale_until_they_are_born_again()
    {
        var host = new SparkHost().Hears(_edge.Birth(), _edge.DeviceBirth(), _edge.Ph(7.3)).Then();
        host.Hears(_edge.Birth(7.4));
        Assert.Equal([SparkNoteKind.DeviceOffline, SparkNoteKind.NodeOnline], host.Kinds);
        Assert.True(host.State.IsStale("probe", "Redox"));
        Assert.Equal(1, host.State.Next);
        host.Then().Hears(_edge.DeviceBirth(alias: 20), _edge.Redox(701, alias: 10), _edge.Redox(702, alias: 20));
        Assert.Equal([SparkNoteKind.DeviceOnline, SparkNoteKind.UnknownAlias], host.Kinds);
        Assert.Equal([700, 702], host.Values);
        Assert.False(host.State.IsStale("probe", "Redox"));
    }

    [Fact]
    public void The_same_birth_again_changes_nothing()
    {
        var birth = _edge.Birth();
        var host = new SparkHost().Hears(birth, _edge.Ph(7.3)).Then().Hears(birth, _edge.Ph(7.4));
        Assert.Equal([SparkNoteKind.Repeated], host.Kinds);
        Assert.Equal([7.4], host.Values);
    }

    [Fact]
    public void A_birth_may_begin_at_any_number_and_must_have_one()
    {
        // tck-id-payloads-nbirth-seq: 0 to 255.
        var host = new SparkHost().Hears(SparkEdge.Of(SparkplugKind.NodeBirth, "", Payload(Start, 255, Named("a", Alias(1), Typed(SparkplugType.Double), F64(1)))));
        host.Hears(SparkEdge.Of(SparkplugKind.NodeData, "", Payload(Start, 0, Nameless(Alias(1), F64(2)))));
        Assert.Equal([1, 2], host.Values);
        host = new SparkHost().Hears(SparkEdge.Of(SparkplugKind.NodeBirth, "", Payload(Start, null, Named("a", Typed(SparkplugType.Double), F64(1)))));
        Assert.Equal([SparkNoteKind.WithoutSequence], host.Kinds);
        Assert.Equal(SparkLife.Unborn, host.State.Life);
    }

    private static readonly (SparkNoteKind Kind, string Detail, byte[][] Fields)[] Refused =
    [
        (SparkNoteKind.WithoutType, "", [F64(1)]), (SparkNoteKind.WithoutType, "", [Number(4, 35), F64(1)]), (SparkNoteKind.WithoutType, "", [Number(4, 260), I32(1)]), (SparkNoteKind.WithoutValue, "", [Typed(SparkplugType.Double)]),
        (SparkNoteKind.Null, "", [Typed(SparkplugType.Double), Null]), (SparkNoteKind.Null, "", [Typed(SparkplugType.Double), Null, F64(1)]), (SparkNoteKind.Transient, "", [Typed(SparkplugType.Double), Transient, F64(1)]),
        (SparkNoteKind.WithoutNumber, "NotANumber", [Typed(SparkplugType.String), Text(15, "x")]), (SparkNoteKind.WithoutNumber, "WrongField", [Typed(SparkplugType.Int8), F64(1)]),
        (SparkNoteKind.WithoutNumber, "OutsideType", [Typed(SparkplugType.UInt8), I32(256)]), (SparkNoteKind.WithoutNumber, "NotFinite", [Typed(SparkplugType.Double), F64(double.NaN)]),
        (SparkNoteKind.WrongTime, "", [Typed(SparkplugType.Double), Number(3, ulong.MaxValue), F64(1)]),
    ];

    [Fact]
    public void A_metric_that_is_no_reading_is_refused_by_name_is_stale_and_spoils_no_neighbour()
    {
        foreach (var (kind, detail, fields) in Refused)
        {
            var host = new SparkHost().Hears(SparkEdge.Of(SparkplugKind.NodeBirth, "", Payload(Start, 0, Named("odd", fields), Named("good", Typed(SparkplugType.Double), F64(2)), Nameless(Alias(1), F64(3)))));
            Assert.Equal([(SparkNoteKind.NodeOnline, "", ""), (kind, "odd", detail), (SparkNoteKind.WithoutName, "", "")], host.Notes.Select(n => (n.Kind, n.Metric, n.Detail)));
            Assert.Equal([2], host.Values);
            Assert.True(host.State.IsStale("", "odd"));
            Assert.False(host.State.IsStale("", "good"));
        }
    }

    [Fact]
    public void Data_of_another_type_than_the_births_is_refused()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(_edge.Data(Nameless(Alias(1), Typed(SparkplugType.Int32), I32(7)), Nameless(Alias(1), Typed(SparkplugType.Double), F64(7.5))));
        Assert.Equal([SparkNoteKind.WrongType], host.Kinds);
        Assert.Equal([7.5], host.Values);
    }

    [Fact]
    public void A_null_makes_its_metric_stale_until_a_value_comes()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(_edge.Data(Nameless(Alias(1), At(_edge.Clock), Null)));
        Assert.Equal([(SparkNoteKind.Null, "pH")], host.Notes.Select(n => (n.Kind, n.Metric)));
        Assert.True(host.State.IsStale("", "pH"));
        Assert.False(host.State.IsStale("", "Temperature"));
        Assert.False(host.Hears(_edge.Ph(7.2)).State.IsStale("", "pH"));
    }

    [Fact]
    public void A_historical_value_is_stored_as_late_and_says_nothing_of_now()
    {
        var host = new SparkHost().Hears(_edge.Birth(), _edge.Data(Nameless(Alias(1), Null))).Then().Hears(_edge.Data(Nameless(Alias(1), At(Start - TimeSpan.FromDays(1)), Historical, F64(6.9))));
        var reading = Assert.Single(host.Readings);
        Assert.Equal((6.9, Start - TimeSpan.FromDays(1), Quality.Received | Quality.Late), (reading.Value, reading.MeasuredAt, reading.Quality));
        Assert.True(host.State.IsStale("", "pH"));
    }

    [Theory]
    [InlineData(192, Quality.Received, false)]
    [InlineData(0, Quality.Received | Quality.Suspect, true)]
    [InlineData(500, Quality.Received | Quality.Suspect, true)]
    [InlineData(7, Quality.Received | Quality.Suspect, true)]
    public void A_value_whose_source_doubts_it_is_suspect_and_stale(ulong code, Quality quality, bool isStale)
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(_edge.Data(Nameless(Alias(1), QualityCode(code), F64(7))));
        Assert.Equal((7, quality), (host.Readings[0].Value, host.Readings[0].Quality));
        Assert.Equal(isStale, host.State.IsStale("", "pH"));
    }

    [Fact]
    public void A_reading_has_the_metrics_time_else_the_payloads_else_ours()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(_edge.Data(Nameless(Alias(1), At(Start), F64(1)), Nameless(Alias(1), F64(2))));
        Assert.Equal([Start, _edge.Clock], host.Readings.Select(r => r.MeasuredAt));
        host.Then().Hears(SparkEdge.Of(SparkplugKind.NodeData, "", Payload(null, 2, Nameless(Alias(1), F64(3)))));
        Assert.Equal((host.Now, host.Now), (host.Readings[0].MeasuredAt, host.Readings[0].ReceivedAt));
    }

    [Fact]
    public void The_handles_of_the_node_are_no_readings()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(_edge.Data(Named("Node Control/Rebirth", Flag(false)), Named("bdSeq", I64(0))));
        Assert.Empty(host.Readings);
        Assert.Empty(host.Notes);
    }

    [Fact]
    public void A_payload_that_cannot_be_read_is_refused_with_its_fault()
    {
        var host = new SparkHost().Hears(_edge.Birth()).Then().Hears(SparkEdge.Of(SparkplugKind.NodeData, "", [0x08]));
        Assert.Equal([(SparkNoteKind.Undecodable, "Malformed Truncated @ 1")], host.Notes.Select(n => (n.Kind, n.Detail)));
    }

    [Fact]
    public void A_node_keeps_no_more_than_it_may_and_forgets_the_dead_first()
    {
        byte[][] many = [.. Enumerable.Range(0, SparkplugPayload.MostMetrics).Select(i => Named($"m{i}"))];
        var host = new SparkHost().Hears(_edge.Birth());
        for (var i = 0; i < 4; i++) host.Hears(_edge.Says(SparkplugKind.DeviceBirth, $"d{i}", i < 3 ? many : many[..^3000]));
        host.Then().Hears(_edge.Says(SparkplugKind.DeviceBirth, "d9", many));
        Assert.Contains(SparkNoteKind.NodeTooLarge, host.Kinds);
        host.Hears(_edge.DeviceDeath("d0")).Then().Hears(_edge.Says(SparkplugKind.DeviceBirth, "d9", many));
        Assert.Equal(SparkNoteKind.DeviceOnline, host.Kinds.First());
        Assert.False(host.State.Devices.ContainsKey("d0"));
    }

    [Fact]
    public void A_message_of_another_node_is_a_mistake_of_the_caller() =>
        Assert.Throws<ArgumentException>(() => SparkNode.Step(SparkNodeState.Of("hall", "other"), _edge.Birth(), Start, new()));
}
