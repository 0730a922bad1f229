using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>Filters: somebody notes a wash.</summary>
internal static class FilterApi
{
    public static void MapFilters(this RouteGroupBuilder api) =>
        api.MapPost("/filters/{id}/washed", WashedAsync).Produces<WashView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status404NotFound);

    private static async Task<IResult> WashedAsync(string id, WashRequest request, PlantHost host, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(request.Id)) return Answers.Invalid("id", "id.not_version_7");
        if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
        if (Bounds.OfName("by", request.By) is { } tooLong) return tooLong;
        if (host.WithFilter(id, request.Circuit) is not { } worker) return Answers.NotFound($"filter {id}");
        if (await host.SendAsync(worker.Partition.Value, at => new FilterWashed(at, request.Id, id, request.By.Trim()), cancellation) is Outcome.TurnedDown no) return Answers.From(no);
        if (worker.State.Filters.FirstOrDefault(f => f.Id == id) is not { } kept) return Answers.NotFound($"filter {id}");
        var stated = worker.State.Plan.Filters.FirstOrDefault(f => f.Id == id)?.CleanKilopascals;
        return Answers.Ok(new WashView(id, kept.WashedAt, kept.WashedBy, kept.CleanKilopascals ?? stated));
    }
}
