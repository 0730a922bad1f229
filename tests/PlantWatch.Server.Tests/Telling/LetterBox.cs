using System.Buffers;
using System.Collections.Concurrent;
using MimeKit;
using PlantWatch.Server.Tests.Peers;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>A mail server on loopback that keeps what it takes, refuses when it is told to, and can be away.</summary>
internal sealed class LetterBox : MessageStore, IAsyncDisposable
{
    private readonly ConcurrentQueue<MimeMessage> _letters = new();
    private readonly CancellationTokenSource _ending = new();
    private SmtpServer.SmtpServer? _server;
    private Task _running = Task.CompletedTask;

    public int Port { get; } = Peer.FreePort();

    /// <summary>What it answers instead of taking a letter; null takes it.</summary>
    public SmtpResponse? Refuses { get; set; }

    public IReadOnlyList<MimeMessage> Letters => [.. _letters];

    /// <summary>Everybody's letters as "address: subject".</summary>
    public string[] Said => [.. Letters.Select(letter => $"{letter.To.Mailboxes.Single().Address}: {letter.Subject}")];

    public static LetterBox Open()
    {
        var box = new LetterBox();
        box.Start();
        return box;
    }

    public void Start()
    {
        var services = new ServiceProvider();
        services.Add(this);
        _server = new SmtpServer.SmtpServer(new SmtpServerOptionsBuilder().ServerName("localhost").Port(Port).Build(), services);
        _running = _server.StartAsync(_ending.Token);
    }

    public override async Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        if (Refuses is { } no) return no;
        using var bytes = new MemoryStream(buffer.ToArray());
        _letters.Enqueue(await MimeMessage.LoadAsync(bytes, cancellationToken));
        return SmtpResponse.Ok;
    }

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        await _running.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _ending.Dispose();
    }
}
