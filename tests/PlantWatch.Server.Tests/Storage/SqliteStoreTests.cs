using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Storage;

public sealed class SqliteStoreTests : StoreContract
{
    private readonly DatabaseFile file = new();

    protected override IRecordStore Open(TimeZoneInfo siteZone) => SqliteStore.Open(file.Path, siteZone);

    public override async Task DisposeAsync()
    {
        await base.DisposeAsync();
        file.Remove();
    }
}
