using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Diagnostics;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Hosting;

/// <summary>A request that cannot be read is answered with the field and what was expected, never with a stack trace.</summary>
internal static partial class BadRequests
{
    public static void UseClearErrors(this IApplicationBuilder app)
    {
        // What the framework turns away without a word, such as a method or a content type that is not taken.
        app.UseStatusCodePages(page => page.HttpContext.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
            ? Refused(page.HttpContext.Response.StatusCode).ExecuteAsync(page.HttpContext)
            : Task.CompletedTask);
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            SuppressDiagnosticsCallback = context => context.Exception is BadHttpRequestException or OperationCanceledException,
            ExceptionHandler = context => Answer(context.Features.Get<IExceptionHandlerFeature>()?.Error).ExecuteAsync(context),
        });
    }

    private static IResult Refused(int status) => status switch
    {
        404 => Say(status, "Not found", "", "request.address"),
        405 => Say(status, "Not possible", "", "request.method"),
        413 => Say(status, "Too large", "", "request.too_large"),
        415 => Say(status, "Not readable", "Content-Type", "request.content_type"),
        _ => Say(status, "Not possible", "", "request.not_readable"),
    };

    private static IResult Answer(Exception? error) => error switch
    {
        BadHttpRequestException { InnerException: JsonException json } => Answers.Problem(400, "Not readable", [new FieldSaid(Field(json), "json", Plain(json))]),
        BadHttpRequestException { StatusCode: not 400 } bad => Refused(bad.StatusCode),
        BadHttpRequestException bad when Parameter().Match(bad.Message) is { Success: true } match => OfParameter(match.Groups[1].Value, bad.Message),
        BadHttpRequestException => Refused(400),
        OperationCanceledException => Answers.Problem(503, "PlantWatch is stopping", [new FieldSaid("", "stopping", "Send it again in a moment; nothing was taken.")]),
        _ => Answers.Problem(500, "PlantWatch failed on this", []),
    };

    private static IResult OfParameter(string name, string message) => name == "request" ? Say(400, "Not readable", "", "request.body")
        : Say(400, "Not readable", name, message.StartsWith("Required", StringComparison.Ordinal) ? "field.required" : "field.not_readable");

    private static IResult Say(int status, string title, string field, string code) =>
        Answers.Problem(status, title, [new FieldSaid(field, code, Reader.Words.Find(code))]);

    private static string Field(JsonException json)
    {
        var path = (json.Path ?? "").TrimStart('$').TrimStart('.');
        if (Missing().Match(json.Message) is not { Success: true } missing) return Shortened(path);
        return path.Length == 0 ? missing.Groups[1].Value : $"{Shortened(path)}.{missing.Groups[1].Value}";
    }

    // A path may hold a key of the sender's own, as long as he likes.
    private static string Shortened(string path) => path.Length <= 200 ? path : path[..200];

    // The library's sentences name types of the program, which say nothing to a person.
    private static string Plain(JsonException json)
    {
        if (Missing().IsMatch(json.Message) || json.Message.Contains("allow setting null", StringComparison.Ordinal)) return Reader.Words.Find("field.required");
        if (json.Message.StartsWith("The JSON value could not be converted", StringComparison.Ordinal)) return Reader.Words.Find("field.not_readable");
        var end = json.Message.IndexOf(" Path:", StringComparison.Ordinal);
        return end > 0 ? json.Message[..end] : json.Message;
    }

    [GeneratedRegex("parameter \"(?:[^\"]* )?(\\w+)\"")]
    private static partial Regex Parameter();

    [GeneratedRegex("missing required properties[^']*'(\\w+)'")]
    private static partial Regex Missing();
}
