using PlantWatch.Core.Quantities;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Telling;

namespace PlantWatch.Server.Api;

/// <summary>How people are told, whether it works, and a test message.</summary>
internal static class TellingApi
{
    public static void MapTelling(this RouteGroupBuilder api)
    {
        api.MapGet("/telling", (PlantHost host, OutboxBook book, TimeProvider clock) => host.Plan is { } plan
            ? Answers.Ok(TellingViews.Of(plan, [.. host.Circuits.SelectMany(circuit => book.Of(circuit.Partition))], Instant.From(clock.GetUtcNow())))
            : Answers.NotFound("plant")).Produces<TellingView>();
        api.MapPost("/telling/{channel}/test", async (string channel, TestMessage request, PlantHost host, Tester tester, CancellationToken cancellation) =>
        {
            if (string.IsNullOrWhiteSpace(request.By)) return Answers.Invalid("by", "field.required");
            if (Bounds.OfName("by", request.By) is { } tooLong) return tooLong;
            if (host.Plan is not { } plan || plan.Telling.Channels.FirstOrDefault(known => known.Id == channel) is not { } way) return Answers.NotFound($"channel {channel}");
            return Answers.Ok(await tester.TestAsync(plan, way, request.By.Trim(), cancellation));
        }).Produces<TestMessageAnswer>();
    }
}
