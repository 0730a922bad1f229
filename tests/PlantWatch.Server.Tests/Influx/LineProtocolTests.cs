using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>Escapes and types: InfluxData, docs-v2, content/shared/v3-line-protocol.md (commit 0f9518cf).</summary>
public sealed class LineProtocolTests
{
    private static readonly Instant At = Instant.FromUnixMicroseconds(1_780_000_000_123_457);

    [Theory]
    [InlineData("main", "ph", "reading,circuit=main,probe=ph value=")]
    [InlineData("a b", "x,y=z", @"reading,circuit=a\ b,probe=x\,y\=z value=")]
    [InlineData("end\\", "two\nlines", "reading,circuit=end_,probe=two_lines value=")]
    public void Names_are_escaped_and_what_a_tag_cannot_hold_is_replaced(string circuit, string probe, string prefix) => Assert.Equal(prefix, LineProtocol.Prefix(circuit, probe));

    [Fact]
    public void A_whole_number_is_a_float_too_and_no_digit_is_lost()
    {
        Assert.Equal("p=7,quality=1,lag=250000 1780000000123457", LineProtocol.Line("p=", new StoredReading(At, At + TimeSpan.FromMilliseconds(250), 7, Quality.Received)));
        Assert.Equal(
            "p=7,quality=1,lag=0 1780000000123457\np=7.5,quality=3,lag=-1 1780000000123457",
            LineProtocol.Lines("p=", [new(At, At, 7, Quality.Received), new(At, Instant.FromUnixMicroseconds(At.UnixMicroseconds - 1), 7.5, Quality.Received | Quality.Late)]));
        Assert.Equal("p=0.30000000000000004,quality=17,lag=0 1780000000123457", LineProtocol.Line("p=", new StoredReading(At, At, 0.1 + 0.2, Quality.Received | Quality.Suspect)));
    }
}
