using CsCheck;
using PlantWatch.Core.Readings.Sparkplug;
using PlantWatch.Fuzz;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The short form of the campaign <c>tests/campaign/fuzz</c> for Sparkplug: whatever comes, in whatever order, becomes readings or is refused by name.</summary>
public class SparkplugFuzzTests
{
    [Fact]
    public void Mutated_payloads_in_any_order_become_readings_or_are_refused_by_name()
    {
        var found = new SparkplugHunt(seed: 20237).Run(150_000);

        Assert.True(found.Broken == 0, string.Join('\n', found.Samples));
        // It went everywhere: what it cannot reach at 64 KiB has its own tests.
        Assert.Equal(Enum.GetValues<SparkplugFault>().Except([SparkplugFault.None, SparkplugFault.TooLarge]), found.Refused.Keys.Order());
        Assert.Equal(Enum.GetValues<SparkNoteKind>().Except([SparkNoteKind.None, SparkNoteKind.NodeTooLarge]), found.Notes.Keys.Order());
        Assert.True(found is { Read: > 10_000, Readings: > 1000 }, $"{found.Read} read, {found.Readings} readings");
    }

    [Fact]
    public void Any_bytes_at_all_never_throw() => Gen.Byte.Array[0, 64].Sample(
        bytes =>
        {
            var host = new SparkHost(SparkHost.Asking);
            var edge = new SparkEdge();
            host.Hears(edge.Birth());
            foreach (var kind in Enum.GetValues<SparkplugKind>()) host.Hears(SparkEdge.Of(kind, kind >= SparkplugKind.DeviceBirth ? "probe" : "", bytes));
            _ = HostState.TryParse(bytes, out _);
        },
        iter: 20_000);

    private static readonly string[] Levels = ["spBv1.0", "STATE", "NDATA", "DDATA", "NBIRTH", "hall", "", "+", "#", "\ud83d"];

    [Fact]
    public void Any_text_at_all_is_a_topic_that_is_written_as_it_was_read_or_none() => Gen.OneOf(
        Gen.String,
        Gen.OneOf(Gen.Int[0, Levels.Length - 1].Select(i => Levels[i]), Gen.String[0, 3]).Array[0, 6].Select(levels => string.Join('/', levels))).Sample(
        text =>
        {
            if (SparkplugTopic.TryParse(text, out var topic, out var fault)) Assert.Equal((text, TopicFault.None), (topic.ToString(), fault));
            else Assert.NotEqual(TopicFault.None, fault);
        },
        iter: 50_000);
}
