using System.Globalization;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Commands.Replay;
using PlantWatch.Server.Series;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Commands.Rebuild;

/// <summary>One rebuilding of the series, from its begin to its last words.</summary>
internal sealed class RebuildRun(IFeedSource source, InfluxDoor door, TextWriter output, TextWriter complaints)
{
    private const string Note = "rebuild";
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1), Patience = TimeSpan.FromSeconds(30);
    private readonly Instant _begun = Now;
    private Progress _progress = null!;
    private long _whole, _shown;

    /// <summary>Sets the marks back, unless an earlier one was broken off.</summary>
    public async Task BeginAsync(bool anew)
    {
        var before = await source.NotedAsync(Note, default);
        if (before is null || anew)
        {
            await source.TakeUpAsync(default);
            await source.WriteAllAgainAsync(default);
        }

        var owed = (await source.BacklogAsync(default)).Readings;
        _whole = before is { } noted && !anew ? Math.Max(noted, owed) : owed;
        await source.KeepAsync(Note, _whole, default);
        _progress = new(output, output == Console.Out && !Console.IsOutputRedirected, _whole);
        output.WriteLine(before is null || anew ? $"{Number(_whole)} readings are to be written." : $"It goes on: {Number(owed)} of {Number(_whole)} readings are still to be written. (--anew begins at the first.)");
        Show(owed);
    }

    /// <summary>Writes them here.</summary>
    public async Task<int> WriteAsync()
    {
        var (feeder, pace, said) = (new SeriesFeeder(source, door, TimeProvider.System), new FeedPace(), "");
        while (true)
        {
            var step = await feeder.StepAsync(default);
            if (step.Answer.Taking == Taking.Taken)
            {
                Show(step.Written == 0 ? 0 : _whole - _shown - step.Written);
                if (step.Written == 0 && !step.IsMore) return await EndAsync();
                continue;
            }

            var words = FeedWords.Say(step.Answer, door.Place);
            // Only a person can help; what is written stays written, and the next run goes on.
            if (step.Answer.Taking != Taking.NotNow) throw new StorageException(words, mayPass: true);
            if (words != said) complaints.WriteLine($"{said = words}; it is tried again");
            await Task.Delay(pace.AfterFailure(step.Answer.NotBefore, Random.Shared.NextDouble()));
        }
    }

    /// <summary>Looks on while the server writes them.</summary>
    public async Task<int> WatchAsync()
    {
        output.WriteLine("The server runs and writes them.");
        var (moved, least) = (Now, long.MaxValue);
        while (true)
        {
            var owed = await source.BacklogAsync(default);
            if (!owed.Oldest.IsSet || owed.Oldest > _begun) return await EndAsync();
            if (owed.Readings < least) (moved, least) = (Now, owed.Readings);
            else if (Now - moved > Patience) throw new StorageException("nothing moves: has the server that runs PlantWatch__Influx__Url too? /health/ready says how it stands. They stay to be written", mayPass: true);
            Show(owed.Readings);
            await Task.Delay(Beat);
        }
    }

    private async Task<int> EndAsync()
    {
        Show(0);
        _progress.End();
        await source.KeepAsync(Note, null, default);
        var all = await source.ParkedAsync(default);
        var parked = all.Where(p => !p.IsTooOld).ToArray();
        output.WriteLine($"All {Number(_whole)} readings were written{(parked.Length == 0 ? "." : $", but for {Number(parked.Sum(p => p.Lines))} lines that InfluxDB refuses:")}");
        foreach (var lines in parked) output.WriteLine($"  {lines.Circuit}/{lines.Probe}, {Number(lines.Lines)} from {lines.First} to {lines.Last}: {lines.Words}");
        if (all.Where(p => p.IsTooOld).Sum(p => p.Lines) is > 0 and var old) output.WriteLine($"{Number(old)} lines of them are older than InfluxDB keeps, and are not there.");
        return parked.Length == 0 ? 0 : 1;
    }

    private void Show(long owed)
    {
        var done = Math.Max(_shown, _whole - Math.Max(0, owed));
        for (var more = done - _shown; more > 0; more -= int.MaxValue) _progress.Add((int)Math.Min(more, int.MaxValue));
        _shown = done;
    }

    private static Instant Now => Instant.From(TimeProvider.System.GetUtcNow());

    private static string Number(long number) => number.ToString("#,0", CultureInfo.InvariantCulture);
}
