using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using UglyToad.PdfPig;
using UglyToad.PdfPig.DocumentLayoutAnalysis.TextExtractor;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>The whole server of a plant with rounds, on a clock that begins where a test wants it; and what its sheets say.</summary>
internal static class PaperPlant
{
    public static string Plant { get; } = WholeServer.Plant
        .Replace("        volume_m3: 400\n", "        volume_m3: 400\n        checks:\n          - what: [free_chlorine, ph]\n            at: [\"07:30\", \"12:00\", \"18:00\"]\n", StringComparison.Ordinal)
        .Replace("    probes:\n", "      - id: spa\n        name: Spa\n        kind: spa\n        setting: indoor\n        disinfectant: bromine\n        volume_m3: 6\n    probes:\n", StringComparison.Ordinal)
        + "\npeople:\n  - { id: cas, name: R. Castellan, role: operator }\n  - { id: eng, name: E. Sample, role: engineer }\n";

    /// <summary>Starts it at a moment.</summary>
    public static Task<WholeServer> AtAsync(Instant now, out BegunClock clock, string? plant = null) => WholeServer.StartAsync(plant: plant ?? Plant, clock: clock = new BegunClock(now));

    /// <summary>A test by hand; it succeeds or says why not.</summary>
    public static async Task<Guid> TestAsync(this WholeServer server, Instant at, double ph, Guid? corrects = null, string who = "R. Castellan", string? why = null, string pool = "main", string? note = null, double free = 1.5)
    {
        var id = Guid.CreateVersion7();
        var check = WholeServer.Check(at, new TestResult(Measurand.Ph, ph, TestMethod.Photometer), new TestResult(Measurand.FreeChlorine, free, TestMethod.Photometer)) with
        {
            PoolId = pool, Who = who, Corrects = corrects, CorrectionReason = why, Note = note,
        };
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{id}", check));
        return id;
    }

    public static async Task<byte[]> PdfAsync(this WholeServer server, string query, string kind = "day-log") => await server.Http.GetByteArrayAsync($"/api/v1/sheets/{kind}.pdf?by=I.+Spector&{query}");

    public static async Task<string> HtmlAsync(this WholeServer server, string query, string kind = "day-log") => await server.Http.GetStringAsync($"/api/v1/sheets/{kind}.html?by=I.+Spector&{query}");

    /// <summary>The text of each page, in the order in which it is read.</summary>
    public static string[] PagesOf(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(p => ContentOrderTextExtractor.GetText(p).Replace('\u00a0', ' '))];
    }

    public static string TextOf(byte[] pdf) => string.Join('\n', PagesOf(pdf));
}

/// <summary>The real clock with its hands put to a moment at the start. Timers stay real.</summary>
internal sealed class BegunClock(Instant begins) : TimeProvider
{
    private readonly DateTimeOffset _started = System.GetUtcNow();
    private long _ahead;

    public void Forward(TimeSpan span) => Interlocked.Add(ref _ahead, span.Ticks);

    public override DateTimeOffset GetUtcNow() => begins.ToDateTimeOffset() + (System.GetUtcNow() - _started) + TimeSpan.FromTicks(Interlocked.Read(ref _ahead));
}
