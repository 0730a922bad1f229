using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Series;

/// <summary>Feeds InfluxDB from the record for as long as the server runs. Nobody waits for it: what is owed lies in the record.</summary>
internal sealed class SeriesWorker(SeriesFeeder feeder, IFeedSource source, InfluxDoor door, NightlyCheck nightly, FeedBook book, TimeProvider clock, ILogger<SeriesWorker> log) : BackgroundService
{
    private static readonly TimeSpan BetweenCounts = TimeSpan.FromSeconds(10);
    private readonly FeedPace _pace = new();
    private Instant _counted = Instant.Never;
    private bool _hasBegun;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The host starts its other parts meanwhile.
        await Task.Yield();
        try
        {
            book.Now = FeedView.Off with { IsOn = true };
            while (true)
            {
                var wait = await GuardAsync(stoppingToken);
                if (wait > TimeSpan.Zero) await Task.Delay(wait, clock, stoppingToken);
            }
        }
        catch (Exception) when (stoppingToken.IsCancellationRequested)
        {
            // What is owed waits for the next start.
        }
    }

    private async Task<TimeSpan> GuardAsync(CancellationToken cancellation)
    {
        try
        {
            if (!_hasBegun) await BeginAsync(cancellation);
            var wait = await StepAsync(cancellation);
            if (Now - _counted >= BetweenCounts) await CountAsync(cancellation);
            return wait;
        }
        // Whatever it is: one that leaves here ends the server.
        catch (Exception fault) when (!cancellation.IsCancellationRequested)
        {
            feeder.Forget();
            var wait = _pace.AfterFailure(TimeSpan.Zero, Random.Shared.NextDouble());
            Trouble($"the feed failed on our side: {fault.Message}");
            SeriesLog.Failed(log, wait, fault);
            return wait;
        }
    }

    private async Task BeginAsync(CancellationToken cancellation)
    {
        var url = door.Place.Url.GetComponents(UriComponents.SchemeAndServer, UriFormat.Unescaped);
        if (await feeder.BeginAsync(cancellation)) SeriesLog.OtherServer(log, url, door.Place.Database);
        await CountAsync(cancellation);
        SeriesLog.Begun(log, url, door.Place.Database, book.Now.Owed.Readings);
        _hasBegun = true;
    }

    private async Task<TimeSpan> StepAsync(CancellationToken cancellation)
    {
        var step = await feeder.StepAsync(cancellation);
        if (step.Answer.Taking != Taking.Taken) return await NotTakenAsync(step.Answer, cancellation);
        if (_pace.Failures > 0) SeriesLog.Recovered(log, _pace.Failures + 1);
        Tell(step);
        book.Now = book.Now with { Written = book.Now.Written + step.Written, Trouble = "", TroubleSince = Instant.Never, LastRefusal = step.Parked.LastOrDefault(p => !p.IsTooOld)?.Words ?? book.Now.LastRefusal };
        if (step.Parked.Count > 0) await CountAsync(cancellation);
        if (!step.IsMore && await nightly.LookAsync(cancellation) is { } report) book.Now = book.Now with { Differing = report.Differ.Count };
        return _pace.AfterSuccess(step.IsMore);
    }

    private async Task<TimeSpan> NotTakenAsync(WriteAnswer answer, CancellationToken cancellation)
    {
        var wait = _pace.AfterFailure(answer.NotBefore, Random.Shared.NextDouble());
        Trouble(FeedWords.Say(answer, door.Place));
        SeriesLog.NotTaken(log, book.Now.Trouble, wait);
        await CountAsync(cancellation);
        return wait;
    }

    private void Tell(FeedStep step)
    {
        foreach (var piece in step.Renamed) SeriesLog.Renamed(log, piece.Formerly!, piece.Circuit, piece.Probe);
        foreach (var lines in step.NewlyParked) Tell(lines);
    }

    private void Tell(ParkedLines lines)
    {
        if (lines.IsTooOld) SeriesLog.TooOld(log, lines.Circuit, lines.Probe, lines.Last.ToString());
        else SeriesLog.Parked(log, lines.Lines, lines.Circuit, lines.Probe, lines.First.ToString(), lines.Last.ToString(), lines.Words);
    }

    private void Trouble(string words) => book.Now = book.Now with { Trouble = words, TroubleSince = book.Now.Trouble.Length > 0 ? book.Now.TroubleSince : Now };

    private async Task CountAsync(CancellationToken cancellation)
    {
        var (owed, now) = (await source.BacklogAsync(cancellation), Now);
        _counted = now;
        book.Now = book.Now with { Owed = owed, Lag = owed.Oldest.IsSet && now > owed.Oldest ? now - owed.Oldest : TimeSpan.Zero };
    }

    private Instant Now => Instant.From(clock.GetUtcNow());
}
