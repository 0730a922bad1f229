using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>What is remembered of topics while somebody picks from them: the newest, and never more than a few hundred.</summary>
public sealed class TopicEarTests
{
    private static readonly Instant Noon = Instant.FromUnixMilliseconds(1_767_614_400_000);
    private readonly TopicEar _ear = new();

    [Fact]
    public void Nothing_is_remembered_while_nobody_asks_and_nothing_after_they_have_gone()
    {
        Hear("hall/ph", "7.2", Noon);
        Assert.Empty(_ear.Ask(Noon));
        Hear("hall/ph", "7.3", Noon + TimeSpan.FromSeconds(1));
        Assert.Equal("hall/ph", Assert.Single(_ear.Ask(Noon + TimeSpan.FromSeconds(2))).Topic);
        var later = Noon + TopicEar.Attention + TimeSpan.FromSeconds(3);
        Assert.False(_ear.IsWanted(later));
        Hear("hall/orp", "712", later);
        Assert.Empty(_ear.Ask(later));
    }

    [Fact]
    public void The_newest_payload_stands_and_messages_are_counted()
    {
        _ear.Ask(Noon);
        for (var i = 0; i < 5; i++) Hear("hall/ph", $"7.{i}", Noon + TimeSpan.FromSeconds(10 * i));
        Hear("hall/orp", "712", Noon + TimeSpan.FromSeconds(41));
        var heard = _ear.Ask(Noon + TimeSpan.FromSeconds(42));
        Assert.Equal(["hall/orp", "hall/ph"], heard.Select(h => h.Topic));
        Assert.Equal((5, "7.4", Noon, Noon + TimeSpan.FromSeconds(40)), (heard[1].Count, Encoding.UTF8.GetString(heard[1].Payload.Span), heard[1].FirstAt, heard[1].LastAt));
    }

    [Fact]
    public void After_a_pause_a_topic_is_counted_from_the_new_listening_on()
    {
        _ear.Ask(Noon);
        for (var i = 0; i < 3; i++) Hear("hall/ph", "7.2", Noon + TimeSpan.FromSeconds(i));
        var later = Noon + TimeSpan.FromHours(1);
        Assert.Empty(_ear.Ask(later));
        for (var i = 1; i <= 2; i++) Hear("hall/ph", "7.2", later + TimeSpan.FromSeconds(i));
        var heard = Assert.Single(_ear.Ask(later + TimeSpan.FromSeconds(3)));
        Assert.Equal((2, later + TimeSpan.FromSeconds(1)), (heard.Count, heard.FirstAt));
    }

    [Fact]
    public void However_many_topics_and_however_long_their_payloads_memory_stays_bounded()
    {
        _ear.Ask(Noon);
        for (var i = 0; i < 3 * TopicEar.Most; i++) Hear($"flood/{i}", new string('x', 3 * TopicEar.MostBytes), Noon);
        Hear(new string('t', TopicEar.LongestTopic + 1), "1", Noon);
        var heard = _ear.Ask(Noon);
        Assert.Equal(TopicEar.Most, heard.Count);
        Assert.Equal($"flood/{(3 * TopicEar.Most) - 1}", heard[0].Topic);
        Assert.All(heard, h => Assert.Equal((TopicEar.MostBytes, 3 * TopicEar.MostBytes), (h.Payload.Length, h.Bytes)));
        Assert.Equal(2 * TopicEar.Most, _ear.Forgotten);
    }

    [Theory]
    [InlineData("hall/main/ph", null, Measurand.Ph)]
    [InlineData("urn:dev:ops:north-quay:orp", "mV", Measurand.Orp)]
    [InlineData("plant/3/ai-7", "Cel", Measurand.Temperature)]
    [InlineData("hall/flow/ph", null, Measurand.Ph)]
    [InlineData("hall/sample-flow", null, Measurand.SampleFlow)]
    [InlineData("hall/free_cl2", null, Measurand.FreeChlorine)]
    [InlineData("phone/battery", null, Measurand.None)]
    public void A_name_and_a_unit_give_a_guess_to_begin_with(string name, string? unit, Measurand guess) => Assert.Equal(guess, TopicGuess.Of(name, unit));

    private void Hear(string topic, string payload, Instant at) => _ear.Hear(new IncomingMessage(topic, Encoding.UTF8.GetBytes(payload), false, "", 0, false), at);
}
