using PlantWatch.Core.Dosing;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>The dosing plan of a pool: from its newest tests to inside every band. Nothing is recorded, and no pump is told.</summary>
internal static class PlanAdviceApi
{
    public static void MapDosingPlan(this RouteGroupBuilder api) =>
        api.MapPost("/pools/{id}/dosing-plan", Plan).Produces<DosingPlanView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);

    private static IResult Plan(string id, DosingPlanRequest request, PlantHost host, TimeProvider clock)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        if (Objections(request).ToArray() is { Length: > 0 } errors) return Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", errors);
        var now = Instant.From(clock.GetUtcNow());
        var at = DoseSituations.Of(worker.State, id, host.PlanAtHand(), now) with { BathersOut = request.BathersOut };
        var water = PlanWater.Of(worker.State, at, request);
        var advice = PlanAdvisor.Of(at, water.Basis, DoseSituations.Today(at.Circuit, now), request.Wish);
        var units = Reader.UnitsIn(host.Plan);
        return Answers.Ok(new PlanViews(Reader.Words.In(units), units).Of(advice, at, water.Inputs));
    }

    // All of them at once: a person mends the fields in one go.
    private static IEnumerable<FieldSaid> Objections(DosingPlanRequest request)
    {
        foreach (var (name, water) in ((string, WhatIfWater?)[])[("water", request.Water), ("fill", request.Fill)])
            foreach (var (field, value, range) in water is null ? [] : WhatIfRanges.Of(water))
                if (value is { } number && !range.Contains(number))
                    yield return new FieldSaid($"{name}.{field}", "what_if.outside_range", Reader.Words.Text(Reason.Of("what_if.outside_range", range.Low, range.High)));
    }
}
