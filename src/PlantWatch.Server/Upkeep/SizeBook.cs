using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Upkeep;

/// <summary>The size of the record as it was measured last: measuring looks at every page, so an hour's answer serves for all who ask.</summary>
internal sealed class SizeBook(IRetention record, TimeProvider clock) : IDisposable
{
    private static readonly TimeSpan Serves = TimeSpan.FromHours(1);
    private readonly SemaphoreSlim _turn = new(1, 1);
    private (Instant At, RecordSize Size)? _last;

    /// <summary>The size, and when it was measured.</summary>
    public async Task<(Instant At, RecordSize Size)> NowAsync(CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            var now = Instant.From(clock.GetUtcNow());
            if (_last is { } last && now - last.At < Serves && now >= last.At) return last;
            // It may take seconds: not on a thread that answers requests.
            var size = await Task.Run(() => record.SizeAsync(now, CancellationToken.None).AsTask(), cancellation);
            return (_last = (now, size)).Value;
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();
}
