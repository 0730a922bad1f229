using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Telling;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;

namespace PlantWatch.Server.Tests.Telling;

public sealed class WebhookChannelTests : IDisposable
{
    private readonly HttpClient _http = WebhookChannel.Client();
    private readonly int _port = Peer.FreePort();

    // The worked example of the open specification Standard Webhooks: its key, id, time, body and signature.
    [Fact]
    public void The_signature_is_that_of_the_specifications_example() => Assert.Equal(
        "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        WebhookSignature.Of("whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw", "msg_p5jXN8AQM9LWM0D4loKWxJek", 1614265330, """{"test": 2432232314}"""u8));

    [Fact]
    public async Task A_message_arrives_as_an_event_that_only_who_has_the_key_can_have_sent()
    {
        await using var receiver = await Receiver.StartAsync(_port);

        Assert.Equal(Delivery.Done, await SendAsync());

        var request = Assert.Single(receiver.Requests);
        var said = JsonDocument.Parse(request.Body).RootElement;
        Assert.StartsWith("application/cloudevents+json", request.ContentType, StringComparison.Ordinal);
        Assert.Equal(WebhookSignature.Of(TellingPlant.Key, request.Id, long.Parse(request.Timestamp, System.Globalization.CultureInfo.InvariantCulture), request.Body), request.Signature);
        Assert.Equal(("1.0", "plantwatch.alarm.raised", "R-030/acid-pump", request.Id), (Text(said, "specversion"), Text(said, "type"), Text(said, "subject"), Text(said, "id")));
        Assert.Equal("Have it mended.", said.GetProperty("data").GetProperty("whatToDo").GetString());
    }

    [Fact]
    public async Task The_same_message_sent_again_has_the_same_id_and_the_same_bytes()
    {
        await using var receiver = await Receiver.StartAsync(_port);

        await SendAsync();
        await SendAsync();

        Assert.Equal(2, receiver.Requests.Count);
        Assert.Single(receiver.Requests.Select(request => request.Id).Distinct());
        Assert.Single(receiver.Requests.Select(request => Encoding.UTF8.GetString(request.Body)).Distinct());
    }

    [Fact]
    public async Task A_redirect_is_not_followed()
    {
        await using var receiver = await Receiver.StartAsync(_port, context =>
        {
            context.Response.Redirect("/elsewhere");
            return Task.CompletedTask;
        });

        Assert.Equal(Delivery.Failed("the receiver answers with a redirect (302), which is not followed"), await SendAsync());
        Assert.Equal("/alarms", Assert.Single(receiver.Requests).Path);
    }

    [Fact]
    public async Task A_receiver_that_refuses_is_quoted()
    {
        await using var receiver = await Receiver.StartAsync(_port, context =>
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return Task.CompletedTask;
        });

        Assert.Equal(Delivery.Failed("the receiver answers 503 ServiceUnavailable"), await SendAsync());
    }

    [Fact]
    public async Task A_receiver_that_does_not_answer_is_left_in_time()
    {
        using var forEver = new CancellationTokenSource();
        await using var receiver = await Receiver.StartAsync(_port, context => Task.Delay(Timeout.Infinite, CancellationTokenSource.CreateLinkedTokenSource(forEver.Token, context.RequestAborted).Token).ContinueWith(_ => { }, TaskScheduler.Default));

        Assert.Equal(Delivery.Failed("no answer in time"), await SendAsync(TimeSpan.FromMilliseconds(500)));
        await forEver.CancelAsync();
    }

    [Fact]
    public async Task A_receiver_that_is_away_cannot_be_reached() => Assert.StartsWith("cannot be reached", (await SendAsync()).Trouble, StringComparison.Ordinal);

    [Fact]
    public async Task Without_a_key_nothing_is_sent()
    {
        await using var receiver = await Receiver.StartAsync(_port);

        Assert.Contains("no key", (await SendAsync(key: "")).Trouble, StringComparison.Ordinal);
        Assert.Empty(receiver.Requests);
    }

    [Fact]
    public void A_secret_is_found_in_the_settings_by_either_name_and_else_in_its_file()
    {
        var folder = Directory.CreateTempSubdirectory("secrets-");
        try
        {
            var (options, channel) = (new PlantWatchOptions { Telling = { SecretsFolder = folder.FullName } }, new ChannelPlan("duty-mail", ChannelKind.Email, Priority.Low));
            var secrets = new ChannelSecrets(options);
            Assert.Null(secrets.Find(channel));
            File.WriteAllText(Path.Combine(folder.FullName, "duty-mail"), "from the file\n");
            Assert.Equal("from the file", secrets.Find(channel));
            options.Telling.Secrets["duty_mail"] = "from the environment";
            Assert.Equal("from the environment", secrets.Find(channel));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    public void Dispose() => _http.Dispose();

    private async Task<Delivery> SendAsync(TimeSpan? longest = null, string key = TellingPlant.Key)
    {
        var options = new PlantWatchOptions();
        options.Telling.Secrets["house"] = key;
        var plan = new ChannelPlan("house", ChannelKind.Webhook, Priority.Low) { Name = "House", Address = new Uri($"http://127.0.0.1:{_port}/alarms") };
        using var book = new OutboxBook(new InMemoryStore(TimeZoneInfo.Utc), TimeProvider.System);
        using var channels = new Channels(new ChannelSecrets(options), new NoTopic(), options, TimeProvider.System);
        var sender = new Sender(book, channels, new NoPicture(), new SheetPress(new NoEnclosure(), TimeProvider.System, NullLogger<SheetPress>.Instance), TimeProvider.System, NullLogger<Sender>.Instance) { LongestAttempt = longest ?? TimeSpan.FromSeconds(10) };
        return await sender.AttemptAsync(new WebhookChannel(plan, new ChannelSecrets(options), _http, TimeProvider.System), new(Message, null, null), CancellationToken.None);
    }

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();

    private static Message Message { get; } = new(
        TimeOrderedId.Derive(Instant.FromUtc(2026, 8, 3, 10), "notice"), NoticeKind.Raised, Priority.High, 0, TimeOrderedId.Derive(Instant.FromUtc(2026, 8, 3, 10), "alarm"), "R-030", "acid-pump",
        "Bramble Street Baths", "hall", "Hall", "main", "Main pool", "A dosing pump reports a fault", "Acid pump: fault", Instant.FromUtc(2026, 8, 3, 10), "pH rises.", "Have it mended.", "at once", null, null, []);

    private sealed class NoTopic : IAlarmTopic
    {
        public Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, CancellationToken cancellation) => throw new NotSupportedException();
    }

    private sealed class NoPicture : IStripPictures
    {
        public Task<byte[]?> OfAsync(CircuitWorker circuit, Message message, Server.Words.Wording words, CancellationToken cancellation) => Task.FromResult<byte[]?>(null);
    }
}
