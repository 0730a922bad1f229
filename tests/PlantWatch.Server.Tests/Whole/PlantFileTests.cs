using System.Net;
using System.Net.Http.Headers;
using System.Runtime.Versioning;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.PlantFile.Editing;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The plant file through the interface: read, tried, saved; what was there before is kept, and the record says who and why.</summary>
public sealed class PlantFileTests
{
    private const string Address = "/api/v1/plant-file";

    // The house pulls no key of its own out: a comment, an odd indent and a blank line must come back as they are.
    private static readonly string Plant = "# ours\n\n" + WholeServer.Plant.ReplaceLineEndings("\n").Replace("volume_m3: 400", "volume_m3: 400   # measured in 2019", StringComparison.Ordinal) + "\n";

    [Fact]
    public async Task A_change_by_key_is_tried_saved_in_force_and_in_the_record_with_name_and_reason()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        Assert.Equal((Plant, true, true, true), (view.Text, view.Exists, view.InForce, view.Writable));
        Assert.Equal("Bramble Street Baths", view.Tree!["site"]!["name"]!.GetValue<string>());

        var check = await CheckAsync(server, new PlantFileEdit("set", "circuits[0].pools[0].volume_m3", 410));
        Assert.Equal(Plant.Replace("400 ", "410 ", StringComparison.Ordinal), check.Text);
        Assert.Equal([LineFate.Removed, LineFate.Added], check.Diff.Select(d => d.Fate).Where(f => f != LineFate.Same));
        Assert.Contains(check.Effects, e => e.Text.Contains("410", StringComparison.Ordinal) && e.Text.Contains("400", StringComparison.Ordinal));
        Assert.Empty(check.Problems);
        Assert.Equal(Plant, await File.ReadAllTextAsync(FileOf(server)));

