using System.Net;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Maintenance.Pictures;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A phone without signal sends late and more than once; nothing of that may undo what was written since.</summary>
public sealed class JobVersionTests
{
    private static readonly JobRequest Open = new("acid-pump", "no stroke", null, JobState.Open, null, "T. Wren");
    private static readonly JobRequest Done = Open with { Done = "new hose", State = JobState.Done };

    [Fact]
    public async Task An_older_version_sent_again_opens_nothing_anew_and_one_that_is_meant_does()
    {
        await using var server = await WholeServer.StartAsync();
        var job = $"/api/v1/jobs/{Guid.CreateVersion7()}";
        await server.PutAsync(job, Open);
        var done = await WholeServer.ReadAsync<JobView>(await server.PutAsync(job, Done));
        Assert.Equal(JobState.Done, (await WholeServer.ReadAsync<JobView>(await server.PutAsync(job, Open))).State);
        Assert.Equal(2, (await server.GetAsync<List<JobVersion>>(job)).Count);
        // After having seen that it was done: it drips again.
        Assert.Equal(JobState.Open, (await WholeServer.ReadAsync<JobView>(await server.PutAsync(job, Open with { After = done.At }))).State);
        Assert.Equal(JobState.Open, (await WholeServer.ReadAsync<JobView>(await server.PutAsync(job, Open with { After = done.At }))).State);
        Assert.Equal([JobState.Open, JobState.Done, JobState.Open], (await server.GetAsync<List<JobVersion>>(job)).Select(v => v.State));
    }

    [Fact]
    public async Task A_job_that_cannot_be_written_is_refused_before_its_pictures_are_asked_for()
    {
        await using var server = await WholeServer.StartAsync();
        // Done, and not what was done: were its picture tied first, that would stay for good in no job.
        var answer = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", Open with { State = JobState.Done, Pictures = [Picture.HashOf([0xFF, 0xD8, 0xFF])] });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("fault.say_what_was_done", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\u200B")]
    [InlineData(" \u200D\uFEFF ")]
    public async Task A_name_that_nobody_can_see_is_none(string by)
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", Open with { By = by })).StatusCode);
        Assert.Empty(await server.GetAsync<List<JobView>>("/api/v1/jobs"));
    }
}
