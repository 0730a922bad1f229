using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Api;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Live;

/// <summary>Tells a circuit when a product may be used up before an order would come, and when it no longer may: stock is common to all circuits, and none of them knows all of it.</summary>
/// <remarks>It compares what the stock says with what the circuit knows, so that a start anew neither forgets nor repeats it.</remarks>
internal sealed class StockWatch(PlantHost host, TimeProvider clock) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromMinutes(10);

    /// <summary>The circuit that keeps what a product has in the store: that of the first pump that doses it, else the first of all.</summary>
    public static CircuitWorker? Home(PlantHost host, string product)
    {
        CircuitWorker[] circuits = [.. host.Circuits];
        return circuits.FirstOrDefault(w => w.State.Plan.Pumps.Any(p => p.ProductId == product)) ?? circuits.FirstOrDefault();
    }

    /// <summary>Looks once.</summary>
    public async Task LookAsync(CancellationToken cancellation)
    {
        if (host.Plan is not { } plan) return;
        CircuitState[] states = [.. host.Circuits.Select(w => w.State)];
        foreach (var sheet in StockViews.Sheets(plan.Products, states, SiteMonth.DayOf(plan, Instant.From(clock.GetUtcNow()))))
            if (sheet.Product.DeliveryDays is not null && Home(host, sheet.Product.Id) is { } home && IsNews(home.State, sheet))
                await host.SendAsync(home.Partition.Value, at => new StockOutlookSaid(at, sheet.Product.Id, sheet.RunsOut, (int)(sheet.Outlook?.Earliest ?? 0)), cancellation);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, clock);
        try
        {
            do await LookAsync(stoppingToken);
            while (await timer.WaitForNextTickAsync(stoppingToken));
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
        }
    }

    // What cannot be said any more, as after a restart of a sensor, takes nothing back.
    private static bool IsNews(CircuitState state, StockSheet sheet)
    {
        if (sheet.Outlook is null) return false;
        var stands = state.Alarms.TryGetValue(RuleBook.StockRunsOut.KeyFor(sheet.Product.Id), out var alarm) && alarm.Active;
        return stands != sheet.RunsOut;
    }
}
