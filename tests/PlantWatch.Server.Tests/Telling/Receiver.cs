using System.Collections.Concurrent;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>A request as it came.</summary>
internal sealed record Received(string Path, string? ContentType, string Id, string Timestamp, string Signature, byte[] Body);

/// <summary>Another program on loopback that is told by requests.</summary>
internal sealed class Receiver : IAsyncDisposable
{
    private readonly ConcurrentQueue<Received> _requests = new();
    private readonly WebApplication _app;

    private Receiver(int port, Func<HttpContext, Task> answer)
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.UseUrls($"http://127.0.0.1:{port}");
        _app = builder.Build();
        _app.Run(async context =>
        {
            using var body = new MemoryStream();
            await context.Request.Body.CopyToAsync(body);
            var headers = context.Request.Headers;
            _requests.Enqueue(new(context.Request.Path, context.Request.ContentType, headers["webhook-id"]!, headers["webhook-timestamp"]!, headers["webhook-signature"]!, body.ToArray()));
            await answer(context);
        });
    }

    public IReadOnlyList<Received> Requests => [.. _requests];

    /// <summary>Starts one.</summary>
    /// <param name="port">Where.</param>
    /// <param name="answer">How it answers; null with 200.</param>
    public static async Task<Receiver> StartAsync(int port, Func<HttpContext, Task>? answer = null)
    {
        var receiver = new Receiver(port, answer ?? (_ => Task.CompletedTask));
        await receiver._app.StartAsync();
        return receiver;
    }

    public ValueTask DisposeAsync() => _app.DisposeAsync();
}
