using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

public sealed class PoisonHuntTests
{
    private readonly HashSet<string> _stored = [];
    private int _requests;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Exactly_the_poisoned_lines_are_found_and_all_others_are_stored(bool saysHowMany)
    {
        string[] lines = [.. Enumerable.Range(0, 5000).Select(i => i is 17 or 18 or 4999 ? $"bad {i}" : $"good {i}")];
        var hunt = new PoisonHunt(lines, some => Task.FromResult(Take(some, saysHowMany)));

        var answer = await hunt.WriteAsync(0, lines.Length);

        Assert.Equal(Taking.Taken, answer.Taking);
        Assert.Equal([17, 18, 4999], hunt.Found.SelectMany(f => Enumerable.Range(f.First, f.Count)));
        Assert.Equal(4997, _stored.Count);
        Assert.InRange(_requests, 1, 80);
    }

    [Fact]
    public async Task Where_the_server_refuses_all_nobody_asks_about_each()
    {
        string[] lines = [.. Enumerable.Range(0, 5000).Select(i => $"bad {i}")];
        var hunt = new PoisonHunt(lines, some => Task.FromResult(Take(some, saysHowMany: true)));

        await hunt.WriteAsync(0, lines.Length);

        Assert.Equal([new PoisonHunt.Refused(0, 5000, "bad lines")], hunt.Found);
        Assert.Equal(1, _requests);
    }

    [Fact]
    public async Task A_server_that_goes_away_in_the_middle_ends_the_hunt()
    {
        string[] lines = [.. Enumerable.Range(0, 100).Select(i => i == 60 ? "bad" : "good")];
        var hunt = new PoisonHunt(lines, some => Task.FromResult(_requests < 3 ? Take(some, false) : new WriteAnswer(Taking.NotNow, "gone")));

        Assert.Equal(Taking.NotNow, (await hunt.WriteAsync(0, lines.Length)).Taking);
    }

    private WriteAnswer Take(IEnumerable<string> lines, bool saysHowMany)
    {
        _requests++;
        var bad = 0;
        foreach (var line in lines)
            if (line.StartsWith("bad", StringComparison.Ordinal)) bad++;
            else _stored.Add(line);
        return bad == 0 ? WriteAnswer.Good : new(Taking.LinesRefused, "bad lines", saysHowMany ? bad : null);
    }
}
