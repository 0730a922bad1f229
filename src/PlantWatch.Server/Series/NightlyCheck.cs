using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Series;

/// <summary>Each night, or at the first chance after it, counts the last days of every series in both stores. What differs is said and written again.</summary>
internal sealed class NightlyCheck(IFeedSource source, CopyCheck check, TimeZoneInfo siteZone, TimeProvider clock, ILogger<NightlyCheck> log)
{
    /// <summary>Days looked back: what is taken out of the copy is found within them.</summary>
    public const int Days = 7;

    private const int MostDays = 31;
    private const string Note = "compared";

    // After midnight what a device held back for a while has come in, and in the morning somebody may read the log.
    private static readonly TimeSpan AfterMidnight = TimeSpan.FromHours(2), AfterFailure = TimeSpan.FromHours(1);
    private Instant _notBefore = Instant.Never;

    /// <summary>Runs it where it is due; null where it is not.</summary>
    public async Task<CopyReport?> LookAsync(CancellationToken cancellation)
    {
        var now = Instant.From(clock.GetUtcNow());
        if (now < _notBefore) return null;
        var today = SiteDays.Of(now, siteZone);
        var due = today.From + AfterMidnight;
        var last = await source.NotedAsync(Note, cancellation) is { } noted ? Instant.FromUnixMicroseconds(noted) : Instant.Never;
        if (now < due || last >= today.From)
        {
            _notBefore = now < due ? due : today.To + AfterMidnight;
            return null;
        }

        return await RunAsync(now, last, today.From, cancellation);
    }

    private async Task<CopyReport?> RunAsync(Instant now, Instant last, Instant today, CancellationToken cancellation)
    {
        try
        {
            var report = new CopyReport(0, []);
            var days = last.IsSet ? Math.Clamp((int)Math.Ceiling((today - last).TotalDays), Days, MostDays) : Days;
            foreach (var (from, to) in SiteDays.Before(now, siteZone, days)) report = Joined(report, await check.RunAsync(from, to, cancellation));
            await source.KeepAsync(Note, today.UnixMicroseconds, cancellation);
            Tell(report, days);
            return report;
        }
        catch (StorageException fault)
        {
            _notBefore = now + AfterFailure;
            SeriesLog.NotCompared(log, fault.Message);
            return null;
        }
    }

    private void Tell(CopyReport report, int days)
    {
        SeriesLog.Compared(log, report.Compared, days, report.Differ.Count);
        foreach (var differs in report.Differ) SeriesLog.Differs(log, differs.Circuit, differs.Probe, differs.From.ToString(), differs.Record, differs.Copy);
    }

    private static CopyReport Joined(CopyReport a, CopyReport b) => new(a.Compared + b.Compared, [.. a.Differ, .. b.Differ]);
}
