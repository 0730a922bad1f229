using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Corrections of the record between two services: what is offered, what a person made of it, and what was withdrawn.</summary>
internal static class CorrectionApi
{
    public static void MapCorrections(this RouteGroupBuilder api)
    {
        api.MapGet("/probes/{id}/corrections", Read).Produces<CorrectionsView>();
        api.MapPut("/corrections/{id:guid}", MakeAsync).Produces<CorrectionView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPost("/corrections/{id:guid}/withdrawal", WithdrawAsync).Produces<CorrectionView>().Produces<Problem>(StatusCodes.Status400BadRequest);
    }

    public static CorrectionView View(RecordCorrection c) => new(
        c.Id, c.ProbeId, c.From, c.To, c.GapAt(c.Pivot), 2 * c.GapU, c.Fouling, c.Drift, c.DriftSlope, c.Pivot, c.FromService, c.ToService,
        c.MadeBy, c.MadeAt, c.Why, c.WithdrawnBy, c.WithdrawnAt.OrNull(), c.WithdrawnWhy);

    private static IResult Read(string id, PlantHost host)
    {
        if (host.WithProbe(id) is not { } worker || worker.State is not { } state || state.Plan.Probes.FirstOrDefault(p => p.Id == id) is not { } probe) return Answers.NotFound($"probe {id}");
        return Answers.Ok(new CorrectionsView(
            [.. state.Corrections.Where(c => c.ProbeId == id).OrderByDescending(c => c.From).ThenByDescending(c => c.MadeAt).Select(View)],
            [.. CorrectionOffers.For(probe, state.Calibrations, state.Corrections, state.Watermark).Select(View)]));
    }

    private static CorrectionOfferView View(CorrectionOffer o) => new(o.From, o.To, o.FromService, o.ToService, o.Gap.OrNull(), o.Fouling, o.Slope, o.Pivot, Reader.Words.Say(o.Why));

    private static async Task<IResult> MakeAsync(Guid id, MakeCorrection request, PlantHost host, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } tooLong) return tooLong;
        if (host.WithProbe(request.ProbeId) is not { } worker || worker.State.Plan.Probes.FirstOrDefault(p => p.Id == request.ProbeId) is not { } probe)
            return Answers.Invalid("probeId", "probe.not_known");
        // An id stands for one correction in the whole plant.
        if (host.WithCorrection(id) is { } other && other != worker) return Answers.Conflict("id", "id.taken");
        if (Filled(id, request, worker.State, probe) is not { } correction) return Answers.Invalid("drift", "correction.gap_needed");
        if (!Times.IsReckonable(correction.From)) return Answers.Invalid("from", "field.time");
        if (!Times.IsReckonable(correction.To)) return Answers.Invalid("to", "field.time");
        return Say(await host.SendAsync(worker.Partition.Value, at => new CorrectionMade(at, correction), cancellation), worker, id);
    }

    // What the person left out comes from what was made under this id before, so that a retry is the same, else from what the services speak for.
    private static RecordCorrection? Filled(Guid id, MakeCorrection request, CircuitState state, ProbePlan probe)
    {
        var known = state.Corrections.FirstOrDefault(c => c.Id == id);
        var offer = request.ToService is { } second
            ? CorrectionOffers.For(probe, state.Calibrations, state.Corrections, state.Watermark).FirstOrDefault(o => o.ToService == second && (request.FromService is not { } first || o.FromService == first))
            : null;
        var found = offer is { Gap.IsKnown: true } ? offer : null;
        if (request.Drift is null && request.Fouling is null && known is null && found is null) return null;
        return new RecordCorrection
        {
            Id = id,
            ProbeId = probe.Id,
            From = request.From.IsSet ? request.From : known?.From ?? offer?.From ?? Instant.Never,
            To = request.To.IsSet ? request.To : known?.To ?? offer?.To ?? Instant.Never,
            Fouling = request.Fouling ?? known?.Fouling ?? found?.Fouling ?? 0,
            Drift = request.Drift ?? known?.Drift ?? found?.Gap.Value ?? 0,
            DriftSlope = request.DriftSlope ?? known?.DriftSlope ?? found?.Slope ?? 0,
            Pivot = request.Pivot ?? known?.Pivot ?? offer?.Pivot ?? 0,
            GapU = request.U / 2 ?? known?.GapU ?? found?.Gap.StandardUncertainty ?? 0,
            WanderPerDay = known?.WanderPerDay ?? CorrectionOffers.WanderPerDay(probe.Measurand),
            FromService = request.FromService ?? known?.FromService ?? offer?.FromService,
            ToService = request.ToService,
            MadeBy = request.By!.Trim(),
            Why = request.Why ?? "",
        };
    }

    private static async Task<IResult> WithdrawAsync(Guid id, WithdrawCorrection request, PlantHost host, CancellationToken cancellation)
    {
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (string.IsNullOrWhiteSpace(request.Why)) return Answers.Invalid("why", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } no) return no;
        if (host.WithCorrection(id) is not { } worker) return Answers.NotFound($"correction {id}");
        return Say(await host.SendAsync(worker.Partition.Value, at => new CorrectionWithdrawn(at, id, request.By.Trim(), request.Why), cancellation), worker, id);
    }

    private static IResult Say(Outcome outcome, CircuitWorker worker, Guid id) => outcome is Outcome.TurnedDown no
        ? Answers.From(no)
        : worker.State.Corrections.FirstOrDefault(c => c.Id == id) is { } kept ? Answers.Ok(View(kept)) : Answers.NotFound($"correction {id}");
}
