using Microsoft.Extensions.Logging;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Telling;

namespace PlantWatch.Server.Tests.PlantFile;

public sealed class LookoutTests
{
    [Fact]
    public async Task A_look_that_fails_is_told_and_the_next_one_goes_on()
    {
        var (clock, log, looks) = (new HandClock(), new KeptLog(), 0);
        using var logs = LoggerFactory.Create(l => l.AddProvider(log));
        await using var lookout = new Lookout(clock, TimeSpan.FromSeconds(5), logs.CreateLogger<LookoutTests>());
        lookout.Start(_ => Interlocked.Increment(ref looks) == 1 ? throw new InvalidOperationException("spoilt") : Task.CompletedTask);
        clock.Advance(TimeSpan.FromSeconds(5));
        await Peer.UntilAsync(() => log.Count(3013) == 1, "the fault is told");
        clock.Advance(TimeSpan.FromSeconds(5));
        await Peer.UntilAsync(() => Volatile.Read(ref looks) == 2, "it looks again");
        Assert.Equal(1, log.Count(3013));
    }
}
