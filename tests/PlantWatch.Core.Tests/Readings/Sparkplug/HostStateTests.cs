using System.Text;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>What a host itself would say: its state, and the one request it may make.</summary>
public class HostStateTests
{
    [Fact]
    public void A_state_is_an_object_of_online_and_timestamp()
    {
        Assert.Equal("""{"online":true,"timestamp":1772348400000}""", Encoding.UTF8.GetString(new HostState(true, Start).ToPayload()));
        Assert.Equal("""{"online":false,"timestamp":1772348400000}""", Encoding.UTF8.GetString(new HostState(false, Start).ToPayload()));
    }

    [Theory]
    [InlineData("""{"online":true,"timestamp":1772348400000}""", true)]
    [InlineData(""" { "timestamp" : 1772348400000, "more":{"x":[1]}, "online" : false } """, false)]
    public void A_state_is_read(string text, bool online)
    {
        Assert.True(HostState.TryParse(Encoding.UTF8.GetBytes(text), out var state));
        Assert.Equal(new(online, Start), state);
        Assert.True(HostState.TryParse(state.ToPayload(), out var again) && again == state);
    }

    [Theory]
    [InlineData("")]
    [InlineData("ONLINE")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("""{"online":true}""")]
    [InlineData("""{"online":"true","timestamp":1}""")]
    [InlineData("""{"online":true,"timestamp":"1"}""")]
    [InlineData("""{"online":true,"timestamp":-1}""")]
    [InlineData("""{"online":true,"timestamp":1e99}""")]
    [InlineData("""{"online":true,"timestamp":253402300800000}""")]
    [InlineData("""{"online":true,"timestamp":1} x""")]
    [InlineData("""{"online":true,"timestamp":1""")]
    [InlineData("""{"online":true,"\ud800":1,"timestamp":"1"}""")]
    [InlineData("""{"a":{"a":{"a":{"a":{"a":1}}}},"online":true,"timestamp":1}""")]
    public void What_is_no_state_is_none(string text) => Assert.False(HostState.TryParse(Encoding.UTF8.GetBytes(text), out _));

    [Fact]
    public void A_host_that_hears_of_its_own_death_says_its_birth_again_with_the_time_of_its_connect()
    {
        var (own, late) = (new HostState(true, Start), new HostState(false, Start - TimeSpan.FromMinutes(1)));
        Assert.Equal(own, HostState.Answer(own, late));
        Assert.Null(HostState.Answer(own, own));
        Assert.Null(HostState.Answer(own with { IsOnline = false }, late));
    }

    [Fact]
    public void A_request_for_a_rebirth_is_a_command_of_one_switch_that_is_on_and_has_no_number()
    {
        var wanted = new RebirthWanted("hall", "gateway");
        Assert.Equal("spBv1.0/hall/NCMD/gateway", wanted.Topic.ToString());
        var read = Read(wanted.ToPayload(Start));
        Assert.Equal((Start, null), (read.SentAt, read.Sequence));
        Assert.Equal(new() { Name = "Node Control/Rebirth", CapturedAt = Start, Type = SparkplugType.Boolean, Field = SparkplugField.Boolean, Bits = 1 }, Assert.Single(read.Metrics));
        Assert.Equal(Payload(Start, null, Named("Node Control/Rebirth", At(Start), Typed(SparkplugType.Boolean), Flag(true))), wanted.ToPayload(Start));
    }
}
