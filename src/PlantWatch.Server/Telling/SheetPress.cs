using System.Collections.Concurrent;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Telling;

/// <summary>How the print of a sheet ended.</summary>
/// <param name="Enclosed">The file; null where there is none.</param>
/// <param name="IsFailed">It could not be printed this time; else, without a file, there is nothing to print.</param>
/// <param name="At">When it ended.</param>
internal sealed record Print(Enclosed? Enclosed, bool IsFailed, Instant At);

/// <summary>Prints what letters enclose, outside the turn of any channel: an alarm does not wait for a sheet.</summary>
internal sealed class SheetPress(IEnclosures enclosures, TimeProvider clock, ILogger<SheetPress> log)
{
    private static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);
    private readonly ConcurrentDictionary<Guid, Task<Print>> _prints = new();

    /// <summary>A print that takes longer is given up for this time; it may wait for others.</summary>
    public TimeSpan LongestPrint { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>False while its sheet is being printed, or rests after it could not be.</summary>
    public bool MayGo(OutboxItem item) => !_prints.TryGetValue(item.Notice.Id, out var print) || (print.IsCompleted && !Rests(print));

    /// <summary>Takes out the print of a letter that may go; null where none was begun.</summary>
    public async Task<Print?> TakeAsync(Guid notice) => _prints.TryRemove(notice, out var print) ? await print : null;

    /// <summary>Begins to print.</summary>
    public void Begin(Guid notice, PlantPlan plan, Message message, CancellationToken cancellation) =>
        _prints[notice] = Task.Run(() => PrintAsync(notice, plan, message, cancellation), CancellationToken.None);

    /// <summary>Ends when nothing is printed any more.</summary>
    public Task StopAsync() => Task.WhenAll(_prints.Values);

    private bool Rests(Task<Print> print) => print is { IsCompletedSuccessfully: true, Result: { IsFailed: true } failed } && Now < failed.At + Rest;

    private async Task<Print> PrintAsync(Guid notice, PlantPlan plan, Message message, CancellationToken cancellation)
    {
        try
        {
            using var late = new CancellationTokenSource(LongestPrint, clock);
            using var limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation, late.Token);
            return new(await Task.Run(() => enclosures.OfAsync(plan, message, limit.Token), limit.Token).WaitAsync(limit.Token), false, Now);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            var failed = new Print(null, true, Now);
            if (!cancellation.IsCancellationRequested) TellingLog.NotPrinted(log, notice, fault);
            return failed;
        }
    }

    private Instant Now => Instant.From(clock.GetUtcNow());
}
