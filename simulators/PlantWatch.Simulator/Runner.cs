using System.Diagnostics;
using PlantWatch.Simulator.People;
using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Simulator;

/// <summary>Keeps a plant in step with real time, at a given speed, and carries what it says to broker and server.</summary>
internal sealed class Runner(SimulatedPlant plant, Gateways gateways, CheckDesk? desk, Action<string> print)
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(250);

    /// <summary>Runs until it is cancelled.</summary>
    public async Task RunAsync(double speed, CancellationToken cancellation)
    {
        var from = plant.Now;
        var clock = Stopwatch.StartNew();
        using var timer = new PeriodicTimer(Beat);
        while (await timer.WaitForNextTickAsync(cancellation).ConfigureAwait(false))
            await DeliverAsync(plant.AdvanceTo(from + (clock.Elapsed * speed)), cancellation).ConfigureAwait(false);
    }

    /// <summary>Carries one step's messages and checks out of the door and waits for the answers.</summary>
    public async Task DeliverAsync(Happenings happened, CancellationToken cancellation)
    {
        foreach (var note in happened.Notes) print($"{plant.Now:yyyy-MM-dd HH:mm:ss}Z  {note}");
        // Whoever washes a filter says so before the valve is turned, and notes the wash after it is turned back.
        foreach (var word in happened.Washes.Where(w => w.Begins)) await TellAsync(word, cancellation).ConfigureAwait(false);
        await gateways.SendAsync(happened.Messages, cancellation).ConfigureAwait(false);
        foreach (var word in happened.Washes.Where(w => !w.Begins)) await TellAsync(word, cancellation).ConfigureAwait(false);
        foreach (var word in happened.Books) await WriteAsync(word, cancellation).ConfigureAwait(false);
        foreach (var sheet in happened.Checks) await TypeInAsync(sheet, cancellation).ConfigureAwait(false);
    }

    private async Task TellAsync(WashWord word, CancellationToken cancellation)
    {
        if (desk is null) return;
        var taken = await desk.SendAsync(word, cancellation).ConfigureAwait(false);
        print($"{plant.Now:yyyy-MM-dd HH:mm:ss}Z  {word.Who} {(word.Begins ? "begins to wash" : "has washed")} {word.Filter} of {word.Circuit}{(taken ? "" : ": REFUSED")}");
    }

    private async Task WriteAsync(BookWord word, CancellationToken cancellation)
    {
        if (desk is null) return;
        var refused = await desk.SendAsync(word, cancellation).ConfigureAwait(false);
        print($"{plant.Now:yyyy-MM-dd HH:mm:ss}Z  {word.Text}{(refused is null ? "" : ": REFUSED " + refused)}");
    }

    private async Task TypeInAsync(CheckSheet sheet, CancellationToken cancellation)
    {
        if (desk is null) return;
        var outcome = await desk.SendAsync(sheet, cancellation).ConfigureAwait(false);
        var results = string.Join(" ", sheet.Results.Select(r => FormattableString.Invariant($"{r.Measurand} {r.Value}")));
        print($"{plant.Now:yyyy-MM-dd HH:mm:ss}Z  check of {sheet.PoolId} by {sheet.Who}: {results}: {(outcome.Taken ? outcome.Words : "REFUSED " + outcome.Words)}");
        if (outcome.RepeatAsked && sheet.Note is null) plant.Operators.AskRepeat(sheet.PoolId, [.. sheet.Results.Select(r => r.Measurand)], plant.Now);
    }
}
