using System.Diagnostics;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Upkeep;

/// <summary>Lets go of what the policy no longer keeps, in small pieces with four times as long a rest after each, so that whoever commits waits for one piece at most.</summary>
internal sealed class RetentionKeeper(IRetention record, PlantWatchOptions options, TimeProvider clock, ILogger<RetentionKeeper> log) : BackgroundService
{
    private const int RowsAPiece = 2000;
    private const int RestsAPiece = 4;
    private static readonly TimeSpan Beat = TimeSpan.FromMinutes(5);

    private readonly SteadyClock _steady = new(clock);

    /// <summary>The policy in force.</summary>
    public RetentionPolicy Policy { get; } = RetentionPolicy.Of(options.Retention);

    /// <summary>Lets go of all that is to go by now. Returns how many rows went.</summary>
    public async Task<long> RoundAsync(CancellationToken cancellation)
    {
        var wanted = Policy.At(Instant.From(clock.GetUtcNow()), heedFeed: options.Influx.Place is not null);
        var (readings, minutes) = (0L, 0L);
        try
        {
            while (await PieceAsync(wanted, cancellation) is { } gone)
            {
                if (gone.Tier == Tier.Raw) readings += gone.Rows;
                else minutes += gone.Rows;
            }
        }
        finally
        {
            if (readings + minutes > 0) UpkeepLog.LetGo(log, readings, minutes);
        }

        return readings + minutes;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        Warn();
        if (Policy.IsForEver) return;
        while (true)
        {
            await Task.Delay(Beat, clock, stoppingToken);
            if (!_steady.IsSteady()) continue;
            try
            {
                await RoundAsync(stoppingToken);
            }
            // Whatever it was: what is not let go of ends no server.
            catch (Exception fault) when (fault is not OutOfMemoryException && !stoppingToken.IsCancellationRequested)
            {
                UpkeepLog.Failed(log, fault.Message);
            }
        }
    }

    private async Task<LetGo?> PieceAsync(Retention wanted, CancellationToken cancellation)
    {
        while (true)
        {
            var began = Stopwatch.GetTimestamp();
            try
            {
                var gone = await record.LetGoAsync(wanted, RowsAPiece, cancellation);
                if (gone is not null) await Task.Delay(RestsAPiece * Stopwatch.GetElapsedTime(began), cancellation);
                return gone;
            }
            catch (RollUpMissingException fault)
            {
                // The search goes on with the next series.
                UpkeepLog.Kept(log, fault.Message);
            }
        }
    }

    private void Warn()
    {
        if (options.Retention.RawDays is { } raw && raw < RetentionPolicy.LeastRawDays) UpkeepLog.Raised(log, "RawDays", raw, RetentionPolicy.LeastRawDays);
        if (Policy.Minutes is { } held && options.Retention.MinuteDays is { } minutes && minutes < held.TotalDays) UpkeepLog.Raised(log, "MinuteDays", minutes, (int)held.TotalDays);
    }
}
