using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Calibrations from proposal to force.</summary>
internal static class CalibrationApi
{
    public static void MapCalibrations(this RouteGroupBuilder api)
    {
        api.MapPut("/calibrations/{id:guid}", ProposeAsync).Produces<CalibrationView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapPost("/calibrations/{id:guid}/decision", DecideAsync).Produces<CalibrationView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapGet("/calibrations", (string probe, PlantHost host) =>
            host.WithProbe(probe) is { } worker ? Answers.Ok(Of(worker.State, probe)) : Answers.NotFound($"probe {probe}")).Produces<IReadOnlyList<CalibrationView>>();
    }

    /// <summary>All calibrations of a probe, newest proposal first.</summary>
    internal static CalibrationView[] Of(CircuitState state, string probe) =>
        [.. state.Calibrations.Where(c => c.ProbeId == probe).OrderByDescending(c => c.ProposedAt).Select(c => CircuitViews.Calibration(c, state, Reader.Words))];

    private static async Task<IResult> ProposeAsync(Guid id, ProposeCalibration request, PlantHost host, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("note", request.Note) ?? Bounds.OfList("checks", request.Checks ?? [], Bounds.Checks)) is { } no) return no;
        if (host.WithProbe(request.ProbeId) is not { } worker) return Answers.Invalid("probeId", "probe.not_known");
        // An id stands for one calibration in the whole plant.
        if (host.WithCalibration(id) is { } other && other != worker) return Answers.Conflict("id", "id.taken");
        var proposal = new Calibration
        {
            Id = id,
            ProbeId = request.ProbeId!,
            Kind = request.Kind,
            Slope = request.Slope,
            Offset = request.Offset,
            Checks = [.. request.Checks ?? []],
            ProposedBy = request.By.Trim(),
            Note = request.Note,
        };
        return Say(await host.SendAsync(worker.Partition.Value, at => new CalibrationProposed(at, proposal), cancellation), worker, id);
    }

    private static async Task<IResult> DecideAsync(Guid id, DecideCalibration request, PlantHost host, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } no) return no;
        if (request.Decision == CalibrationStatus.Proposed) return Answers.Invalid("decision", "field.required");
        if (host.WithCalibration(id) is not { } worker) return Answers.NotFound($"calibration {id}");
        if (request.Decision == CalibrationStatus.Approved && SecondPerson.Objection(worker.State, id, request.By) is { } second) return Answers.From(second);
        return Say(await host.SendAsync(worker.Partition.Value,
            at => new CalibrationDecided(at, id, request.Decision, request.HoldsFrom, request.By.Trim(), request.Why), cancellation), worker, id);
    }

    private static IResult Say(Outcome outcome, CircuitWorker worker, Guid id) => outcome is Outcome.TurnedDown no
        ? Answers.From(no)
        : worker.State.Calibrations.FirstOrDefault(c => c.Id == id) is { } kept ? Answers.Ok(CircuitViews.Calibration(kept, worker.State, Reader.Words)) : Answers.NotFound($"calibration {id}");
}
