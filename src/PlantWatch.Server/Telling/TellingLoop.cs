using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Telling;

/// <summary>Looks once a second at what stands and what was told, writes down what is owed, and only then has it sent. It decides nothing by itself.</summary>
internal sealed class TellingLoop(PlantHost host, OutboxBook book, Sender sender, StandingTopics standing, ChannelWatch watch, TimeProvider clock, ILogger<TellingLoop> log) : BackgroundService
{
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestSaying = TimeSpan.FromSeconds(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Beat, clock);
        try
        {
            do await LookAsync(stoppingToken);
            while (await timer.WaitForNextTickAsync(stoppingToken));
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // What is written down waits for the next start.
        }

        await sender.StopAsync();
    }

    private async Task LookAsync(CancellationToken cancellation)
    {
        if (host.Plan is not { } plan) return;
        var circuits = host.Circuits.ToArray();
        book.KeepOnly([.. circuits.Select(circuit => circuit.Partition)]);
        foreach (var circuit in circuits) await GuardAsync(() => LookAsync(plan, circuit, cancellation));
        sender.Go(plan, circuits, cancellation);
        await GuardAsync(() => SayStandingAsync(plan, circuits, cancellation));
        foreach (var circuit in circuits) await GuardAsync(() => watch.LookAsync(plan, circuit, cancellation));
    }

    // What fails for one circuit is not to silence the others.
    private async Task GuardAsync(Func<Task> look)
    {
        try
        {
            await look();
        }
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
        {
            TellingLog.LookFailed(log, fault);
        }
    }

    private async Task LookAsync(PlantPlan plan, CircuitWorker circuit, CancellationToken cancellation)
    {
        // One state for the whole look: the circuit moves on meanwhile.
        var state = circuit.State;
        await book.OpenAsync(circuit.Partition, [.. state.Alarms.Values.Select(alarm => alarm.Id)], cancellation);
        await book.GiveUpAsync(circuit.Partition, [.. plan.Telling.Channels.Select(channel => channel.Id)]);
        if (plan.Telling.Channels.IsEmpty) return;
        await QueueNoticesAsync(plan, circuit, state, cancellation);
        // A sheet that cannot be written down is not to silence an alarm.
        await GuardAsync(() => QueueSheetsAsync(plan, circuit, state, cancellation));
    }

    private async Task QueueNoticesAsync(PlantPlan plan, CircuitWorker circuit, CircuitState state, CancellationToken cancellation)
    {
        var told = book.Of(circuit.Partition);
        var owed = new TellingPolicy(plan.Telling, plan.Site.TimeZone).Next([.. state.Alarms.Values], [.. told.Select(item => item.Notice)], Instant.From(clock.GetUtcNow()));
        if (owed.Notices.IsEmpty) return;
        await book.QueueAsync(circuit.Partition, MessageMaker.Write(plan.Site.Name, state, owed.Notices, told, Wording.Of(plan.Site)), cancellation);
        TellingLog.Queued(log, owed.Notices.Length, circuit.Partition.Value);
    }

    private async Task QueueSheetsAsync(PlantPlan plan, CircuitWorker circuit, CircuitState state, CancellationToken cancellation)
    {
        if (SheetPost.Owed(plan, state.Plan, book.Of(circuit.Partition), Instant.From(clock.GetUtcNow())) is { Count: > 0 } sheets) await book.QueueAsync(circuit.Partition, sheets, cancellation);
    }

    // A broker that does not answer must not keep letters from being written.
    private async Task SayStandingAsync(PlantPlan plan, CircuitWorker[] circuits, CancellationToken cancellation)
    {
        using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(LongestSaying);
        try
        {
            await standing.SayAsync(plan.Site, plan.Telling.Channels, [.. circuits.Select(circuit => circuit.State)], limit.Token);
        }
        catch (Exception fault) when (!cancellation.IsCancellationRequested && fault is not OutOfMemoryException)
        {
            TellingLog.StateNotSaid(log, Troubles.Say(fault));
        }
    }
}
