using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Jobs of maintenance, planned tasks, and how often things failed.</summary>
internal static class JobApi
{
    private const int Shown = 2000;

    public static void MapJobs(this RouteGroupBuilder api)
    {
        api.MapPut("/jobs/{id:guid}", PutAsync).Produces<JobView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapGet("/jobs", ListAsync).Produces<IReadOnlyList<JobView>>();
        api.MapGet("/jobs/{id:guid}", VersionsAsync).Produces<IReadOnlyList<JobVersion>>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapGet("/tasks", (PlantHost host, TimeProvider clock) =>
            Answers.Ok(host.Circuits.ToArray().SelectMany(w => JobViews.Tasks(w.State, Instant.From(clock.GetUtcNow()))).OrderBy(t => t.DueAt).ToArray())).Produces<IReadOnlyList<TaskView>>();
        api.MapGet("/reliability", ReliabilityAsync).Produces<IReadOnlyList<ReliabilityView>>().Produces<Problem>(StatusCodes.Status400BadRequest);
    }

    private static async Task<IResult> PutAsync(Guid id, JobRequest request, PlantHost host, IRecordStore store, IPictureStore pictures, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (TooLong(request) is { } tooLong) return tooLong;
        if (host.WithAsset(request.Asset) is not { } worker) return Answers.Invalid("asset", "asset.not_known");
        var job = new Job(id, request.Asset!, request.Seen ?? "", request.Done, request.State, request.AlarmId, request.By.Trim(), Instant.Never)
        {
            TaskId = request.TaskId, Parts = [.. request.Parts ?? []], Minutes = request.Minutes, Pictures = [.. request.Pictures ?? []],
        };
        var rows = await RowsAsync(store, worker, job.Asset, cancellation);
        if (IsThereAlready([.. rows.Select(r => r.Body).OfType<JobEntry>().Select(e => e.Job).Where(j => j.Id == id)], job, request.After)) return Answers.Ok(One(worker.State, rows, id));
        if (await IsOfAnotherAsync(job, host, store, cancellation)) return Answers.Conflict("id", "id.taken");
        if (JobObjection.Of(worker.State.Plan, job) is { } objection) return Answers.From(objection);
        // Tied before the job is written: the record never names a picture that may go.
        if (!job.Pictures.IsEmpty && (await pictures.TieAsync(job.Pictures, cancellation)).Count > 0) return Answers.Invalid("pictures", "picture.not_there");
        var outcome = await host.SendAsync(worker.Partition.Value, at => new JobWritten(at, job), cancellation);
        return outcome is Outcome.TurnedDown no ? Answers.From(no) : Answers.Ok(One(worker.State, await RowsAsync(store, worker, job.Asset, cancellation), id));
    }

    // The state forgets a job once it is over, and a phone that lost the answer sends it again: it is not written twice. An older version that comes late opens nothing anew;
    // whoever means it says after which version it was written.
    private static bool IsThereAlready(Job[] versions, Job said, Instant? after) =>
        versions is [var newest, ..] && (newest.SaysWhat(said) || (after != newest.At && versions.Any(v => v.SaysWhat(said))));

    private static async Task<IResult> ListAsync(string? asset, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var jobs = new List<JobView>();
        foreach (var worker in host.Circuits.ToArray()) jobs.AddRange(JobViews.OfRecord(worker.State, await RowsAsync(store, worker, asset, cancellation), Reader.Words));
        return Answers.Ok(jobs.OrderByDescending(j => j.At).ToArray());
    }

    private static async Task<IResult> VersionsAsync(Guid id, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        foreach (var worker in host.Circuits.ToArray())
            if (JobViews.Versions(await RowsAsync(store, worker, null, cancellation), id, Reader.Words) is { Count: > 0 } versions) return Answers.Ok(versions);
        return Answers.NotFound($"job {id}");
    }

    private static async Task<IResult> ReliabilityAsync(double? days, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (days is not (null or (>= 1 and <= 3660))) return Answers.Invalid("days", "reliability.days");
        var (to, all) = (Instant.From(clock.GetUtcNow()), new List<ReliabilityView>());
        var from = to - TimeSpan.FromDays(days ?? 365);
        foreach (var worker in host.Circuits.ToArray())
        {
            var jobs = JobViews.OfRecord(worker.State, await RowsAsync(store, worker, null, cancellation), Reader.Words).Where(j => j.TaskId is null).ToLookup(j => j.Asset);
            foreach (var asset in worker.State.Plan.Things())
                all.Add(JobViews.Of(worker.State.Plan, asset, Reliability.Of(jobs[asset].Select(FailureOf), from, to), to - from));
        }

        return Answers.Ok(all.OrderByDescending(r => r.RepeatOffender).ThenByDescending(r => r.Failures).ThenBy(r => r.AssetName, StringComparer.Ordinal).ToArray());
    }

    private static Failure FailureOf(JobView job) => new(job.OpenedAt, job.DoneAt ?? Instant.Never, job.Effect);

    private static JobView? One(CircuitState state, IReadOnlyList<RecordEntry> rows, Guid id) => JobViews.OfRecord(state, rows, Reader.Words).FirstOrDefault(j => j.Id == id);

    private static async Task<IReadOnlyList<RecordEntry>> RowsAsync(IRecordStore store, CircuitWorker worker, string? asset, CancellationToken cancellation) =>
        await store.EntriesAsync(worker.Partition, new EntryQuery(["fault", "job_effect"], asset, Limit: Shown), cancellation);

    // A job stays with what it is about: under its id on another thing it would be lost from this one. What the plant file no longer names has another name now.
    private static async Task<bool> IsOfAnotherAsync(Job job, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        foreach (var circuit in host.Circuits.ToArray())
        {
            if (circuit.State.Jobs.GetValueOrDefault(job.Id) is { } open) return open.Job.Asset != job.Asset;
            var rows = await RowsAsync(store, circuit, null, cancellation);
            if (rows.Select(r => r.Body).OfType<JobEntry>().FirstOrDefault(e => e.Job.Id == job.Id) is { } kept) return kept.Job.Asset != job.Asset && host.WithAsset(kept.Job.Asset) is not null;
        }

        return false;
    }

    private static IResult? Nameless(IReadOnlyList<PartUsed> parts)
    {
        for (var i = 0; i < parts.Count; i++)
            if (string.IsNullOrWhiteSpace(parts[i].Name)) return Answers.Invalid($"parts[{i}].name", "field.required");
        return null;
    }

    private static IResult? TooLong(JobRequest request) =>
        Bounds.OfName("by", request.By) ?? Bounds.OfRemark("seen", request.Seen) ?? Bounds.OfRemark("done", request.Done) ?? Bounds.OfName("taskId", request.TaskId)
        ?? Bounds.OfList("pictures", request.Pictures ?? [], Job.MostPictures) ?? Bounds.OfList("parts", request.Parts ?? [], 50) ?? Nameless(request.Parts ?? [])
        ?? (request.Parts ?? []).Select(p => Bounds.OfName("parts", p.Name) ?? Bounds.OfName("parts", p.Number)).FirstOrDefault(r => r is not null);
}
