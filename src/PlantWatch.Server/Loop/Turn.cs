namespace PlantWatch.Server.Loop;

/// <summary>One piece of heavy work is done at a time, for whom it may be: the same process listens to the plant.</summary>
internal abstract class Turn : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>The turn, to be disposed of when the work is done; null where it did not come in time.</summary>
    /// <param name="wait">How long to wait for it; <see cref="Timeout.InfiniteTimeSpan"/> for as long as it takes.</param>
    /// <param name="cancellation">Ends the waiting.</param>
    public async Task<IDisposable?> TakeAsync(TimeSpan wait, CancellationToken cancellation) => await _turn.WaitAsync(wait, cancellation) ? new Taken(_turn) : null;

    public void Dispose() => _turn.Dispose();

    private sealed class Taken(SemaphoreSlim turn) : IDisposable
    {
        private bool _given;

        public void Dispose()
        {
            if (!Interlocked.Exchange(ref _given, true)) turn.Release();
        }
    }
}
