using PlantWatch.Core.Plant;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Turns a no of the core into an answer of the interface: which field, what is wrong, in words.</summary>
internal static class Answers
{
    public static IResult From(Outcome.TurnedDown no) => Problem(StatusOf(no.Kind), TitleOf(no.Kind), [.. no.Remarks.Select(Reader.Words.Say)]);

    public static IResult NotFound(string what) => Problem(StatusCodes.Status404NotFound, "Not found", [new FieldSaid("", "not_found", $"There is no {what} here.")]);

    public static IResult Invalid(string field, string code) =>
        Problem(StatusCodes.Status400BadRequest, "Not possible", [new FieldSaid(field, code, Reader.Words.Find(code))]);

    public static IResult Conflict(string field, string code) =>
        Problem(StatusCodes.Status409Conflict, "Not possible any more", [new FieldSaid(field, code, Reader.Words.Find(code))]);

    public static IResult Problem(int status, string title, IReadOnlyList<FieldSaid> errors) =>
        Results.Json(new Problem("about:blank", title, status, errors), PlantJson.Options, "application/problem+json", status);

    public static IResult Ok<T>(T body) => Results.Json(body, PlantJson.Options);

    private static int StatusOf(TurnedDownKind kind) => kind switch
    {
        TurnedDownKind.NotFound => StatusCodes.Status404NotFound,
        TurnedDownKind.Conflict => StatusCodes.Status409Conflict,
        TurnedDownKind.Invalid => StatusCodes.Status400BadRequest,
        // A defect of ours, but this same content fails again however often it is sent: a phone's outbox must set it aside and go on.
        _ => StatusCodes.Status422UnprocessableEntity,
    };

    private static string TitleOf(TurnedDownKind kind) => kind switch
    {
        TurnedDownKind.NotFound => "Not found",
        TurnedDownKind.Conflict => "Not possible any more",
        TurnedDownKind.Invalid => "Not possible",
        _ => "PlantWatch failed on this; it was kept",
    };
}
