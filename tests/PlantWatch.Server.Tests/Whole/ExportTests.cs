using System.Globalization;
using System.Net;
using CsvHelper;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>What the strips of a pool show, taken away as a file.</summary>
public sealed class ExportTests
{
    private static readonly string Berlin = WholeServer.Plant.Replace("Europe/London", "Europe/Berlin", StringComparison.Ordinal);

    [PeerFact("mosquitto_pub")]
    public async Task Single_readings_stand_with_both_clocks_their_quality_the_gap_the_tests_and_the_notes()
    {
        await using var server = await WholeServer.StartAsync(plant: Berlin);
        var start = (WholeServer.Now.UnixMilliseconds / 1000) - 600;
        await server.PublishAsync("hall/pack", $"[{string.Join(',', new[] { 0, 1, 2, 60, 61 }.Select(s => FormattableString.Invariant($"{{\"n\":\"urn:dev:ops:hall:temperature\",\"t\":{start + s},\"v\":{28 + (s % 10)}}}")))}]");
        var sampled = Instant.FromUnixMilliseconds((start + 30) * 1000);
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(sampled, new TestResult(Measurand.FreeChlorine, 1.2, TestMethod.Photometer), new TestResult(Measurand.TotalChlorine, 1.5, TestMethod.Photometer)) with { Note = "=1+1" });
        await server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", new NoteRequest("main", sampled, sampled + TimeSpan.FromSeconds(90), "-5 children, \"loud\"", "R. Castellan"));

        var rows = await RowsAsync(server, $"from={Instant.FromUnixMilliseconds((start - 5) * 1000)}&to={Instant.FromUnixMilliseconds((start + 120) * 1000)}&width=4000");
        var water = rows.Where(r => r["kind"] == "reading" && r["subject"] == "water").ToArray();
        Assert.Equal(["28", "29", "30", "28", "29"], water.Select(r => r["raw"]));
        Assert.All(water, r => Assert.NotEqual("", r["quality"]));
        Assert.Single(rows, r => r["kind"] == "gap" && r["subject"] == "water");
        foreach (var row in rows)
        {
            Assert.Equal("Europe/Berlin", row["zone"]);
            Assert.EndsWith("Z", row["utc_time"], StringComparison.Ordinal);
            var (local, utc) = (DateTimeOffset.Parse(row["local_time"], CultureInfo.InvariantCulture), DateTimeOffset.Parse(row["utc_time"], CultureInfo.InvariantCulture));
            Assert.Equal(utc, local);
            Assert.Equal(TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin").GetUtcOffset(utc), local.Offset);
        }

        Assert.Equal([("free_chlorine", "1.2", "photometer"), ("total_chlorine", "1.5", "photometer"), ("combined_chlorine", "0.3", "worked_out")], rows.Where(r => r["kind"] == "test").Select(r => (r["quantity"], r["raw"], r["quality"])));
        Assert.Contains(rows, r => r["kind"] == "test" && r["text"].Length > 0);
        // What a spreadsheet would work out is made text.
        Assert.All(rows.Where(r => r["kind"] == "test" && r["text"].Length > 0), r => Assert.Equal("'=1+1", r["text"]));
        var note = Assert.Single(rows, r => r["kind"] == "note");
        Assert.Equal(("'-5 children, \"loud\"", "90", "R. Castellan"), (note["text"], note["covers_s"], note["by"]));
    }

    [PeerFact("mosquitto_pub")]
    public async Task Means_stand_with_their_spread_how_many_were_good_and_corrected_beside_raw()
    {
        await using var server = await WholeServer.StartAsync(plant: Berlin);
        var start = ((WholeServer.Now.UnixMilliseconds / 1000) - 7200) / 60 * 60;
        await server.PublishAsync("hall/pack", $"[{string.Join(',', Enumerable.Range(0, 600).Select(s => FormattableString.Invariant($"{{\"n\":\"urn:dev:ops:hall:temperature\",\"t\":{start + s},\"v\":{28 + (s % 2)}}}")))}]");
        var id = Guid.CreateVersion7();
        await server.PutAsync($"/api/v1/calibrations/{id}", new ProposeCalibration("water", CalibrationKind.Offset, 1, -30, [], "R. Castellan", null));
        var holds = await server.PostAsync($"/api/v1/calibrations/{id}/decision", new DecideCalibration(CalibrationStatus.Approved, "T. Wren", "by the thermometer", Instant.FromUnixMilliseconds((start - 60) * 1000)));
        Assert.True(holds.IsSuccessStatusCode, await holds.Content.ReadAsStringAsync());
        var rows = await RowsAsync(server, $"from={Instant.FromUnixMilliseconds(start * 1000)}&to={Instant.FromUnixMilliseconds((start + 600) * 1000)}&width=10");
        var means = rows.Where(r => r["kind"] == "reading" && r["subject"] == "water").ToArray();
        Assert.Equal(10, means.Length);
        // Thirty readings of 28 and thirty of 29 a minute; less thirty the mean is -1.5, and a number below zero stays one.
        Assert.All(means, r => Assert.Equal(("28.5", "28", "29", "-1.5", "60", "60"), (r["raw"], r["raw_min"], r["raw_max"], r["corrected"], r["covers_s"], r["readings"])));
    }

    [Fact]
    public async Task The_file_and_the_pictures_say_of_which_plant_pool_and_time_they_are()
    {
        await using var server = await WholeServer.StartAsync(plant: Berlin);
        const string Day = "from=2026-03-29T00:00:00Z&to=2026-03-29T12:00:00Z";
        using var csv = await server.Http.GetAsync(new Uri($"/api/v1/exports/pools/main.csv?{Day}", UriKind.Relative));
        Assert.Equal("text/csv", csv.Content.Headers.ContentType?.MediaType);
        // The clock of Berlin sprang forward that night: midnight UTC is one o'clock, noon UTC is two.
        Assert.Equal("Bramble-Street-Baths-Main-pool-20260329-0100-20260329-1400.csv", csv.Content.Headers.ContentDisposition?.FileName);
        var svg = await server.Http.GetStringAsync(new Uri($"/api/v1/charts/pools/main.svg?{Day}", UriKind.Relative));
        Assert.Contains("Bramble Street Baths, Main pool, 2026-03-29 01:00 \u2013 2026-03-29 14:00 Europe/Berlin", svg, StringComparison.Ordinal);
        using var png = await server.Http.GetAsync(new Uri($"/api/v1/charts/pools/main.png?{Day}&look=raw", UriKind.Relative));
        Assert.Contains("Bramble-Street-Baths-Main-pool", png.Content.Headers.ContentDisposition?.FileName, StringComparison.Ordinal);
        foreach (var (path, status) in new[] { ("main.txt", HttpStatusCode.NotFound), ("nowhere.csv", HttpStatusCode.NotFound) })
            Assert.Equal(status, (await server.Http.GetAsync(new Uri($"/api/v1/exports/pools/{path}?{Day}", UriKind.Relative))).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.GetAsync(new Uri("/api/v1/exports/pools/main.csv?from=2026-03-29T00:00:00Z&to=yesterday", UriKind.Relative))).StatusCode);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_picture_holds_the_notes_that_stand_and_the_other_day_that_was_looked_at()
    {
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant.Replace("Europe/London", "UTC", StringComparison.Ordinal));
        var now = WholeServer.Now.UnixMilliseconds / 1000;
        foreach (var start in new[] { now - 86_400 - 600, now - 600 })
            await server.PublishAsync("hall/pack", $"[{string.Join(',', Enumerable.Range(0, 30).Select(s => FormattableString.Invariant($"{{\"n\":\"urn:dev:ops:hall:temperature\",\"t\":{start + (10 * s)},\"v\":{28 + (s % 2)}}}")))}]");
        var at = Instant.FromUnixMilliseconds((now - 500) * 1000);
        var wrong = Guid.CreateVersion7();
        await server.PutAsync($"/api/v1/notes/{wrong}", new NoteRequest("main", at, at, "Wrong pool", "R. Castellan"));
        await server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", new NoteRequest("main", at, at, "Wrong pool", "R. Castellan") { Corrects = wrong, Why = "it was the other one", Retracted = true });
        await server.PutAsync($"/api/v1/notes/{Guid.CreateVersion7()}", new NoteRequest("main", at, at + TimeSpan.FromSeconds(300), "Swim meet", "R. Castellan"));

        Task<string> SvgAsync(string more) => server.Http.GetStringAsync(new Uri($"/api/v1/charts/pools/main.svg?from={Instant.FromUnixMilliseconds((now - 900) * 1000)}&to={Instant.FromUnixMilliseconds((now - 100) * 1000)}{more}", UriKind.Relative));
        var plain = await SvgAsync("");
        Assert.Contains("Swim meet", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("Wrong pool", plain, StringComparison.Ordinal);
        Assert.DoesNotContain("the day before", plain, StringComparison.Ordinal);
        Assert.Contains("the day before", await SvgAsync("&compare=yesterday"), StringComparison.Ordinal);
        // Nothing was measured a week ago: a key to nothing would be a lie.
        Assert.DoesNotContain("the week before", await SvgAsync("&compare=last_week"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_table_is_made_at_a_time_and_who_would_wait_long_is_told()
    {
        await using var server = await WholeServer.StartAsync();
        var path = new Uri("/api/v1/exports/pools/main.csv?from=2026-03-29T00:00:00Z&to=2026-03-29T12:00:00Z", UriKind.Relative);
        using (await server.ExportTurn.TakeAsync(TimeSpan.Zero, CancellationToken.None))
        {
            using var busy = await server.Http.GetAsync(path);
            Assert.Equal(HttpStatusCode.TooManyRequests, busy.StatusCode);
            Assert.Contains("export.busy", await busy.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        using var after = await server.Http.GetAsync(path);
        Assert.Equal(HttpStatusCode.OK, after.StatusCode);
    }

    [PeerFact("mosquitto_pub")]
    public async Task What_the_file_does_not_hold_is_said_in_its_last_row_in_the_language_of_the_reader_and_not_where_it_holds_all()
    {
        await using var server = await WholeServer.StartAsync(plant: Berlin);
        var start = (WholeServer.Now.UnixMilliseconds / 1000) - 600;
        await server.PublishAsync("hall/pack", $"[{string.Join(',', Enumerable.Range(0, 4).Select(s => FormattableString.Invariant($"{{\"n\":\"urn:dev:ops:hall:temperature\",\"t\":{start + s},\"v\":{28 + s}}}")))}]");
        var query = $"from={Instant.FromUnixMilliseconds((start - 5) * 1000)}&to={Instant.FromUnixMilliseconds((start + 120) * 1000)}&width=4000&language=de";
        server.ExportTurn.MostReadings = 4;
        Assert.DoesNotContain(await RowsAsync(server, query), r => r["kind"] == "cut");

        server.ExportTurn.MostReadings = 3;
        var rows = await RowsAsync(server, query);
        Assert.Equal(["28", "29", "30"], rows.Where(r => r["kind"] == "reading" && r["subject"] == "water").Select(r => r["raw"]));
        Assert.Equal(("cut", "Main pool", "Diese Datei enthält nicht alles: von Temperature die ersten 3 Messwerte der verlangten Zeit; den Rest mit einem späteren Beginn holen"), (rows[^1]["kind"], rows[^1]["pool"], rows[^1]["text"]));
    }

    private static async Task<List<Dictionary<string, string>>> RowsAsync(WholeServer server, string query)
    {
        using var csv = new CsvReader(new StringReader(await server.Http.GetStringAsync(new Uri($"/api/v1/exports/pools/main.csv?{query}", UriKind.Relative))), CultureInfo.InvariantCulture);
        List<Dictionary<string, string>> rows = [];
        await csv.ReadAsync();
        csv.ReadHeader();
        while (await csv.ReadAsync()) rows.Add(csv.HeaderRecord!.ToDictionary(h => h.TrimStart('\ufeff'), h => csv.GetField(h) ?? ""));
        return rows;
    }
}
