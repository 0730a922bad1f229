using PlantWatch.Server.Tests.PlantFile;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>What comes out of the door when the other side does what no InfluxDB should.</summary>
public sealed class InfluxDoorTests
{
    private const string Line = "reading,circuit=hall,probe=ph value=7 1";

    private static InfluxDoor To(Pretender other, TimeProvider clock) => new(new(other.Url, "plantwatch", null, () => null), clock);

    [Theory]
    [InlineData(200)]
    [InlineData(202)]
    public async Task A_success_that_is_none_of_InfluxDB_takes_nothing(int status)
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => (status, "<html>Welcome</html>");
        using var door = To(other, TimeProvider.System);

        var answer = await door.WriteAsync([Line], default);

        Assert.Equal((Taking.NotNow, $"{status} instead of 204: what answers is no InfluxDB"), (answer.Taking, answer.Words));
        other.Says = _ => (204, "");
        Assert.Equal(WriteAnswer.Good, await door.WriteAsync([Line], default));
    }

    [Fact]
    public async Task No_answer_in_time_is_said_so()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => null;
        var clock = new HandClock();
        using var door = To(other, clock);

        var writing = door.WriteAsync([Line], default);
        await Peer.UntilAsync(() => other.Writes.Count == 1, "the write is under way");
        clock.Advance(InfluxDoor.LongestAnswer);

        Assert.Equal(WriteAnswer.Late, await writing);
        Assert.Equal((Taking.NotNow, "no answer in time"), (WriteAnswer.Late.Taking, WriteAnswer.Late.Words));
    }

    [Fact]
    public async Task A_write_that_is_called_off_ends_as_called_off()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => null;
        using var door = To(other, TimeProvider.System);
        using var stop = new CancellationTokenSource();

        var writing = door.WriteAsync([Line], stop.Token);
        await Peer.UntilAsync(() => other.Writes.Count == 1, "the write is under way");
        await stop.CancelAsync();

        await Assert.ThrowsAsync<OperationCanceledException>(() => writing);
    }
}
