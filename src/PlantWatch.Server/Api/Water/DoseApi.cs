using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Doses: advice on one, what a person gave, and what came of it. No pump is told anything.</summary>
internal static class DoseApi
{
    private const int Shown = 50;
    private const double MostKilograms = 100_000;

    // The fold judges to the minute; here only what no calendar can hold is kept out.
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(31);

    public static void MapDoses(this RouteGroupBuilder api)
    {
        api.MapPost("/pools/{id}/dose-advice", Advise).Produces<DoseAdviceView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapPut("/doses/{id:guid}", PutAsync).Produces<GivenDoseView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/pools/{id}/volume", VolumeAsync).Produces<VolumeView>().Produces<Problem>(StatusCodes.Status404NotFound);
        api.MapGet("/pools/{id}/doses", ListAsync).Produces<DosesView>().Produces<Problem>(StatusCodes.Status404NotFound);
    }

    private static IResult Advise(string id, DoseAdviceRequest request, PlantHost host, TimeProvider clock)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        if (ProductOf(host, request.ProductId) is not { } plan) return Answers.Invalid("productId", "dose.product_not_known");
        if (request.Target == Measurand.None) return Answers.Invalid("target", "dose.target_not_chosen");
        if (request.Value is not { } value) return Answers.Invalid("value", "field.required");
        if (!double.IsFinite(value)) return Answers.Invalid("value", "check.not_a_number");
        var now = Instant.From(clock.GetUtcNow());
        var at = DoseSituations.Of(worker.State, id, host.PlanAtHand(), now) with { BathersOut = request.BathersOut };
        // While an incident is open the pools themselves say whether they are closed.
        at = at with { Closed = at.Hold is { } hold ? hold.MayBatheIn.IsEmpty : request.Closed };
        var product = ProductAtHand.Of(plan, DoseSituations.Today(at.Circuit, now));
        return Answers.Ok(Views(host).Of(DoseAdvisor.Of(at, product, request.Target, value), at));
    }

    private static async Task<IResult> PutAsync(Guid id, GivenDoseRequest request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfRemark("note", request.Note) ?? Bounds.OfRemark("correctionReason", request.CorrectionReason)) is { } tooLong) return tooLong;
        // What is in the record is answered as the first time, whatever the plant file says of the product today; an id stands for one dose in all circuits.
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known) return Again(known, request, host);
        if (ProductOf(host, request.ProductId) is not { } plan) return Answers.Invalid("productId", "dose.product_not_known");
        if ((request.GivenAt - Instant.From(clock.GetUtcNow())).Duration() > Oldest) return Answers.Invalid("givenAt", "dose.time_impossible");
        var product = ProductAtHand.Of(plan, DoseSituations.Today(worker.State.Plan, request.GivenAt));
        if (Kilograms(request, product) is not { } kilograms) return Answers.Invalid("amount", request.Litres is null ? "dose.amount_impossible" : "dose.density_unknown");
        if (kilograms is not (> 0 and <= MostKilograms)) return Answers.Invalid("amount", "dose.amount_impossible");
        if (request.Corrects is { } wrong && wrong != id && await store.EntryAsync(worker.Partition, wrong, cancellation) is not { Body: DoseEntry }) return Answers.Invalid("corrects", "dose.corrects_unknown");

        var dose = Dose(id, request, product, kilograms, worker.State, host.PlanAtHand());
        var arrivedAt = Instant.Never;
        var outcome = await host.SendAsync(worker.Partition.Value, at => new DoseGiven(arrivedAt = at, dose), cancellation);
        return outcome switch
        {
            Outcome.TurnedDown no => Answers.From(no),
            Outcome.AlreadyDone when await store.EntryAsync(worker.Partition, id, cancellation) is { } entry => Again(entry, request, host),
            _ => Answers.Ok(Views(host).Of(new DoseEntry(dose, arrivedAt), false, [])),
        };
    }

    // The same dose once more is answered as the first time; another one under its id is a conflict.
    private static IResult Again(RecordEntry known, GivenDoseRequest request, PlantHost host) =>
        known.Body is DoseEntry { Dose: var dose } entry
        && (dose.PoolId, dose.ProductId, dose.GivenAt, dose.By, dose.Note, dose.Corrects, dose.CorrectionReason)
            == (request.PoolId!, request.ProductId!, request.GivenAt, request.By!.Trim(), request.Note, request.Corrects, request.CorrectionReason)
        && IsTheAmount(dose, request, host)
            ? Answers.Ok(Views(host).Of(entry, false, []))
            : Answers.Problem(StatusCodes.Status409Conflict, "Not possible any more", [new FieldSaid("id", "id.taken", Reader.Words.Find("id.taken"))]);

    // Where the product is gone from the plant file its density is too: the rest of the dose must do then.
    private static bool IsTheAmount(GivenDose dose, GivenDoseRequest request, PlantHost host)
    {
        var product = ProductOf(host, request.ProductId) is { } plan ? ProductAtHand.Of(plan, DateOnly.FromDateTime(request.GivenAt.ToDateTimeOffset().UtcDateTime)) : null;
        var said = request.Kilograms ?? (product is null ? null : Kilograms(request, product));
        return said is null ? request.Litres is not null : Math.Abs(dose.Kilograms - said.Value) <= 1e-9 * dose.Kilograms;
    }

    private static GivenDose Dose(Guid id, GivenDoseRequest request, ProductAtHand product, double kilograms, CircuitState state, PlantPlan? plan)
    {
        // What was known when it was given: a dose typed in later is predicted from the tests before it.
        var at = DoseSituations.Of(state, request.PoolId!, plan, request.GivenAt);
        at = at with { Tests = at.Tests.RemoveRange(at.Tests.Where(test => test.Value.SampledAt > request.GivenAt).Select(test => test.Key)) };
        var hours = state.Plan.TurnoverHours is { } turnover ? MixingTime.ToRetest(turnover).OrNull : null;
        return new()
        {
            Id = id,
            PoolId = request.PoolId!,
            ProductId = product.Plan.Id,
            Product = product.Plan.Name,
            Kind = product.Plan.Kind,
            Kilograms = kilograms,
            Strength = product.Strength.Fraction,
            GivenAt = request.GivenAt,
            MixedAt = request.GivenAt + TimeSpan.FromHours(hours ?? DoseAdvisor.UsualRetestHours),
            By = request.By!.Trim(),
            Note = request.Note,
            PredictedFor = DoseVolume.WholeOf(at.Circuit),
            StrengthUncertainty = product.Strength.RelativeUncertainty,
            Predicted = DosePrediction.Of(at, product, kilograms),
            Corrects = request.Corrects,
            CorrectionReason = request.CorrectionReason,
        };
    }

    private static double? Kilograms(GivenDoseRequest request, ProductAtHand product) =>
        request.Kilograms ?? (request.Litres is { } litres && product.KilogramsPerLitre is { } density ? litres * density : null);

    private static async Task<IResult> ListAsync(string id, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        var now = Instant.From(clock.GetUtcNow());
        var (at, views) = (DoseSituations.Of(worker.State, id, host.PlanAtHand(), now), Views(host));
        var given = (await store.EntriesAsync(worker.Partition, new EntryQuery(["dose"], id, Limit: Shown), cancellation)).Select(r => r.Body).OfType<DoseEntry>().ToList();
        var answers = (await store.EntriesAsync(worker.Partition, new EntryQuery(["dose_response"], id, Limit: 4 * Shown), cancellation)).Select(r => r.Body).OfType<DoseResponseEntry>().ToLookup(r => r.Response.DoseId, r => r.Response);
        var corrected = given.Select(g => g.Dose.Corrects).OfType<Guid>().ToHashSet();
        var today = DoseSituations.Today(at.Circuit, now);
        return Answers.Ok(new DosesView(
            [.. at.Products.Select(p => views.Product(ProductAtHand.Of(p, today), at))],
            [.. given.OrderByDescending(g => g.Dose.GivenAt).Select(g => views.Of(g, corrected.Contains(g.Dose.Id), answers[g.Dose.Id].OrderBy(r => r.SampledAt)))], at.Bathers, Hold(at.Hold)));
    }

    // The water of a circuit is one: a dose into any of its pools tells of all of it.
    private static async Task<IResult> VolumeAsync(string id, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        var since = Instant.From(clock.GetUtcNow()) - VolumeViews.Lookback;
        var doses = (await store.EntriesAsync(worker.Partition, new EntryQuery(["dose"], From: since), cancellation)).Select(e => e.Body).OfType<DoseEntry>().Select(e => e.Dose);
        var answers = (await store.EntriesAsync(worker.Partition, new EntryQuery(["dose_response"], From: since), cancellation)).Select(e => e.Body).OfType<DoseResponseEntry>().Select(e => e.Response);
        return Answers.Ok(VolumeViews.Of(worker.State.Plan, doses, answers, Reader.UnitsIn(host.Plan)));
    }

    private static DoseHoldView? Hold(IncidentHold? hold) =>
        hold is null ? null : new(hold.Incident.Id, hold.Incident.PoolId, hold.StartAt, hold.Highest, hold.Refusal is { } why ? Reader.Words.Say(why) : null, hold.MayBatheIn);

    private static ProductPlan? ProductOf(PlantHost host, string? id) => host.PlanAtHand()?.Products.FirstOrDefault(p => p.Id == id);

    private static DoseViews Views(PlantHost host)
    {
        var units = Reader.UnitsIn(host.Plan);
        return new(Reader.Words.In(units), units);
    }
}
