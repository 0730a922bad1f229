using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

public sealed class InMemoryStoreTests : StoreContract
{
    protected override IRecordStore Open(TimeZoneInfo siteZone) => new InMemoryStore(siteZone);
}
