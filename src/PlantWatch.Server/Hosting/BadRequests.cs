using System.Text.Json;
using Microsoft.AspNetCore.Diagnostics;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Hosting;

/// <summary>A request that cannot be read is answered with the field and what was expected, never with a stack trace.</summary>
internal static class BadRequests
{
    public static void UseClearErrors(this IApplicationBuilder app) => app.UseExceptionHandler(new ExceptionHandlerOptions
    {
        SuppressDiagnosticsCallback = context => context.Exception is BadHttpRequestException or OperationCanceledException,
        ExceptionHandler = context => Answer(context.Features.Get<IExceptionHandlerFeature>()?.Error).ExecuteAsync(context),
    });

    private static IResult Answer(Exception? error) => error switch
    {
        BadHttpRequestException { InnerException: JsonException json } => Answers.Problem(400, "Not readable", [new FieldSaid(Field(json.Path), "json", Plain(json))]),
        BadHttpRequestException bad => Answers.Problem(bad.StatusCode, "Not readable", [new FieldSaid("", "request", bad.Message)]),
        OperationCanceledException => Answers.Problem(503, "PlantWatch is stopping", [new FieldSaid("", "stopping", "Send it again in a moment; nothing was taken.")]),
        _ => Answers.Problem(500, "PlantWatch failed on this", []),
    };

    private static string Field(string? path) => path is null ? "" : path.TrimStart('$').TrimStart('.');

    private static string Plain(JsonException json)
    {
        var end = json.Message.IndexOf(" Path:", StringComparison.Ordinal);
        return end > 0 ? json.Message[..end] : json.Message;
    }
}
