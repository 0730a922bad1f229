using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Paper.Compose;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper;

/// <summary>What is asked of the desk.</summary>
/// <param name="Kind">Which sheet.</param>
/// <param name="Pools">Ids of pools; all of the plant where none is named.</param>
/// <param name="First">The first day on the site's clock.</param>
/// <param name="Last">The last day, included.</param>
/// <param name="By">Who asks.</param>
internal sealed record SheetRequest(SheetKind Kind, IReadOnlyList<string> Pools, DateOnly First, DateOnly Last, string By);

/// <summary>Makes sheets: reads once, hands the same to every part, and says which record it was.</summary>
internal sealed class PaperDesk(PlantHost host, IRecordStore record, ISeriesStore series, TimeProvider clock)
{
    /// <summary>Makes one in a language.</summary>
    public async Task<Sheet> MakeAsync(SheetRequest request, Wording words, CancellationToken cancellation)
    {
        var plan = host.Plan ?? throw new InvalidOperationException("no plant file is in force yet");
        words = words.In(Reader.UnitsIn(plan));
        var span = SheetSpan.Of(request.First, request.Last, Api.SiteMonth.ZoneOf(host));
        var sources = await SourcesAsync(request, span, cancellation);
        var stamp = new SheetStamp(Instant.From(clock.GetUtcNow()), request.By, RecordDigests.Of(sources));
        var draft = new SheetDraft(sources, span, stamp.PrintedAt, words, series, record);
        IReadOnlyList<string> pools = [.. draft.Pools.Select(p => p.Pool.Name)];
        return new()
        {
            Kind = request.Kind, Title = words.Paper($"kind_{Wording.Key(request.Kind)}"), Site = plan.Site.Name, Pools = pools, Span = span, Stamp = stamp, Words = words,
            Sections = [Stamp.Head(span, plan.Site.Name, pools, request.By, stamp.PrintedAt, words), .. await SectionsAsync(request.Kind, draft, cancellation), Stamp.Foot(stamp, span, words)],
        };
    }

    private async Task<IReadOnlyList<SheetSource>> SourcesAsync(SheetRequest request, SheetSpan span, CancellationToken cancellation)
    {
        var sources = new List<SheetSource>();
        foreach (var worker in host.Circuits.ToArray())
            if (worker.State.Plan.Pools.Where(p => request.Pools.Count == 0 || request.Pools.Contains(p.Id)).ToArray() is { Length: > 0 } pools)
                sources.Add(await SheetSource.ReadAsync(worker, pools, span, record, cancellation));
        return sources;
    }

    private static async Task<IReadOnlyList<Section>> SectionsAsync(SheetKind kind, SheetDraft draft, CancellationToken cancellation) => kind switch
    {
        SheetKind.DayLog => await DayLog.SectionsAsync(draft, cancellation),
        SheetKind.Month => await MonthRecord.SectionsAsync(draft, cancellation),
        SheetKind.Calibration => await CalibrationRecord.SectionsAsync(draft, cancellation),
        SheetKind.AlarmsAndJobs => AlarmsAndJobs.Sections(draft),
        SheetKind.Inspection => await Inspection.SectionsAsync(draft, cancellation),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "there is no such sheet"),
    };
}
