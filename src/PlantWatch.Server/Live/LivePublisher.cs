using System.Collections.Concurrent;
using Microsoft.AspNetCore.SignalR;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>
/// Tells the browsers what was committed: readings at most ten times a second, coalesced to the newest of each series; a circuit
/// at most twice a second when something but its numbers changed, and every five seconds otherwise; a sign of life every five.
/// </summary>
internal sealed class LivePublisher(
    IHubContext<LiveHub> hub, PlantHost host, PlantFileWatcher plantFile, IBrokerStatus broker, TimeProvider clock, ILogger<LivePublisher> log) : BackgroundService
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan LongestSend = TimeSpan.FromSeconds(2);
    private const int BeatsBetweenViews = 5;
    private const int BeatsBetweenSigns = 50;

    private readonly ConcurrentDictionary<string, CircuitPulse> _pulses = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<Language, int> _listening = new();

    /// <summary>Browsers connected.</summary>
    public int Connections => _listening.Values.Sum();

    /// <summary>The group of the connections that are spoken to in a language.</summary>
    public static string GroupOf(Language language) => "language-" + language.Code;

    /// <summary>So many more browsers of a language, or fewer.</summary>
    public void Connected(Language language, int change) => _listening.AddOrUpdate(language, change, (_, before) => before + change);

    /// <summary>Everything a page needs that has just connected, the sign of life last: what the page shows when it comes alive is all of now.</summary>
    public async Task GreetAsync(IClientProxy caller, Wording words, CancellationToken cancellation)
    {
        foreach (var worker in host.Circuits.ToArray()) await caller.SendAsync("circuit", View(worker, words), cancellation);
        await caller.SendAsync("health", Health(words), cancellation);
    }

    public HealthView Health(Wording words) => new(
        Now, BrokerWords.Say(broker.State, words), [.. IsEmpty ? [] : plantFile.Errors.Select(e => e.ToString())], CircuitViews.Sum(host.Everything.Select(CircuitViews.Ledger)));

    // A plant that nobody has described yet is nothing wrong: the page leads there.
    private bool IsEmpty => plantFile.IsMissing && host.Plan is not { Circuits.IsEmpty: false };

    // The version is the batch: it rises with every commit, so a view that comes late is known to be stale.
    public CircuitView View(CircuitWorker worker, Wording words) => CircuitViews.Of(worker.State, worker.Seq, Now, CircuitViews.Ledger(worker), words);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        host.Committed += Take;
        using var timer = new PeriodicTimer(Beat);
        try
        {
            for (var beat = 0L; await timer.WaitForNextTickAsync(stoppingToken); beat++)
            {
                try
                {
                    await BeatAsync(beat, stoppingToken);
                }
                catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
                {
                    LiveLog.BeatFailed(log, fault);
                }
            }
        }
        finally
        {
            host.Committed -= Take;
        }
    }

    private Instant Now => Instant.From(clock.GetUtcNow());

    private void Take(CircuitWorker worker, StepResult result) =>
        _pulses.GetOrAdd(worker.Partition.Value, static _ => new CircuitPulse()).Take(worker, result);

    private async Task BeatAsync(long beat, CancellationToken cancellation)
    {
        if (beat % BeatsBetweenSigns == 0) await SayAsync("health", Health, cancellation);
        foreach (var (circuit, pulse) in _pulses)
        {
            if (Connections == 0)
            {
                pulse.Forget();
                continue;
            }

            if (pulse.TakeReadings() is { Count: > 0 } readings) await SendAsync(hub.Clients.All, "readings", new ReadingsDelta(circuit, readings), cancellation);
            if (beat % BeatsBetweenViews == 0 && pulse.WantsView(beat % BeatsBetweenSigns == 0) && host.Find(circuit) is { } worker)
                await SayAsync("circuit", words => View(worker, words), cancellation);
        }
    }

    // What has words in it is made once for each language that somebody listens in.
    private async Task SayAsync(string method, Func<Wording, object> what, CancellationToken cancellation)
    {
        foreach (var (language, listening) in _listening)
            if (listening > 0) await SendAsync(hub.Clients.Group(GroupOf(language)), method, what(Wording.Of(language)), cancellation);
    }

    // A browser that does not read must not hold up the others: a send that takes too long is left behind, and the page asks again.
    private async Task SendAsync(IClientProxy whom, string method, object what, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(LongestSend);
        try
        {
            await whom.SendAsync(method, what, limit.Token);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            LiveLog.SendTooSlow(log, method);
        }
    }
}
