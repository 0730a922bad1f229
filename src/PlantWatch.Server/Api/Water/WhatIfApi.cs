using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>What would be: a water imagined beside the present one. Nothing is recorded, and no pump is told.</summary>
internal static class WhatIfApi
{
    private const int MostDoses = 20;

    public static void MapWhatIf(this RouteGroupBuilder api) =>
        api.MapPost("/pools/{id}/what-if", Imagine).Produces<WhatIfView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);

    private static IResult Imagine(string id, WhatIfRequest request, PlantHost host, TimeProvider clock)
    {
        if (host.WithPool(id) is not { } worker) return Answers.NotFound($"pool {id}");
        if (Bounds.OfList("doses", request.Doses ?? [], MostDoses) is { } tooMany) return tooMany;
        var (now, words) = (clock.GetUtcNow(), Reader.Words.In(Reader.UnitsIn(host.Plan)));
        var bench = WhatIfBench.Of(worker.State, id, host.Plan, now, words);
        var errors = Objections(request, bench, words).ToArray();
        return errors.Length > 0
            ? Answers.Problem(StatusCodes.Status400BadRequest, "Not possible", errors)
            : Answers.Ok(WhatIfViews.Of(bench, request, Instant.From(now), words));
    }

    // All of them at once: a person mends the fields in one go.
    private static IEnumerable<FieldSaid> Objections(WhatIfRequest request, WhatIfBench bench, Wording words)
    {
        if (request.Water is { } water)
            foreach (var (field, value, range) in WhatIfRanges.Of(water))
                if (value is { } number && !range.Contains(number)) yield return Say($"water.{field}", Reason.Of(field == "temperature" ? "what_if.outside_temperatures" : "what_if.outside_range", range.Low, range.High), words);
        if (request.VolumeM3 is { } volume && !WhatIfRanges.Volume.Contains(volume)) yield return Say("volumeM3", Reason.Of("what_if.outside_range", WhatIfRanges.Volume.Low, WhatIfRanges.Volume.High), words);
        var most = new ValueRange(0, WhatIfRanges.MostKilogramsPerCubicMetre * Math.Clamp(request.VolumeM3 ?? bench.VolumeM3, WhatIfRanges.Volume.Low, WhatIfRanges.Volume.High));
        for (var i = 0; i < (request.Doses?.Count ?? 0); i++)
        {
            var dose = request.Doses![i];
            if (bench.Find(dose.Product) is null) yield return Say($"doses[{i}].product", Reason.Of("what_if.product_unknown"), words);
            if (!most.Contains(dose.Kilograms)) yield return Say($"doses[{i}].kilograms", Reason.Of("what_if.outside_range", most.Low, most.High), words);
        }

        if (request.Curve is { } curve && bench.Find(curve) is null) yield return Say("curve", Reason.Of("what_if.product_unknown"), words);
    }

    private static FieldSaid Say(string field, Reason reason, Wording words) => new(field, reason.Code, words.Text(reason));
}
