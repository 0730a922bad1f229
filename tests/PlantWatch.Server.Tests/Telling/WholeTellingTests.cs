using System.Text.Json;
using MimeKit;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;
using SmtpServer.Protocol;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>From the fault of a pump to people, by the whole server, over real sockets.</summary>
public sealed class WholeTellingTests
{
    [PeerFact("mosquitto_pub", "mosquitto_sub")]
    public async Task An_alarm_arrives_once_by_every_way_and_so_does_its_end()
    {
        var port = Peer.FreePort();
        await using var receiver = await Receiver.StartAsync(port);
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With($"{TellingPlant.Desk}\n{TellingPlant.Webhook(port)}\n{TellingPlant.Post(box.Port)}"), set: TellingPlant.Keys);
        await using var listener = Peer.Start("mosquitto_sub", "-h", "127.0.0.1", "-p", $"{server.MqttPort}", "-t", "hall/alarms/#", "-F", "%t %r %p");

        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => receiver.Requests.Count == 1 && box.Letters.Count == 1 && Notices(listener) == 1, "all three are told that it was raised");
        await TellingPlant.MendedAsync(server);
        await Peer.UntilAsync(() => receiver.Requests.Count == 2 && box.Letters.Count == 2 && Notices(listener) == 2, "all three are told that it is over");

        Assert.Equal(["ann@baths.example: High: Main pool: A dosing pump reports a fault", "ann@baths.example: Over: Main pool: A dosing pump reports a fault"], box.Said);
        var text = box.Letters[0].TextBody;
        Assert.All(["Where: Main pool, Hall. Bramble Street Baths", "Since: ", "(clock of Europe/London)", "What to do: ", "If nothing is done: ", "Time to respond: ", "never a command"], part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.Equal(["plantwatch.alarm.raised", "plantwatch.alarm.cleared"], receiver.Requests.Select(request => JsonDocument.Parse(request.Body).RootElement.GetProperty("type").GetString()));
        var view = await server.GetAsync<TellingView>("/api/v1/telling");
        Assert.All(view.Channels, channel => Assert.True(channel is { Fails: false, Waiting: 0, Trouble: null, LastDeliveredAt: not null }, channel.Id));
        // Our own words are no reading and no stray.
        Assert.Equal(2, (await server.SumsAsync()).Received);
    }

    [PeerFact("mosquitto_pub", "mosquitto_sub")]
    public async Task Whoever_listens_later_finds_what_stands()
    {
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Desk));
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => Standing(server) is { } said && said.Contains("R-030", StringComparison.Ordinal), "the retained state names the alarm");

        // A device that says otherwise is not handed on.
        await server.PublishAsync("hall/alarms/hall/state", "all is well"u8.ToArray(), 1, "-r");
        Assert.Contains("\"highest\":\"high\"", Standing(server), StringComparison.Ordinal);

        await TellingPlant.MendedAsync(server);
        var alarm = server.Host.Circuits.Single().State.Alarms.Values.Single(a => a.Rule == RuleBook.PumpFault.Number);
        await server.PostAsync($"/api/v1/alarms/{alarm.Id}/acknowledge", new Acknowledge("A. Sample", null));
        await Peer.UntilAsync(() => Standing(server) is { } said && said.Contains("\"highest\":null", StringComparison.Ordinal), "nothing stands any more");
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_sub")]
    public async Task At_a_broker_of_somebody_else_it_is_told_again_once_that_is_back()
    {
        await using var broker = await Mosquitto.StartAsync();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Desk), set: options =>
        {
            (options.Broker.Mode, options.Broker.Port, options.Broker.AlsoSubscribe) = (BrokerMode.External, broker.Port, ["#"]);
        });
        await Peer.UntilAsync(() => server.GetAsync<HealthView>("/api/v1/health-view").Result.Broker.Contains("onnected", StringComparison.Ordinal), "the server is connected");
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => server.Host.Circuits.Single().State.Alarms.Count == 1, "the alarm stands");
        await Peer.UntilAsync(() => Waiting(server) == 0, "it was told");
        await broker.StopAsync();
        var alarm = server.Host.Circuits.Single().State.Alarms.Values.Single();
        await server.PostAsync($"/api/v1/alarms/{alarm.Id}/acknowledge", new Acknowledge("B. Sample", null));
        await Peer.UntilAsync(() => Channel(server, "desk") is { Waiting: 1, Trouble: not null }, "the second message waits and says why");

        await broker.StartAsync();
        await using var listener = broker.Subscribe("-t", "hall/alarms/#", "-F", "%t %r %p");
        await Peer.UntilAsync(() => listener.Output.Contains("plantwatch.alarm.acknowledged", StringComparison.Ordinal), "it arrives at the broker that is back");
        await Peer.UntilAsync(() => Channel(server, "desk") is { Waiting: 0, Trouble: null }, "and is known to have arrived");
        Assert.Equal(1, (await server.SumsAsync()).Received);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_receiver_that_was_away_is_told_once_it_is_back_and_meanwhile_it_holds_up_nobody_else()
    {
        var port = Peer.FreePort();
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With($"{TellingPlant.Webhook(port)}\n{TellingPlant.Post(box.Port)}"), set: TellingPlant.Keys);
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => box.Letters.Count == 1 && Channel(server, "house") is { Waiting: 1, Trouble: not null }, "the letter goes and the request waits");
        Assert.StartsWith("cannot be reached", Channel(server, "house").Trouble, StringComparison.Ordinal);

        await using var receiver = await Receiver.StartAsync(port);
        await Peer.UntilAsync(() => receiver.Requests.Count == 1 && Channel(server, "house") is { Waiting: 0, Trouble: null }, "the request arrives");
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_mail_server_that_refuses_is_quoted_and_tried_again()
    {
        await using var box = LetterBox.Open();
        box.Refuses = new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "mailbox is full");
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Post(box.Port)));
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => Channel(server, "post").Trouble is not null, "it says why");
        Assert.Equal("the mail server refuses: mailbox is full", Channel(server, "post").Trouble);

        box.Refuses = null;
        await Peer.UntilAsync(() => box.Letters.Count == 1, "it arrives once there is room");
    }

    [PeerFact("mosquitto_pub")]
    public async Task What_was_written_down_and_not_sent_is_sent_after_a_start_anew_under_the_same_id()
    {
        var port = Peer.FreePort();
        var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Webhook(port)), set: TellingPlant.Keys);
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => Channel(server, "house") is { Waiting: 1, Trouble: not null }, "it waits");
        var outbox = (PlantWatch.Storage.IOutbox)server.Record;
        var written = Assert.Single(await outbox.OutboxAsync(new("hall"), CancellationToken.None)).Notice.Id;
        await server.StopAsync();

        await using var receiver = await Receiver.StartAsync(port);
        await using var again = await WholeServer.StartAsync(server.Folder, set: TellingPlant.Keys);
        await Peer.UntilAsync(() => receiver.Requests.Count == 1, "it arrives");
        Assert.Equal(written.ToString(), receiver.Requests[0].Id);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Nobody_acknowledges_and_the_next_person_is_told_then_one_does_and_both_hear_of_it()
    {
        var clock = new ForwardClock();
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Post(box.Port)), clock: clock);
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => box.Letters.Count == 1, "who stands in is told");

        clock.Forward(TimeSpan.FromMinutes(31));
        await Peer.UntilAsync(() => box.Said.Any(said => said.StartsWith("ben@", StringComparison.Ordinal)), "the next one is told");
        Assert.Contains("nobody who was told before you", box.Letters.Last(letter => letter.To.Mailboxes.Single().Address == "ben@baths.example").TextBody, StringComparison.Ordinal);

        var alarm = server.Host.Circuits.Single().State.Alarms.Values.Single(a => a.Rule == RuleBook.PumpFault.Number);
        await server.PostAsync($"/api/v1/alarms/{alarm.Id}/acknowledge", new Acknowledge("B. Sample", "on my way"));
        await Peer.UntilAsync(() => box.Said.Count(said => said.Contains("Seen to: Main pool", StringComparison.Ordinal)) >= 2, "both hear that somebody has taken it");
        Assert.Contains(box.Letters, letter => letter.TextBody!.Contains("Acknowledged by B. Sample", StringComparison.Ordinal));
    }

    [PeerFact("mosquitto_pub")]
    public async Task In_quiet_hours_a_low_alarm_waits_for_their_end_and_a_high_one_does_not()
    {
        var clock = new ForwardClock();
        var now = TimeZoneInfo.ConvertTime(clock.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        var quiet = FormattableString.Invariant($"  quiet_hours: {{ from: \"{now.AddHours(-1):HH\\:mm}\", to: \"{now.AddHours(2):HH\\:mm}\" }}");
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Post(box.Port), quiet), clock: clock);
        await server.PublishAsync("hall/acid/tank", "4");
        clock.Forward(TimeSpan.FromMinutes(2));
        await server.PublishAsync("hall/acid/tank", "4");
        await Peer.UntilAsync(() => server.Host.Circuits.Single().State.Alarms.Values.Any(a => a.Rule == RuleBook.TankLow.Number && a.Active), "the tank is low");
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => box.Letters.Count > 0, "the high one is told");
        Assert.DoesNotContain(box.Said, said => said.Contains(": Low: ", StringComparison.Ordinal));

        clock.Forward(TimeSpan.FromHours(3));
        await Peer.UntilAsync(() => box.Said.Any(said => said.Contains(": Low: ", StringComparison.Ordinal)), "the low one is told when the quiet hours are over");
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_way_that_stays_closed_is_an_alarm_told_by_the_others_and_over_when_it_opens()
    {
        var clock = new ForwardClock();
        var port = Peer.FreePort();
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With($"{TellingPlant.Webhook(port)}\n{TellingPlant.Post(box.Port)}"), set: TellingPlant.Keys, clock: clock);
        await TellingPlant.FaultAsync(server);
        await Peer.UntilAsync(() => Channel(server, "house").Trouble is not null, "the request fails");
        clock.Forward(TimeSpan.FromMinutes(2));
        await Peer.UntilAsync(() => box.Said.Any(said => said.Contains("High: Hall: People are not told", StringComparison.Ordinal)), "the letter says that the other way is closed");
        Assert.True(Channel(server, "house").Fails);
        // Whoever reads the bar knows the way by its name, not by its key.
        Assert.Equal("House", (await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms.Single(a => a.Rule == RuleBook.ChannelFails.Number).SubjectName);

        await using var receiver = await Receiver.StartAsync(port);
        clock.Forward(TimeSpan.FromMinutes(15));
        await Peer.UntilAsync(() => box.Said.Any(said => said.Contains("Over: Hall: People are not told", StringComparison.Ordinal)), "and that it is open again");
        Assert.DoesNotContain(receiver.Requests, request => System.Text.Encoding.UTF8.GetString(request.Body).Contains("R-080", StringComparison.Ordinal));
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_letter_about_a_reading_carries_its_strip()
    {
        var clock = new ForwardClock();
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Post(box.Port)), clock: clock);
        await server.PublishAsync("hall/ph", "9.1");
        clock.Forward(TimeSpan.FromSeconds(30));
        await server.PublishAsync("hall/ph", "9.1");
        await Peer.UntilAsync(() => box.Letters.Any(letter => letter.Attachments.Any()), "a letter with a picture");

        var picture = (MimePart)box.Letters.First(letter => letter.Attachments.Any()).Attachments.Single();
        using var bytes = new MemoryStream();
        await picture.Content!.DecodeToAsync(bytes);
        Assert.Equal("image/png", picture.ContentType.MimeType);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], bytes.ToArray()[..4]);
    }

    [Fact]
    public async Task A_test_message_says_what_became_of_it_and_asks_who_wants_it()
    {
        await using var box = LetterBox.Open();
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With($"{TellingPlant.Post(box.Port)}\n{TellingPlant.Webhook(Peer.FreePort())}"), set: TellingPlant.Keys);

        var answer = await WholeServer.ReadAsync<TestMessageAnswer>(await server.PostAsync("/api/v1/telling/post/test", new TestMessage("B. Sample")));
        var failed = await WholeServer.ReadAsync<TestMessageAnswer>(await server.PostAsync("/api/v1/telling/house/test", new TestMessage("B. Sample")));

        Assert.True(answer.Delivered);
        Assert.Equal(["A. Sample"], answer.To);
        Assert.Contains("B. Sample asked for a test message", Assert.Single(box.Letters).TextBody, StringComparison.Ordinal);
        Assert.False(failed.Delivered);
        Assert.StartsWith("cannot be reached", failed.Trouble, StringComparison.Ordinal);
        Assert.Equal(System.Net.HttpStatusCode.BadRequest, (await server.PostAsync("/api/v1/telling/post/test", new TestMessage(" "))).StatusCode);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await server.PostAsync("/api/v1/telling/pigeon/test", new TestMessage("B. Sample"))).StatusCode);
    }

    [Fact]
    public async Task Who_is_on_call_now_and_next_is_said()
    {
        var now = TimeZoneInfo.ConvertTime(TimeProvider.System.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        var roster = FormattableString.Invariant($"  roster:\n    - {{ person: ben, from: \"{now.AddHours(-2):HH\\:mm}\", to: \"{now.AddHours(2):HH\\:mm}\" }}");
        await using var server = await WholeServer.StartAsync(plant: TellingPlant.With(TellingPlant.Desk, roster));

        var view = await server.GetAsync<TellingView>("/api/v1/telling");

        Assert.Equal(["B. Sample"], view.OnCall);
        Assert.False(view.StandsIn);
        Assert.Equal(["A. Sample"], view.Next);
        Assert.InRange((view.NextAt!.Value - WholeServer.Now).TotalMinutes, 118, 121);
        Assert.Equal(["A. Sample", "B. Sample"], view.Escalation);
    }

    private static ChannelView Channel(WholeServer server, string id) => server.GetAsync<TellingView>("/api/v1/telling").Result.Channels.Single(channel => channel.Id == id);

    private static int Waiting(WholeServer server) => server.GetAsync<TellingView>("/api/v1/telling").Result.Channels.Sum(channel => channel.LastDeliveredAt is null ? 1 : channel.Waiting);

    private static int Notices(Peer listener) => listener.Lines.Count(line => line.StartsWith("hall/alarms/hall/notices 0", StringComparison.Ordinal));

    private static string Standing(WholeServer server)
    {
        var listener = Peer.Start("mosquitto_sub", "-h", "127.0.0.1", "-p", $"{server.MqttPort}", "-t", "hall/alarms/hall/state", "-C", "1", "-W", "3");
        listener.ExitAsync().Wait();
        return listener.Output;
    }
}
