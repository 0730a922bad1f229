using PlantWatch.Core.Plant;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Limit packs: which there are, and the picked one row by row, confirmed and taken back by a person.</summary>
internal static class LimitApi
{
    public static void MapLimits(this RouteGroupBuilder api)
    {
        api.MapGet("/limit-packs", (PlantFileWatcher file) => Answers.Ok(file.Packs.InOrder.Select(LimitViews.Info).ToArray())).Produces<IReadOnlyList<PackInfo>>();
        api.MapGet("/circuits/{id}/limits", (string id, PlantHost host) => host.Find(id) is { } worker ? Answers.Ok(LimitViews.Of(worker.State, Reader.Words)) : Answers.NotFound($"circuit {id}"))
            .Produces<CircuitLimitsView>();
        api.MapPost("/circuits/{id}/limits/{row}/confirm", ConfirmAsync).Produces<CircuitLimitsView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPost("/circuits/{id}/limits/{row}/revoke", RevokeAsync).Produces<CircuitLimitsView>().Produces<Problem>(StatusCodes.Status400BadRequest);
    }

    private static Task<IResult> ConfirmAsync(string id, string row, ConfirmRow request, PlantHost host, CancellationToken cancellation) =>
        string.IsNullOrWhiteSpace(request.By) ? Task.FromResult(Answers.Invalid("by", "field.required"))
        : (Bounds.OfName("by", request.By) ?? Bounds.OfRemark("document", request.Document)) is { } no ? Task.FromResult(no)
        : SendAsync(id, host, pack => at => new PackRowConfirmed(at, pack, row, request.Digest ?? "", request.By, request.Document ?? "", request.Applies ?? true), cancellation);

    private static Task<IResult> RevokeAsync(string id, string row, RevokeRow request, PlantHost host, CancellationToken cancellation) =>
        string.IsNullOrWhiteSpace(request.By) ? Task.FromResult(Answers.Invalid("by", "field.required"))
        : (Bounds.OfName("by", request.By) ?? Bounds.OfRemark("why", request.Why)) is { } no ? Task.FromResult(no)
        : SendAsync(id, host, pack => at => new PackRowRevoked(at, pack, row, request.By, request.Why ?? ""), cancellation);

    private static async Task<IResult> SendAsync(string id, PlantHost host, Func<string, Func<Core.Quantities.Instant, PlantEvent>> make, CancellationToken cancellation)
    {
        if (host.Find(id) is not { } worker) return Answers.NotFound($"circuit {id}");
        var outcome = await host.SendAsync(worker.Partition.Value, make(worker.State.Plan.Pack?.Id ?? ""), cancellation);
        return outcome is Outcome.TurnedDown no ? Answers.From(no) : Answers.Ok(LimitViews.Of(worker.State, Reader.Words));
    }
}
