using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>Draws the hours before an alarm: the quantity it is about, with its limits, tests and gaps, on the site's clock.</summary>
internal sealed class StripPictures(ISeriesStore series, IRecordStore record, TimeProvider clock) : IStripPictures
{
    private static readonly TimeSpan Before = TimeSpan.FromHours(6);
    private static readonly TimeSpan Longest = TimeSpan.FromDays(2);
    private const int Width = 900;

    public async Task<byte[]?> OfAsync(CircuitWorker circuit, Message message, Wording words, CancellationToken cancellation)
    {
        var plan = circuit.State.Plan;
        if (MeasurandOf(plan, message.Subject) is not { } measurand || PoolOf(plan, message) is not { } pool) return null;
        var now = Instant.From(clock.GetUtcNow());
        var from = Instant.Later(message.Since - Before, now - Longest);
        var input = await PoolStrips.InputAsync(circuit, pool, new(from, now, Width, 0, ChartTheme.Light), series, record, words, cancellation, measurand);
        return input.Strips.Count == 0 ? null : StripChart.Png(input);
    }

    // A probe, or a test of a pool as pool/measurand; what is not measured has no strip.
    private static Measurand? MeasurandOf(CircuitPlan plan, string subject) =>
        plan.Probes.FirstOrDefault(probe => probe.Id == subject) is { } probe ? probe.Measurand == Measurand.SampleFlow ? null : probe.Measurand
        : PlantFile.EnumWords<Measurand>.Find(subject[(subject.IndexOf('/', StringComparison.Ordinal) + 1)..]);

    // What the whole circuit shares is shown in its first pool.
    private static PoolPlan? PoolOf(CircuitPlan plan, Message message) => plan.Pools.FirstOrDefault(pool => pool.Id == message.Pool) ?? plan.Pools.FirstOrDefault();
}
