using PlantWatch.Simulator;
using PlantWatch.Simulator.Plant;

namespace PlantWatch.Demo;

/// <summary>Keeps the simulated plant in step with the real clock: first through the history as fast as the server acknowledges, then live.</summary>
internal sealed class Feed(SimulatedPlant plant, DemoClock clock, Runner runner, Staff staff)
{
    /// <summary>Four minutes: the readings of a pack are no older than a slow gateway's, a check finds readings beside it, and two weeks fit into half a minute.</summary>
    public static readonly TimeSpan Stride = TimeSpan.FromMinutes(4);
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(500);

    private static readonly Cadence History = new(TimeSpan.FromSeconds(60), Stride, Stride, TimeSpan.FromMinutes(16), TimeSpan.FromHours(1), Stride);
    private static readonly Cadence Live = Cadence.Live with { PackedEvery = TimeSpan.FromSeconds(2), PlainEvery = TimeSpan.FromSeconds(4) };

    /// <summary>Feeds what lies between the plant and now; reports progress as a share. Returns when the plant has caught up.</summary>
    public async Task CatchUpAsync(Action<double> progress, CancellationToken cancellation)
    {
        plant.Cadence = History;
        var whole = DateTimeOffset.UtcNow - plant.Now;
        while (DateTimeOffset.UtcNow - plant.Now is var left && left > Beat)
        {
            await StepAsync(plant.Now + (left < Stride ? left : Stride), cancellation);
            await staff.WorkAsync((plant.Now - plant.Start).TotalHours, plant.Now, left, cancellation);
            progress(1 - (left / whole));
        }
        await runner.DeliverAsync(new Happenings(plant.Flush(), [], []), cancellation);
        clock.GoLive();
    }

    /// <summary>Goes on live until it is cancelled. After a sleep of the machine it catches up with thin data first.</summary>
    public async Task LiveAsync(CancellationToken cancellation)
    {
        using var timer = new PeriodicTimer(Beat);
        while (await timer.WaitForNextTickAsync(cancellation))
        {
            var behind = DateTimeOffset.UtcNow - plant.Now;
            plant.Cadence = behind > Stride ? History : Live;
            if (behind > TimeSpan.Zero) await StepAsync(plant.Now + behind, cancellation);
        }
    }

    /// <summary>Lets the history pass without a word, where the record holds one already.</summary>
    public void PassInSilence()
    {
        plant.AdvanceTo(DateTimeOffset.UtcNow);
        plant.Flush();
        clock.GoLive();
    }

    private async Task StepAsync(DateTimeOffset until, CancellationToken cancellation)
    {
        var happened = plant.AdvanceTo(until);
        clock.MoveTo(plant.Now);
        await runner.DeliverAsync(happened, cancellation);
    }
}
