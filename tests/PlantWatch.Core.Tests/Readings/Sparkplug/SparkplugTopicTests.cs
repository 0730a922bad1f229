using PlantWatch.Core.Readings.Sparkplug;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The topics of Sparkplug 3.0.0, chapter 4.</summary>
public class SparkplugTopicTests
{
    [Theory]
    [InlineData("spBv1.0/hall/NBIRTH/gateway", SparkplugKind.NodeBirth, "hall", "gateway", "")]
    [InlineData("spBv1.0/hall/NDEATH/gateway", SparkplugKind.NodeDeath, "hall", "gateway", "")]
    [InlineData("spBv1.0/hall/NDATA/gateway", SparkplugKind.NodeData, "hall", "gateway", "")]
    [InlineData("spBv1.0/hall/NCMD/gateway", SparkplugKind.NodeCommand, "hall", "gateway", "")]
    [InlineData("spBv1.0/hall/DBIRTH/gateway/probe", SparkplugKind.DeviceBirth, "hall", "gateway", "probe")]
    [InlineData("spBv1.0/hall/DDEATH/gateway/probe", SparkplugKind.DeviceDeath, "hall", "gateway", "probe")]
    [InlineData("spBv1.0/hall/DDATA/gateway/probe", SparkplugKind.DeviceData, "hall", "gateway", "probe")]
    [InlineData("spBv1.0/hall/DCMD/gateway/probe", SparkplugKind.DeviceCommand, "hall", "gateway", "probe")]
    [InlineData("spBv1.0/STATE/office", SparkplugKind.HostState, "", "office", "")]
    [InlineData("spBv1.0/Halle 1 \u00e4\u00f6\ud83d\ude00/NDATA/NDATA", SparkplugKind.NodeData, "Halle 1 \u00e4\u00f6\ud83d\ude00", "NDATA", "")]
    public void A_topic_is_taken_apart_and_put_together_again(string text, SparkplugKind kind, string group, string node, string device)
    {
        Assert.True(SparkplugTopic.TryParse(text, out var topic, out var fault));
        Assert.Equal((kind, group, node, device, TopicFault.None), (topic.Kind, topic.Group, topic.Node, topic.Device, fault));
        Assert.Equal(text, topic.ToString());
    }

    private static readonly (TopicFault Fault, string Text)[] Wrong =
    [
        (TopicFault.OtherNamespace, ""), (TopicFault.OtherNamespace, "hall/ph"), (TopicFault.OtherNamespace, "spAv1.0/hall/NDATA/gateway"), (TopicFault.OtherNamespace, "spbv1.0/hall/NDATA/gateway"),
        (TopicFault.OtherNamespace, "/spBv1.0/hall/NDATA/gateway"), (TopicFault.OtherNamespace, "STATE/office"),
        (TopicFault.UnknownKind, "spBv1.0/hall/ndata/gateway"), (TopicFault.UnknownKind, "spBv1.0/hall/STATE/gateway"), (TopicFault.UnknownKind, "spBv1.0/hall//gateway"), (TopicFault.UnknownKind, "spBv1.0/hall/NDATA "),
        (TopicFault.MissingLevel, "spBv1.0"), (TopicFault.MissingLevel, "spBv1.0/hall"), (TopicFault.MissingLevel, "spBv1.0/STATE"), (TopicFault.MissingLevel, "spBv1.0/hall/NDATA"), (TopicFault.MissingLevel, "spBv1.0/hall/DDATA/gateway"),
        (TopicFault.ExtraLevel, "spBv1.0/hall/NDATA/gateway/probe"), (TopicFault.ExtraLevel, "spBv1.0/hall/DDATA/gateway/probe/more"), (TopicFault.ExtraLevel, "spBv1.0/STATE/office/more"), (TopicFault.ExtraLevel, "spBv1.0/hall/NDATA/gateway/"),
        (TopicFault.EmptyId, "spBv1.0//NDATA/gateway"), (TopicFault.EmptyId, "spBv1.0/hall/NDATA/"), (TopicFault.EmptyId, "spBv1.0/hall/DDATA/gateway/"), (TopicFault.EmptyId, "spBv1.0/STATE/"),
        (TopicFault.ReservedCharacter, "spBv1.0/+/NDATA/gateway"), (TopicFault.ReservedCharacter, "spBv1.0/hall/NDATA/gate#way"), (TopicFault.ReservedCharacter, "spBv1.0/hall/DDATA/gateway/pro+be"), (TopicFault.ReservedCharacter, "spBv1.0/STATE/#"),
        (TopicFault.NotText, "spBv1.0/hall/NDATA/gate\0way"), (TopicFault.NotText, "spBv1.0/hall/NDATA/gate\ud83d"), (TopicFault.NotText, "spBv1.0/hall/NDATA/\ude00gate"),
        (TopicFault.TooLong, "spBv1.0/hall/NDATA/" + new string('n', SparkplugTopic.Longest)),
    ];

    [Fact]
    public void What_is_no_topic_of_the_namespace_is_refused_by_name()
    {
        foreach (var (expected, text) in Wrong)
        {
            Assert.False(SparkplugTopic.TryParse(text, out var topic, out var fault), text);
            Assert.Equal((text, expected, default), (text, fault, topic));
        }
    }

    [Fact]
    public void Every_fault_of_a_topic_has_its_test() => Assert.Equal(Enum.GetValues<TopicFault>().Except([TopicFault.None]), Wrong.Select(w => w.Fault).Distinct().Order());

    [Fact]
    public void The_longest_topic_is_taken()
    {
        var text = "spBv1.0/hall/NDATA/".PadRight(SparkplugTopic.Longest, 'n');
        Assert.True(SparkplugTopic.TryParse(text, out _, out _));
        Assert.False(SparkplugTopic.TryParse(text + "n", out _, out _));
    }
}
