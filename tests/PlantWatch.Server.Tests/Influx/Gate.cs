using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>Stands before a real InfluxDB server on a port of its own and hands on what comes, as late as a test wants, or not at all.</summary>
internal sealed class Gate : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly HttpClient _http = new();
    private readonly Uri _behind;
    private int _writes;

    private Gate(Uri behind)
    {
        _behind = behind;
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _app = builder.Build();
        _app.Run(PassAsync);
    }

    public Uri Url => new(_app.Urls.First());

    /// <summary>Writes that came this far.</summary>
    public int Writes => Volatile.Read(ref _writes);

    /// <summary>Answers with this status instead of handing on; null hands on.</summary>
    public int? Refuses { get; set; }

    /// <summary>Header of such a refusal.</summary>
    public string? RetryAfter { get; set; }

    /// <summary>Called before a write is handed on, with its number.</summary>
    public Func<int, Task> BeforeWrite { get; set; } = _ => Task.CompletedTask;

    /// <summary>Called when the server behind has taken a write and nobody has heard of it yet.</summary>
    public Func<int, Task> AfterWrite { get; set; } = _ => Task.CompletedTask;

    public static async Task<Gate> BeforeAsync(Uri behind)
    {
        var gate = new Gate(behind);
        await gate._app.StartAsync();
        return gate;
    }

    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        _http.Dispose();
    }

    private async Task PassAsync(HttpContext context)
    {
        var isWrite = context.Request.Path.Value == "/write";
        var number = isWrite ? Interlocked.Increment(ref _writes) : 0;
        if (isWrite) await BeforeWrite(number);
        if (isWrite && Refuses is { } status)
        {
            context.Response.StatusCode = status;
            if (RetryAfter is { } rest) context.Response.Headers.RetryAfter = rest;
            return;
        }

        using var request = new HttpRequestMessage(new HttpMethod(context.Request.Method), new Uri(_behind, context.Request.Path + context.Request.QueryString));
        if (context.Request.ContentLength > 0) request.Content = new StreamContent(context.Request.Body);
        if (context.Request.Headers.Authorization is [{ } signature, ..]) request.Headers.TryAddWithoutValidation("Authorization", signature);
        using var answer = await _http.SendAsync(request);
        if (isWrite) await AfterWrite(number);
        context.Response.StatusCode = (int)answer.StatusCode;
        foreach (var header in answer.Headers.Where(h => h.Key.StartsWith("X-Influx", StringComparison.OrdinalIgnoreCase))) context.Response.Headers[header.Key] = header.Value.First();
        context.Response.ContentType = answer.Content.Headers.ContentType?.ToString();
        await answer.Content.CopyToAsync(context.Response.Body);
    }
}
