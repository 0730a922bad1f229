using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Api;

/// <summary>Instruments: how they stand, and what they read of a standard.</summary>
internal static class InstrumentApi
{
    public static void MapInstruments(this RouteGroupBuilder api)
    {
        api.MapGet("/instruments", (PlantHost host, TimeProvider clock) => Answers.Ok(All(host, clock))).Produces<IReadOnlyList<InstrumentView>>();
        api.MapPut("/instruments/verifications/{id:guid}", PutAsync).Produces<VerificationView>().Produces<Problem>(StatusCodes.Status400BadRequest)
            .Produces<Problem>(StatusCodes.Status404NotFound).Produces<Problem>(StatusCodes.Status409Conflict);
    }

    private static async Task<IResult> PutAsync(Guid id, VerifyRequest request, PlantHost host, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if ((Bounds.OfName("by", request.By) ?? Bounds.OfName("standard", request.Standard)) is { } tooLong) return tooLong;
        var made = new Verification(id, request.Measurand, request.Standard?.Trim() ?? "", request.Nominal, request.Tolerance, request.Reading, request.VerifiedAt, request.By?.Trim() ?? "");
        if (!host.Circuits.Any()) return Answers.NotFound($"instrument {request.InstrumentId}");
        // All circuits are tested with the same kit. Sent again after a break it reaches those that it had not reached.
        foreach (var worker in host.Circuits.ToArray())
            if (await host.SendAsync(worker.Partition.Value, at => new InstrumentVerified(at, request.InstrumentId ?? "", made), cancellation) is Outcome.TurnedDown no) return Answers.From(no);
        return Answers.Ok(InstrumentViews.Of(request.InstrumentId!, made));
    }

    private static IReadOnlyList<InstrumentView> All(PlantHost host, TimeProvider clock) =>
        host.Circuits.ToArray() is [var first, ..] ? InstrumentViews.Of(first.State, Instant.From(clock.GetUtcNow())) : [];
}