        var saved = await WholeServer.ReadAsync<PlantFileView>(await SaveAsync(server, check.Text, view.Digest));
        Assert.Equal((check.Text, true), (saved.Text, saved.InForce));
        Assert.Equal(410, (await server.GetAsync<SiteView>("/api/v1/site")).Circuits[0].Pools[0].VolumeM3);
        var row = Assert.Single((await server.GetAsync<EntriesView>("/api/v1/entries?about=limits")).Entries, e => e.Text.Contains("410", StringComparison.Ordinal));
        Assert.Equal("R. Castellan", row.By);
        Assert.Contains("measured anew", row.Text, StringComparison.Ordinal);
        Assert.Equal(Plant, await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(Path.Combine(server.Folder, "data", "plant-files")))));
        Assert.Equal(["data", "plant.yaml"], Directory.GetFileSystemEntries(server.Folder).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task Whoever_has_not_seen_the_newest_version_writes_over_nothing()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        var theirs = Plant.Replace("# ours", "# theirs", StringComparison.Ordinal);
        await File.WriteAllTextAsync(FileOf(server), theirs);
        var answer = await SaveAsync(server, Plant.Replace("400 ", "410 ", StringComparison.Ordinal), view.Digest);
        Assert.Equal(HttpStatusCode.PreconditionFailed, answer.StatusCode);
        Assert.Equal("plant_file.changed_meanwhile", (await ProblemAsync(answer)).Errors[0].Code);
        Assert.Equal(theirs, await File.ReadAllTextAsync(FileOf(server)));
        var unsaid = await server.PutAsync(Address, new SavePlantFile(Plant, "R. Castellan", null));
        Assert.Equal(HttpStatusCode.PreconditionRequired, unsaid.StatusCode);
    }

    [Fact]
    public async Task Of_two_who_save_at_once_one_is_told_to_look_again()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        string[] mine = [.. Enumerable.Range(0, 6).Select(i => Plant.Replace("400 ", $"{410 + i} ", StringComparison.Ordinal))];
        var answers = await Task.WhenAll(mine.Select(text => SaveAsync(server, text, view.Digest)));
        var winner = Assert.Single(answers.Index(), a => a.Item.IsSuccessStatusCode);
        Assert.All(answers.Where(a => a != winner.Item), a => Assert.Equal(HttpStatusCode.PreconditionFailed, a.StatusCode));
        Assert.Equal(mine[winner.Index], await File.ReadAllTextAsync(FileOf(server)));
    }

    [Fact]
    public async Task A_version_with_problems_is_named_line_by_line_and_not_written()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        var check = await CheckAsync(server, new PlantFileEdit("set", "circuits[0].pools[0].volume_m3", "big"), new PlantFileEdit("set", "circuits[0].turn_over", 3));
        Assert.Equal(["circuits[0].turn_over", "circuits[0].pools[0].volume_m3"], check.Problems.Select(p => p.Key).OrderByDescending(k => k.Length).Reverse());
        Assert.All(check.Problems, p => Assert.Contains(p.Key.Split('.')[^1], check.Text.Split('\n')[p.Line - 1], StringComparison.Ordinal));
        Assert.Empty(check.Effects);
        var answer = await SaveAsync(server, check.Text, view.Digest);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(2, (await ProblemAsync(answer)).Errors.Count);
        Assert.Equal(Plant, await File.ReadAllTextAsync(FileOf(server)));
    }

    [Fact]
    public async Task A_change_that_cannot_be_done_in_the_text_is_refused_by_name_and_place()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var check = await CheckAsync(server, new PlantFileEdit("set", "circuits[0].pools[0].limits", new JsonArray()));
        Assert.Equal(("plant_file.edit_block_there", "circuits[0].pools[0].limits"), (check.Refused!.Code, check.Refused.Field));
        Assert.StartsWith("line ", check.Refused.Text, StringComparison.Ordinal);
        Assert.Equal(Plant, check.Text);
    }

    [Fact]
    public async Task A_name_is_asked_for_and_a_foreign_page_or_another_form_of_request_is_turned_away()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        Assert.Equal("by", (await ProblemAsync(await SaveAsync(server, Plant, view.Digest, by: " "))).Errors[0].Field);
        Assert.Equal("text", (await ProblemAsync(await SaveAsync(server, "", view.Digest))).Errors[0].Field);
        Assert.Equal(HttpStatusCode.Forbidden, (await SaveAsync(server, Plant, view.Digest, origin: "https://elsewhere.example")).StatusCode);
        using var form = new HttpRequestMessage(HttpMethod.Put, Address) { Content = new StringContent("text=a", Encoding.UTF8, "text/plain") };
        form.Headers.IfMatch.Add(new EntityTagHeaderValue($"\"{view.Digest}\""));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await server.Http.SendAsync(form)).StatusCode);
        var large = await SaveAsync(server, Plant + new string('#', 7 * 1024 * 1024), view.Digest);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, large.StatusCode);
        Assert.Equal(Plant, await File.ReadAllTextAsync(FileOf(server)));
    }

    [Fact]
    public async Task A_file_of_almost_a_mebibyte_goes_both_ways()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<PlantFileView>(Address);
        var large = Plant + string.Concat(Enumerable.Repeat("# \u00e9 \\ \" a long remark about nothing in particular\n", 19_000));
        var saved = await WholeServer.ReadAsync<PlantFileView>(await SaveAsync(server, large, view.Digest));
        Assert.True(saved.InForce);
        Assert.Equal(large, await File.ReadAllTextAsync(FileOf(server)));
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public async Task Rights_mark_of_UTF8_line_ends_and_a_link_stay_what_they_were()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-whole-").FullName;
        var target = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "real")).FullName, "the-plant.yaml");
        await File.WriteAllTextAsync(target, Plant.ReplaceLineEndings("\r\n"), new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
        File.SetUnixFileMode(target, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead);
        File.CreateSymbolicLink(Path.Combine(folder, "plant.yaml"), target);
        await using var server = await WholeServer.StartAsync(folder);
        var view = await server.GetAsync<PlantFileView>(Address);
        var check = await CheckAsync(server, new PlantFileEdit("set", "circuits[0].turnover_hours", 3.5));
        Assert.True((await WholeServer.ReadAsync<PlantFileView>(await SaveAsync(server, check.Text, view.Digest))).InForce);
        var bytes = await File.ReadAllBytesAsync(target);
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        Assert.Equal(Plant.Replace("    name: Hall\n", "    name: Hall\n    turnover_hours: 3.5\n", StringComparison.Ordinal).ReplaceLineEndings("\r\n"), Encoding.UTF8.GetString(bytes[3..]));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead, File.GetUnixFileMode(target));
        Assert.NotNull(File.ResolveLinkTarget(Path.Combine(folder, "plant.yaml"), returnFinalTarget: false));
    }

    [Fact]
    [UnsupportedOSPlatform("windows")]
    public async Task A_read_only_file_is_said_to_be_so_and_left_alone()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        File.SetUnixFileMode(FileOf(server), UnixFileMode.UserRead);
        var view = await server.GetAsync<PlantFileView>(Address);
        Assert.False(view.Writable);
        var answer = await SaveAsync(server, Plant + "# more\n", view.Digest);
        Assert.Equal((HttpStatusCode.Conflict, "plant_file.not_writable"), (answer.StatusCode, (await ProblemAsync(answer)).Errors[0].Code));
        Assert.Equal(Plant, await File.ReadAllTextAsync(FileOf(server)));
    }

    [Fact]
    public async Task An_empty_plant_starts_calmly_and_becomes_one_step_by_step()
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-whole-").FullName;
        await using var server = await WholeServer.StartAsync(folder, set: o => o.PlantFile = Path.Combine(folder, "ours.yaml"));
        Assert.Empty((await server.GetAsync<HealthView>("/api/v1/health-view")).PlantFile);
        var view = await server.GetAsync<PlantFileView>(Address);
        Assert.Equal((false, true, "", "none", "ours.yaml"), (view.Exists, view.Writable, view.Text, view.Digest, view.Name));
        Assert.Empty(view.Problems);

        var named = await WholeServer.ReadAsync<PlantFileView>(await SaveAsync(server, "site:\n  name: North Quay\n  time_zone: Europe/London\n\ncircuits: []\n", view.Digest));
        Assert.True(named.InForce);
        Assert.Equal("North Quay", (await server.GetAsync<SiteView>("/api/v1/site")).Name);
        var pool = new JsonObject { ["id"] = "main", ["name"] = "Main pool", ["kind"] = "swimming", ["setting"] = "indoor", ["disinfectant"] = "chlorine", ["volume_m3"] = 400 };
        var check = await CheckAsync(server, new PlantFileEdit("add", "circuits", new JsonObject { ["id"] = "hall", ["name"] = "Hall", ["pools"] = new JsonArray(pool) }));
        Assert.Empty(check.Problems);
        Assert.Contains(check.Effects, e => e.Code == "plan.circuit_added");
        var pooled = await WholeServer.ReadAsync<PlantFileView>(await SaveAsync(server, check.Text, named.Digest));
        Assert.Equal("site:\n  name: North Quay\n  time_zone: Europe/London\n\ncircuits:\n  - id: hall\n    name: Hall\n    pools:\n      - id: main\n        name: Main pool\n        kind: swimming\n        setting: indoor\n        disinfectant: chlorine\n        volume_m3: 400\n", pooled.Text);
        Assert.Equal("main", (await server.GetAsync<SiteView>("/api/v1/site")).Circuits.Single().Pools.Single().Id);
        var late = await SaveAsync(server, "site: { name: A, time_zone: UTC }\ncircuits: []\n", "none");
        Assert.Equal(HttpStatusCode.PreconditionFailed, late.StatusCode);
    }

    private static string FileOf(WholeServer server) => Path.Combine(server.Folder, "plant.yaml");

    private static async Task<PlantFileCheck> CheckAsync(WholeServer server, params PlantFileEdit[] edits) =>
        await WholeServer.ReadAsync<PlantFileCheck>(await server.PostAsync($"{Address}/check", new CheckPlantFile(null, edits)));

    private static async Task<HttpResponseMessage> SaveAsync(WholeServer server, string text, string digest, string by = "R. Castellan", string? origin = null)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, Address) { Content = new StringContent(JsonSerializer.Serialize(new SavePlantFile(text, by, "measured anew"), PlantJson.Options), Encoding.UTF8, "application/json") };
        request.Headers.IfMatch.Add(new EntityTagHeaderValue($"\"{digest}\""));
        // Whoever sends too much is told before he has sent it.
        request.Headers.ExpectContinue = true;
        if (origin is not null) request.Headers.Add("Origin", origin);
        return await server.Http.SendAsync(request);
    }

    private static async Task<Problem> ProblemAsync(HttpResponseMessage answer) => JsonSerializer.Deserialize<Problem>(await answer.Content.ReadAsStringAsync(), PlantJson.Options)!;
}
