using System.Net;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The record as read and as corrected, made and withdrawn by people through the public interface.</summary>
public sealed class CorrectionTests
{
    [Fact]
    public async Task Two_services_offer_a_correction_that_a_person_makes_withdraws_and_makes_anew()
    {
        await using var server = await WholeServer.StartAsync();
        var (first, second) = (await CalibrateAsync(server, 0.10, TimeSpan.FromDays(20)), await CalibrateAsync(server, 0.34, TimeSpan.FromHours(1)));
        var offer = Assert.Single((await server.GetAsync<CorrectionsView>("/api/v1/probes/ph/corrections")).Offers);
        Assert.Equal((first, second, 0.24), (offer.FromService, offer.ToService, Math.Round(offer.Gap!.Value, 9)));
        Assert.NotEmpty(offer.Why);

        var id = Guid.CreateVersion7();
        var request = new MakeCorrection("ph", first, second, default, default, null, null, null, null, null, "I. Brandvold", "found in buffers");
        var made = await WholeServer.ReadAsync<CorrectionView>(await server.PutAsync($"/api/v1/corrections/{id}", request));
        Assert.Equal((0.24, offer.From, offer.To), (Math.Round(made.Gap, 9), made.From, made.To));
        var again = await WholeServer.ReadAsync<CorrectionView>(await server.PutAsync($"/api/v1/corrections/{id}", request));
        Assert.Equal(made, again);
        Assert.Empty((await server.GetAsync<CorrectionsView>("/api/v1/probes/ph/corrections")).Offers);
        using var other = await server.PutAsync($"/api/v1/corrections/{Guid.CreateVersion7()}", request with { From = made.From, To = made.To, Drift = 0.1, U = 0.04 });
        Assert.Equal(HttpStatusCode.Conflict, other.StatusCode);

        using var unsaid = await server.PostAsync($"/api/v1/corrections/{id}/withdrawal", new WithdrawCorrection("I. Brandvold", " "));
        Assert.Equal(HttpStatusCode.BadRequest, unsaid.StatusCode);
        var withdrawn = await WholeServer.ReadAsync<CorrectionView>(await server.PostAsync($"/api/v1/corrections/{id}/withdrawal", new WithdrawCorrection("I. Brandvold", "old buffer")));
        Assert.Equal(("I. Brandvold", "old buffer"), (withdrawn.WithdrawnBy, withdrawn.WithdrawnWhy));
        Assert.Single((await server.GetAsync<CorrectionsView>("/api/v1/probes/ph/corrections")).Offers);
    }

