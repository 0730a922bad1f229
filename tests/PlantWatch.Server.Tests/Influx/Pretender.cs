using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>Answers in the place of an InfluxDB server as a test wants, also with what none says.</summary>
internal sealed class Pretender : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly CancellationTokenSource _end = new();
    private readonly List<string[]> _writes = [];

    private Pretender()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        _app = builder.Build();
        _app.Run(AnswerAsync);
    }

    public Uri Url => new(_app.Urls.First());

    /// <summary>Status and words for some lines; null answers never.</summary>
    public Func<string[], (int Status, string Words)?> Says { get; set; } = _ => (204, "");

    /// <summary>Lines of each write that came, whatever became of it.</summary>
    public IReadOnlyList<string[]> Writes
    {
        get
        {
            lock (_writes) return [.. _writes];
        }
    }

    public static async Task<Pretender> StartAsync()
    {
        var pretender = new Pretender();
        await pretender._app.StartAsync();
        return pretender;
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _app.DisposeAsync();
        _end.Dispose();
    }

    private async Task AnswerAsync(HttpContext context)
    {
        using var reader = new StreamReader(context.Request.Body);
        var lines = (await reader.ReadToEndAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        if (context.Request.Method != "POST") return;
        lock (_writes) _writes.Add(lines);
        if (Says(lines) is not { } answer) await HangAsync(context.RequestAborted);
        else
        {
            context.Response.StatusCode = answer.Status;
            if (answer.Words.Length > 0) await context.Response.WriteAsync(answer.Words);
        }
    }

    private async Task HangAsync(CancellationToken aborted)
    {
        using var either = CancellationTokenSource.CreateLinkedTokenSource(aborted, _end.Token);
        await Task.Delay(Timeout.Infinite, either.Token).ContinueWith(_ => { }, TaskScheduler.Default);
    }
}
