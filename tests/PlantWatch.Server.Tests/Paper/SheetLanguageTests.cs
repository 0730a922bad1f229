using System.Text;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Charts;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Paper.Render.Pdf;
using PlantWatch.Server.Paper.Render.Tables;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Paper;

/// <summary>What leaves a plant without being asked for speaks its language, though no reader says which.</summary>
public sealed class SheetLanguageTests
{
    private static readonly string Plant = PaperPlant.Plant.Replace("  time_zone: Europe/London\n", "  time_zone: Europe/London\n  language: de\n", StringComparison.Ordinal);

    [Fact]
    public async Task Strips_and_ratings_of_a_planned_sheet_and_the_strip_of_a_letter_are_in_the_language_of_the_plant()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 18), out _, Plant);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 17, 30), 7.3);
        var german = Wording.Of(server.Host.Plan!.Site);
        Assert.Equal("de", german.Language.Code);

        var month = await MakeAsync(server, SheetKind.Month, german);
        var strip = Assert.Single(month.Sections.SelectMany(s => s.Blocks).OfType<StripPicture>());
        Assert.All(["pH-Wert", "freies Chlor"], name => Assert.Contains(name, strip.Describes, StringComparison.Ordinal));

        var rated = Encoding.UTF8.GetString(SheetCsv.Write(await MakeAsync(server, SheetKind.Calibration, german)));
        Assert.Contains(german.Find("quality.no_good_readings"), rated, StringComparison.Ordinal);
        Assert.DoesNotContain(Wording.English.Find("quality.no_good_readings"), rated, StringComparison.Ordinal);

        var circuit = server.Host.WithPool("main")!;
        var frame = new StripFrame(Instant.FromUtc(2026, 5, 4, 12), Instant.FromUtc(2026, 5, 4, 18), 900, 0, ChartTheme.Light);
        var input = await PoolStrips.InputAsync(circuit, circuit.State.Plan.Pools.First(p => p.Id == "main"), frame, server.Series, server.Record, german, CancellationToken.None, Measurand.Ph);
        Assert.Equal("pH-Wert", Assert.Single(input.Strips).Name);
        Assert.Equal(ChartWords.From(german.Find), input.Words);
    }

    [Fact]
    public async Task No_sentence_of_another_language_stands_on_any_sheet_of_a_plant_that_speaks_german()
    {
        await using var server = await PaperPlant.AtAsync(Instant.FromUtc(2026, 5, 4, 20), out _, Plant);
        var wrong = await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.9);
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 6, 30), 7.8, wrong, "E. Sample", "Zeile verlesen");
        await server.TestAsync(Instant.FromUtc(2026, 5, 4, 19), 8.4, free: 0.05);
        var job = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "kein Hub", "Ventil gereinigt", JobState.Done, null, "E. Sample") { Minutes = 40 });
        Assert.True(job.IsSuccessStatusCode, await job.Content.ReadAsStringAsync());
        var calibration = await server.PutAsync($"/api/v1/calibrations/{Guid.CreateVersion7()}", new ProposeCalibration("water", CalibrationKind.Offset, 1, 0.3, [], "R. Castellan", null));
        Assert.True(calibration.IsSuccessStatusCode, await calibration.Content.ReadAsStringAsync());

        var english = EnglishOnly();
        foreach (var (kind, _) in SheetKinds.All)
        {
            var sheet = await MakeAsync(server, kind, Wording.Of(server.Host.Plan!.Site));
            var said = Encoding.UTF8.GetString(SheetCsv.Write(sheet)) + PaperPlant.TextOf(SheetPdf.Write(sheet)).ReplaceLineEndings(" ");
            Assert.Empty(english.Where(part => said.Contains(part, StringComparison.Ordinal)).Select(part => $"{kind}: {part}"));
        }
    }

    // Of each sentence the longest part between two figures, where it is more than a word and stands in no german sentence.
    private static string[] EnglishOnly()
    {
        var (english, german) = (Said(Language.English), Said(Language.Find("de")!));
        var all = string.Join('\n', german.Values);
        return [.. english.Where(e => german.GetValueOrDefault(e.Key) != e.Value).Select(e => e.Value.Split('{', '}').Where((_, i) => i % 2 == 0).MaxBy(part => part.Length)!.Trim())
            .Where(part => part.Length >= 10 && part.Contains(' ', StringComparison.Ordinal) && !all.Contains(part, StringComparison.Ordinal)).Distinct()];
    }

    private static Dictionary<string, string> Said(Language language) => Wording.Written(language).Concat(RuleSheets.Sentences(language)).ToDictionary(StringComparer.Ordinal);

    private static Task<Sheet> MakeAsync(WholeServer server, SheetKind kind, Wording words) =>
        server.PaperDesk.MakeAsync(new(kind, ["main"], new(2026, 5, 4), new(2026, 5, 4), "as planned"), words, CancellationToken.None);
}
