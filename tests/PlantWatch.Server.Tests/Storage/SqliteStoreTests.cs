using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Storage;

public sealed class SqliteStoreTests : StoreContract
{
    private readonly DatabaseFile _file = new();

    protected override IRecordStore Open(TimeZoneInfo siteZone) => SqliteStore.Open(_file.Path, siteZone);

    [Fact]
    public async Task Of_many_refusals_of_a_reason_the_newest_are_kept_and_the_others_counted()
    {
        var none = CancellationToken.None;
        Refusal Of(RefusalReason reason, int i, int bytes) =>
            new(TimeOrderedId.Derive(Batch.Noon, $"{reason}/{i}"), Batch.Noon + TimeSpan.FromMilliseconds(i), "pool/ph", new byte[bytes], reason, "");
        for (var batch = 0; batch < 12; batch++)
            await Record.CommitAsync([Batch.Of(batch + 1).With(refusals: [.. Enumerable.Range(batch * 300, 300).Select(i => Of(RefusalReason.NotANumber, i, 3))])], none);
        await Record.CommitAsync([Batch.Of(13).With(refusals: [.. Enumerable.Range(0, 40).Select(i => Of(RefusalReason.TooLarge, i, 1 << 20))])], none);
        await Record.CommitAsync([Batch.Of(14).With(refusals: [Of(RefusalReason.Empty, 0, 0)])], none);

        var kept = await Record.RefusalsAsync(Batch.Main, 10_000, none);
        var forgotten = await Record.ForgottenRefusalsAsync(Batch.Main, none);
        Assert.Equal(1000, kept.Count(r => r.Reason == RefusalReason.NotANumber));
        Assert.Equal(Batch.Noon + TimeSpan.FromMilliseconds(3599), kept.Where(r => r.Reason == RefusalReason.NotANumber).Max(r => r.ReceivedAt));
        Assert.Equal(2600, forgotten[RefusalReason.NotANumber]);
        Assert.Equal((16, 24L), (kept.Count(r => r.Reason == RefusalReason.TooLarge), forgotten[RefusalReason.TooLarge]));
        Assert.Single(kept, r => r.Reason == RefusalReason.Empty);
    }

    public override async Task DisposeAsync()
    {
        await base.DisposeAsync();
        _file.Remove();
    }
}
