using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>The bench: a probe is taken out, put into solutions of known value, signed for and looked over by somebody else.</summary>
internal static class BenchApi
{
    // An electrode stands in one solution for minutes; what is older is another one.
    private static readonly TimeSpan Longest = TimeSpan.FromHours(1);
    private const int MostReadings = 4000;

    public static void MapBench(this RouteGroupBuilder api)
    {
        api.MapGet("/bench/{probeId}", ViewAsync).Produces<BenchView>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPost("/bench/{probeId}/result", Result).Produces<SheetResult>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapPut("/bench/{probeId}/sheets/{id:guid}", SignAsync).Produces<CalibrationView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPut("/bench/{probeId}/out/{id:guid}", BeginAsync).Produces<WorkView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPost("/bench/{probeId}/out/{id:guid}/back", EndAsync).Produces<WorkView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPost("/calibrations/{id:guid}/review", ReviewAsync).Produces<CalibrationView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/calibrations/{id:guid}", (Guid id, PlantHost host) =>
            host.WithCalibration(id) is { } worker && Kept(worker.State, id) is { } view ? Answers.Ok(view) : Answers.NotFound($"calibration {id}")).Produces<CalibrationView>();
    }

    private static async Task<IResult> ViewAsync(string probeId, string? since, PlantHost host, ISeriesStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (Find(host, probeId) is not var (worker, state, index)) return Answers.NotFound($"probe {probeId}");
        var (plan, now) = (state.Plan.Probes[index], Instant.From(clock.GetUtcNow()));
        if (since is null) return Answers.Ok(BenchViews.Of(state, index, null, now, Reader.Words));
        if (!Instant.TryParse(since, out var from)) return Answers.Invalid("since", "field.time");
        if (Settling.MostSpan(plan.Measurand) is null) return Answers.Ok(BenchViews.Of(state, index, null, now, Reader.Words));
        var readings = await store.RawAsync(worker.Partition, probeId, Instant.Later(from, now - Longest), now + TimeSpan.FromMinutes(1), MostReadings, cancellation);
        var settled = Settling.Of(plan.Measurand, plan.Every, [.. readings.Select(r => (r.MeasuredAt, r.Raw))]);
        return Answers.Ok(BenchViews.Of(state, index, settled, now, Reader.Words));
    }

    private static IResult Result(string probeId, SheetRequest request, PlantHost host, TimeProvider clock)
    {
        if (Find(host, probeId) is not var (_, state, index)) return Answers.NotFound($"probe {probeId}");
        if (SheetRequests.Objection(request) is { } no) return no;
        var plan = state.Plan.Probes[index];
        var held = CalibrationsInForce.At(state.Calibrations, probeId, request.EndedAt.IsSet ? request.EndedAt : Instant.From(clock.GetUtcNow()));
        return BenchResult.TryOf(plan, SheetRequests.Work(request), SheetRequests.Sheet(request), held, out var result, out var remark)
            ? Answers.Ok(new SheetResult(result!.Kind, result.Status, result.Slope, result.Offset, BenchViews.Sheet(result.Sheet, plan.Measurand, Reader.Words)!))
            : Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", [Reader.Words.Say(remark!)]);
    }

    private static async Task<IResult> SignAsync(string probeId, Guid id, SheetRequest request, PlantHost host, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (SheetRequests.Objection(request) is { } no) return no;
        if (host.WithProbe(probeId) is not { } worker) return Answers.NotFound($"probe {probeId}");
        // An id stands for one calibration in the whole plant.
        if (host.WithCalibration(id) is { } other && other != worker) return Answers.Conflict("id", "id.taken");
        var proposal = new Calibration
        {
            Id = id, ProbeId = probeId, ProposedBy = request.By.Trim(), Note = string.IsNullOrWhiteSpace(request.Note) ? null : request.Note.Trim(),
            Work = SheetRequests.Work(request), Sheet = SheetRequests.Sheet(request),
        };
        return Say(await host.SendAsync(worker.Partition.Value, at => new CalibrationProposed(at, proposal), cancellation), worker, id);
    }

    private static Task<IResult> BeginAsync(string probeId, Guid id, WorkRequest request, PlantHost host, TimeProvider clock, CancellationToken cancellation) =>
        TimeOrderedId.IsVersion7(id)
            ? WorkAsync(probeId, request, host, clock, at => new ProbeWorkBegun(at, id, probeId, request.By!.Trim()), cancellation)
            : Task.FromResult(Answers.Invalid("id", "id.not_version_7"));

    private static Task<IResult> EndAsync(string probeId, Guid id, WorkRequest request, PlantHost host, TimeProvider clock, CancellationToken cancellation) =>
        WorkAsync(probeId, request, host, clock, at => new ProbeWorkEnded(at, id, probeId, request.By!.Trim()), cancellation);

    private static async Task<IResult> WorkAsync(string probeId, WorkRequest request, PlantHost host, TimeProvider clock, Func<Instant, PlantEvent> make, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (Bounds.OfName("by", request.By) is { } tooLong) return tooLong;
        if (host.WithProbe(probeId) is not { } worker) return Answers.NotFound($"probe {probeId}");
        if (await host.SendAsync(worker.Partition.Value, make, cancellation) is Outcome.TurnedDown no) return Answers.From(no);
        var kept = worker.State.Probes.FirstOrDefault(p => p.Id == probeId)?.Work ?? default;
        return BenchViews.Work(kept, Instant.From(clock.GetUtcNow())) is { } view ? Answers.Ok(view) : Answers.NotFound($"work on {probeId}");
    }

    private static async Task<IResult> ReviewAsync(Guid id, ReviewRequest request, PlantHost host, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } no) return no;
        if (host.WithCalibration(id) is not { } worker) return Answers.NotFound($"calibration {id}");
        if (request.Accepted && SecondPerson.Objection(worker.State, id, request.By) is { } second) return Answers.From(second);
        return Say(await host.SendAsync(worker.Partition.Value, at => new CalibrationReviewed(at, id, request.Accepted, request.By.Trim(), request.Why?.Trim()), cancellation), worker, id);
    }

    private static (CircuitWorker Worker, CircuitState State, int Index)? Find(PlantHost host, string probeId)
    {
        if (host.WithProbe(probeId) is not { } worker) return null;
        var state = worker.State;
        for (var i = 0; i < state.Probes.Length; i++)
            if (state.Plan.Probes[i].Id == probeId) return (worker, state, i);
        return null;
    }

    private static CalibrationView? Kept(CircuitState state, Guid id) =>
        state.Calibrations.FirstOrDefault(c => c.Id == id) is { } kept ? CircuitViews.Calibration(kept, state, Reader.Words) : null;

    private static IResult Say(Outcome outcome, CircuitWorker worker, Guid id) => outcome is Outcome.TurnedDown no
        ? Answers.From(no)
        : Kept(worker.State, id) is { } view ? Answers.Ok(view) : Answers.NotFound($"calibration {id}");
}