    [PeerFact("mosquitto_pub")]
    public async Task The_record_shows_raw_corrected_or_both_and_the_trend_the_same_and_raw_stays()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 20));
        var now = WholeServer.Now;
        var (from, to) = (now - TimeSpan.FromDays(1), now + TimeSpan.FromSeconds(30));
        var range = $"from={from}&to={to}";
        var before = await server.GetAsync<ProbeRecordView>($"/api/v1/probes/ph/record?{range}");
        Assert.Equal(7.4, Read(before.Corrected!), 1e-9);

        // Made by hand over a day that ends a moment from now: all but all of the gap has grown.
        await WholeServer.ReadAsync<CorrectionView>(await server.PutAsync(
            $"/api/v1/corrections/{Guid.CreateVersion7()}", new MakeCorrection("ph", null, null, now - TimeSpan.FromDays(10), now + TimeSpan.FromSeconds(90), -0.05, 0.25, null, null, 0.04, "I. Brandvold", "cleaned and calibrated")));
        var after = await server.GetAsync<ProbeRecordView>($"/api/v1/probes/ph/record?{range}&show=both&tier=quarter_hour");
        Assert.Equal(7.4, Read(after.Raw!), 1e-9);
        Assert.Equal(7.6, Read(after.Corrected!), 0.001);
        Assert.InRange(after.U!.Last(u => u is not null)!.Value, 0.0399, 0.08);
        Assert.Single(after.Corrections);
        Assert.Null((await server.GetAsync<ProbeRecordView>($"/api/v1/probes/ph/record?{range}&show=raw")).Corrected);
        Assert.Null((await server.GetAsync<ProbeRecordView>($"/api/v1/probes/ph/record?{range}&show=corrected&tier=day")).Raw);
        var trend = await server.GetAsync<SeriesView>($"/api/v1/series?probe=ph&{range}");
        Assert.Equal(7.6, trend.Corrected!.Last(c => c is not null)!.Value, 0.001);
        Assert.Equal(7.4, trend.Mean.Last(c => c is not null)!.Value, 1e-9);

        static double Read(IReadOnlyList<double?> column) => column.Last(v => v is not null)!.Value;
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_day_is_rated_once_something_told_how_far_the_probe_is_off()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 20));
        var range = $"from={WholeServer.Now - TimeSpan.FromMinutes(1)}&to={WholeServer.Now + TimeSpan.FromDays(1)}";
        var untold = (await server.GetAsync<List<DayQualityView>>($"/api/v1/probes/ph/quality?{range}"))[^1];
        Assert.Equal((RecordRating.NotRated, "quality.error_not_known"), (untold.Rating, untold.Why[0].Code));
        await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.38, TestMethod.Photometer))));
        var rated = (await server.GetAsync<List<DayQualityView>>($"/api/v1/probes/ph/quality?{range}"))[^1];
        // Twenty readings of a day that should hold one a second: told, and poor for what is missing.
        Assert.NotNull(rated.Error);
        Assert.InRange(rated.Error.Value, 0.05, 0.3);
        Assert.Contains(rated.Why, w => w.Code is "quality.incomplete" or "quality.error");
    }

    [PeerFact("mosquitto_pub")]
    public async Task Each_day_has_its_own_readings_whatever_the_range_asked_for()
    {
        await using var server = await WholeServer.StartAsync();
        var now = WholeServer.Now;
        // A reading each hour of two days and a half, by device time.
        await server.PublishLinesAsync("hall/pack", Enumerable.Range(0, 60).Select(h => (now - TimeSpan.FromHours(60 - h)).UnixMicroseconds / 1_000_000)
            .Select(at => $$"""[{"bn":"urn:dev:ops:hall:","n":"temperature","t":{{at}},"v":28}]"""));
        foreach (var back in new[] { 2.4, 3, 9.7 })
        {
            var days = await server.GetAsync<List<DayQualityView>>($"/api/v1/probes/water/quality?from={now - TimeSpan.FromDays(back)}&to={now + TimeSpan.FromDays(0.3)}");
            Assert.DoesNotContain(days[^3..], d => d.Why[0].Code == "quality.no_good_readings" || d.Completeness == 0);
            var whole = days[^2].Completeness * TimeSpan.FromDays(1).TotalSeconds;
            Assert.InRange(whole, 22.5, 25.5);
        }
    }

    [Fact]
    public async Task An_id_stands_for_one_correction_and_one_calibration_in_the_whole_plant()
    {
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant + Spa);
        var (id, now) = (Guid.CreateVersion7(), WholeServer.Now);
        var request = new MakeCorrection("ph", null, null, now - TimeSpan.FromDays(2), now - TimeSpan.FromDays(1), null, 0.1, null, null, 0.04, "I. Brandvold", "in buffers");
        await WholeServer.ReadAsync<CorrectionView>(await server.PutAsync($"/api/v1/corrections/{id}", request));
        using var correction = await server.PutAsync($"/api/v1/corrections/{id}", request with { ProbeId = "spa-ph" });
        Assert.Equal(HttpStatusCode.Conflict, correction.StatusCode);
        var calibration = await CalibrateAsync(server, 0.1, TimeSpan.FromHours(1));
        using var other = await server.PutAsync($"/api/v1/calibrations/{calibration}", new ProposeCalibration("spa-ph", CalibrationKind.Offset, 1, 0.1, [], "I. Brandvold", "buffers"));
        Assert.Equal(HttpStatusCode.Conflict, other.StatusCode);
    }

    private const string Spa = """

          - id: spa-circuit
            name: Spa
            pools:
              - id: spa
                name: Spa
                kind: spa
                setting: indoor
                disinfectant: chlorine
                volume_m3: 5
            probes:
              - id: spa-ph
                name: pH
                pool: spa
                measurand: ph
                origin: raw
                topic: spa/ph
                format: number
                range: [0, 14]
                every_seconds: 60
        """;

    [Theory]
    [InlineData("/api/v1/probes/nobody/record?from=2026-03-01T00:00:00Z&to=2026-03-02T00:00:00Z", HttpStatusCode.NotFound)]
    [InlineData("/api/v1/probes/ph/record?from=2026-03-01T00:00:00Z&to=2026-03-02T00:00:00Z&show=nice", HttpStatusCode.BadRequest)]
    [InlineData("/api/v1/probes/ph/record?from=2025-03-01T00:00:00Z&to=2026-03-02T00:00:00Z&tier=quarter_hour", HttpStatusCode.BadRequest)]
    [InlineData("/api/v1/probes/ph/quality?from=2026-03-02T00:00:00Z&to=2026-03-01T00:00:00Z", HttpStatusCode.BadRequest)]
    [InlineData("/api/v1/probes/ph/quality?from=1900-01-01T00:00:00Z&to=1900-01-02T00:00:00Z", HttpStatusCode.OK)]
    public async Task A_question_that_cannot_be_answered_says_so(string address, HttpStatusCode expected)
    {
        await using var server = await WholeServer.StartAsync();
        using var answer = await server.Http.GetAsync(new Uri(address, UriKind.Relative));
        Assert.Equal(expected, answer.StatusCode);
    }

    private static async Task<Guid> CalibrateAsync(WholeServer server, double offset, TimeSpan ago)
    {
        var id = Guid.CreateVersion7();
        using var proposed = await server.PutAsync($"/api/v1/calibrations/{id}", new ProposeCalibration("ph", CalibrationKind.Offset, 1, offset, [], "I. Brandvold", "buffers"));
        Assert.True(proposed.IsSuccessStatusCode, await proposed.Content.ReadAsStringAsync());
        using var decided = await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, "E. Second", "agreed", WholeServer.Now - ago));
        Assert.True(decided.IsSuccessStatusCode, await decided.Content.ReadAsStringAsync());
        return id;
    }
}
