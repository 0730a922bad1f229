using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Commands;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Server.WhatIf;

namespace PlantWatch.Server.Tests.WhatIf;

/// <summary>The what-if on limits over the interface of a whole server that stands on two lived days.</summary>
public sealed class LimitRunsTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-runs-").FullName;
    private WholeServer _server = null!;

    public async Task InitializeAsync()
    {
        await LimitReplayTests.LiveAsync(Path.Combine(_folder, "data"));
        _server = await WholeServer.StartAsync(_folder, LimitReplayTests.Plant);
    }

    public async Task DisposeAsync() => await _server.DisposeAsync();

    [Fact]
    public async Task What_can_be_asked_is_told_with_what_is_in_force()
    {
        var choices = await _server.GetAsync<WhatIfLimitsChoices>("/api/v1/what-if/limits");
        Assert.Equal(LivedRecord.Start, choices.RecordBegins);
        Assert.Equal(["A. Reed"], choices.MayLoosen);
        var ph = Assert.Single(Assert.Single(choices.Pools).Quantities, q => q.Measurand == Measurand.Ph);
        Assert.Equal((7.0, 7.6, 0.05, 120.0, true), (ph.Low, ph.High, ph.Deadband, ph.OnDelaySeconds, ph.Watched));
        Assert.Equal(new ValueRange(6.5, 8.2), ph.Stop);
    }

    [Fact]
    public async Task A_run_answers_with_what_was_gained_and_the_line_to_copy_and_changes_nothing()
    {
        var before = PlantJson.Hash(PlantJson.Write(_server.Host.Find("hall")!.State with { Watermark = default }));
        var asked = await AskAsync(High(7.5));
        Assert.Contains(asked.State, (RunState[])[RunState.Waiting, RunState.Running, RunState.Done]);
        var done = await EndAsync(asked.Id);
        Assert.Equal(RunState.Done, done.State);
        var result = done.Result!;
        Assert.True(result.GainedCount > 0);
        // What is beyond its limit already no longer heads for it.
        Assert.All(result.Lost, a => Assert.Equal("R-017", a.Rule));
        Assert.Equal((result.Lost.Count, 0), (result.LostCount, result.LostCritical));
        Assert.Equal(result.Before.Alarms + result.GainedCount - result.LostCount, result.After.Alarms);
        Assert.Equal(result.Recorded, result.FoundAgain);
        Assert.Contains(result.Gained, a => a is { Rule: "R-011", Pool: "main", SubjectName: "Main pool, pH", Minutes: > 1 });
        Assert.Equal("""- { measurand: ph, low: 7, high: 7.5, source: "the hall's own sheet" }""", Assert.Single(done.Lines).Line);
        Assert.Contains(result.Notes, n => n.Code == "what_if.learned_again");
        Assert.Equal(before, PlantJson.Hash(PlantJson.Write(_server.Host.Find("hall")!.State with { Watermark = default })));
    }

    [Fact]
    public async Task Two_at_once_come_one_after_the_other_and_a_cancelled_one_stays_without_result()
    {
        var (first, second, third) = (await AskAsync(High(7.5)), await AskAsync(High(7.9)), await AskAsync(High(7.8)));
        var cancelled = await _server.Http.DeleteFromJsonAsync<WhatIfLimitsRun>($"/api/v1/what-if/limits/{third.Id}", PlantJson.Options);
        Assert.Equal(RunState.Cancelled, cancelled!.State);
        Assert.Equal(RunState.Done, (await EndAsync(second.Id)).State);
        Assert.Equal(RunState.Done, (await RunAsync(first.Id)).State);
        var never = await RunAsync(third.Id);
        Assert.Equal((RunState.Cancelled, null), (never.State, never.Result));
    }

    [Theory]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [] }""", "changes", "field.required")]
    [InlineData("""{ "from": "2026-03-04T00:00:00Z", "to": "2026-03-03T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "high": 7.5 }] }""", "from", "what_if.from")]
    [InlineData("""{ "from": "2020-03-04T00:00:00Z", "to": "2026-03-03T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "high": 7.5 }] }""", "from", "what_if.too_long")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "spa", "measurand": "ph", "high": 7.5 }] }""", "changes[0].pool", "pool.unknown")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph" }] }""", "changes[0]", "plant_file")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "low": 7.6, "high": 7.5 }] }""", "changes[0].low", "plant_file")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "low": 7.2, "high": 8.4 }] }""", "changes[0].high", "what_if.beyond_stop")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "high": 7.5, "onDelaySeconds": 5000 }] }""", "changes[0].onDelaySeconds", "plant_file")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "high": 7.5, "loosenedBy": "Nobody", "loosenedWhy": "so" }] }""", "changes[0].loosenedBy", "plant_file")]
    [InlineData("""{ "from": "2026-03-02T00:00:00Z", "to": "2026-03-04T00:00:00Z", "changes": [{ "pool": "main", "measurand": "ph", "high": 7.5 }, { "pool": "main", "measurand": "ph", "high": 7.4 }] }""", "changes[1].measurand", "what_if.limit_twice")]
    public async Task Wrong_input_is_said_beside_its_field(string request, string field, string code)
    {
        var answer = await _server.Http.PostAsync("/api/v1/what-if/limits", new StringContent(request, System.Text.Encoding.UTF8, "application/json"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var problem = await answer.Content.ReadFromJsonAsync<Problem>(PlantJson.Options);
        var said = Assert.Single(problem!.Errors);
        Assert.Equal((field, code), (said.Field, said.Code));
        Assert.True(said.Text.Length > 10);
    }

    [Fact]
    public async Task A_run_that_nobody_knows_is_not_found() =>
        Assert.Equal(HttpStatusCode.NotFound, (await _server.Http.GetAsync($"/api/v1/what-if/limits/{Guid.CreateVersion7()}")).StatusCode);

    private static WhatIfLimit High(double high) => new() { Pool = "main", Measurand = Measurand.Ph, Low = 7.0, High = high };

    private async Task<WhatIfLimitsRun> AskAsync(params WhatIfLimit[] changes)
    {
        var request = new WhatIfLimitsRequest(LivedRecord.Start, LivedRecord.Start + TimeSpan.FromHours(48), changes);
        var answer = await _server.Http.PostAsJsonAsync("/api/v1/what-if/limits", request, PlantJson.Options);
        Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<WhatIfLimitsRun>(PlantJson.Options))!;
    }

    private Task<WhatIfLimitsRun> RunAsync(Guid id) => _server.GetAsync<WhatIfLimitsRun>($"/api/v1/what-if/limits/{id}");

    private async Task<WhatIfLimitsRun> EndAsync(Guid id)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        while (true)
        {
            var run = await RunAsync(id);
            if (run.State is not (RunState.Waiting or RunState.Running)) return run;
            if (patience.IsCancellationRequested) Assert.Fail("the run does not come to its end");
            await Task.Delay(50);
        }
    }
}
