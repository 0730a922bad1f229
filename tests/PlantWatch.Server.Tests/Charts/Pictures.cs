using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Charts;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Charts;

/// <summary>An invented day of a pool that does not exist, as input for pictures.</summary>
internal static class Pictures
{
    public static readonly Instant From = Instant.FromUtc(2026, 3, 12, 6);
    public static readonly Instant To = Instant.FromUtc(2026, 3, 13, 6);

    public static readonly ChartWords Words = new("raw", "corrected", "lowest to highest", "limits", "check", "suspect check", "check below range", "check above range", "no data");

    public static StripChartInput Day(int width = 1200, bool dark = false) => new()
    {
        Title = "Harbour pool", TimeZone = "Europe/London", From = From, To = To, Words = Words, Width = width,
        Theme = dark ? ChartTheme.Dark : ChartTheme.Light,
        Strips =
        [
            new("pH", Measurand.Ph, [Wave("ph-1", 7.42, 0.12, 0.02, offset: -0.11)], 7.2, 7.6,
                [new(Hour(2), 7.28, 0.1, Censoring.None, false), new(Hour(9), 7.35, 0.1, Censoring.None, false), new(Hour(16), 7.9, 0.1, Censoring.None, true)]),
            new("ORP", Measurand.Orp, [Wave("orp-1", 715, 30, 4, gapFrom: 8, gapTo: 11)], 680, null, []),
            new("Free chlorine", Measurand.FreeChlorine, [Wave("fcl-1", 1.4, 0.5, 0.05), Wave("fcl-2", 1.1, 0.4, 0.05, gapFrom: 14, gapTo: 15)], 0.5, 3,
                [new(Hour(9), 1.5, 0.2, Censoring.None, false), new(Hour(20), 3, 0, Censoring.Above, false)]),
            new("Temperature", Measurand.Temperature, [Wave("t-1", 28.6, 0.2, 0.05)], null, null, [new(Hour(9), 28.4, 0.5, Censoring.None, false)]),
            new("Conductivity", Measurand.Conductivity, [new("ec-1", new("ec-1", Tier.Raw, []), null)], null, null, []),
        ],
    };

    public static StripChartInput Nothing(int width = 1200) => Day(width) with
    {
        Strips = [.. Day().Strips.Take(2).Select(s => s with { Lines = [], Checks = [] })],
    };

    public static Instant Hour(double hour) => From + TimeSpan.FromHours(hour);

    private static StripLine Wave(string name, double middle, double swing, double spread, double gapFrom = -1, double gapTo = -1, double? offset = null)
    {
        List<SeriesPoint> points = [];
        for (var h = 0.0; h < 24; h += 0.1)
        {
            if (h >= gapFrom && h < gapTo)
            {
                if (!(points.Count > 0 && points[^1].IsGap)) points.Add(SeriesPoint.Gap(Hour(h)));
                continue;
            }
            var mean = middle + (swing * Math.Sin(h / 24 * 2 * Math.PI)) + (spread * Math.Sin(h * 17));
            points.Add(new(Hour(h), 36, 36, mean - spread, mean, mean + spread, mean));
        }
        // The calibration holds from the ninth hour on.
        IReadOnlyList<double?>? corrected = offset is { } o ? [.. points.Select(p => p.IsGap || p.At < Hour(9) ? null : (double?)(p.Mean + o))] : null;
        return new(name, new(name, Tier.Minute, points), corrected);
    }
}
