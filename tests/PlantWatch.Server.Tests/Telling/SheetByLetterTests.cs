using MimeKit;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Tests.Paper;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>Planned sheets by a real mail server on loopback.</summary>
public sealed class SheetByLetterTests
{
    private static string Plant(LetterBox box) => TellingPlant.With(TellingPlant.Post(box.Port), "  sheets:\n    - { kind: day-log, pools: [main], at: \"01:30\", to: [ann, ben] }");

    [Fact]
    public async Task A_sheet_goes_to_each_once_a_day_with_its_PDF_also_when_its_hour_comes_twice_and_the_server_is_started_anew()
    {
        await using var box = LetterBox.Open();
        // In London half past one comes at 00:30 and at 01:30 UTC on 25 October 2026 (tz database).
        var clock = new BegunClock(Instant.FromUtc(2026, 10, 25, 0, 31));
        var server = await WholeServer.StartAsync(plant: Plant(box), clock: clock);
        await Peer.UntilAsync(() => box.Letters.Count == 2, "both have their letter");
        Assert.Equal(["ann@baths.example: Bramble Street Baths: Day log sheet, 2026-10-24", "ben@baths.example: Bramble Street Baths: Day log sheet, 2026-10-24"], box.Said.Order());
        var letter = box.Letters[0];
        Assert.Contains("Day log sheet, 2026-10-24, for Main pool", letter.TextBody, StringComparison.Ordinal);
        var text = PaperPlant.TextOf(Enclosed(letter));
        Assert.All(["Saturday, 2026-10-24", "PlantWatch, as planned", "Bramble Street Baths"], part => Assert.Contains(part, text, StringComparison.Ordinal));

        // The second half past one, and a new start within it.
        clock.Forward(TimeSpan.FromHours(1));
        await server.StopAsync();
        await using var again = await WholeServer.StartAsync(server.Folder, clock: clock);
        clock.Forward(TimeSpan.FromHours(24));
        await Peer.UntilAsync(() => box.Letters.Count == 4, "the next day has its letters");
        Assert.Equal(2, box.Said.Count(said => said.EndsWith("2026-10-24", StringComparison.Ordinal)));
        Assert.Equal(2, box.Said.Count(said => said.EndsWith("2026-10-25", StringComparison.Ordinal)));
        Assert.Contains("25 hours", PaperPlant.TextOf(Enclosed(box.Letters[^1])), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_cannot_be_handed_in_is_tried_again_and_arrives_once()
    {
        await using var box = LetterBox.Open();
        box.Refuses = SmtpServer.Protocol.SmtpResponse.MailboxUnavailable;
        var clock = new BegunClock(Instant.FromUtc(2026, 5, 4, 1));
        await using var server = await WholeServer.StartAsync(plant: Plant(box), clock: clock);
        await Peer.UntilAsync(() => server.GetAsync<Api.TellingView>("/api/v1/telling").Result.Channels.Single().Trouble is not null, "the trouble is said");
        box.Refuses = null;
        clock.Forward(TimeSpan.FromMinutes(15));
        await Peer.UntilAsync(() => box.Letters.Count == 2, "both have their letter");
        Assert.All(box.Letters, letter => Assert.NotEmpty(Enclosed(letter)));
    }

    private static byte[] Enclosed(MimeMessage letter)
    {
        var part = Assert.IsType<MimePart>(Assert.Single(letter.Attachments), exactMatch: false);
        Assert.Equal("application/pdf", part.ContentType.MimeType);
        Assert.StartsWith("day-log-2026-", part.FileName, StringComparison.Ordinal);
        using var bytes = new MemoryStream();
        part.Content!.DecodeTo(bytes);
        return bytes.ToArray();
    }
}
