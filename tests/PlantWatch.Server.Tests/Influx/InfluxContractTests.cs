using System.Reflection;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>Every sentence that a store must keep, with the series read from a real influxd.</summary>
public sealed class InfluxContractTests(InfluxContractTests.Shared shared) : IClassFixture<InfluxContractTests.Shared>
{
    /// <summary>One server for all of them; each has a database of its own.</summary>
    public sealed class Shared : IAsyncLifetime
    {
        public Influxd? Influxd { get; private set; }

        public async Task InitializeAsync()
        {
            if (Peer.Find("influxd") is not null) Influxd = await Influxd.StartAsync();
        }

        public async Task DisposeAsync()
        {
            if (Influxd is { } influxd) await influxd.DisposeAsync();
        }
    }

    public static TheoryData<string, int> Sentences
    {
        get
        {
            var sentences = new TheoryData<string, int>();
            foreach (var method in typeof(StoreContract).GetMethods(BindingFlags.Instance | BindingFlags.Public).Where(m => m.GetCustomAttribute<FactAttribute>() is not null).OrderBy(m => m.Name, StringComparer.Ordinal))
                for (var row = 0; row < Rows(method).Length; row++) sentences.Add(method.Name, row);
            return sentences;
        }
    }

    [PeerTheory("influxd")]
    [MemberData(nameof(Sentences))]
    public async Task The_contract_of_every_store_is_kept(string sentence, int row)
    {
        var influxd = shared.Influxd!;
        var database = $"contract_{Guid.NewGuid():N}";
        await influxd.AskAsync($"CREATE DATABASE {database}");
        var contract = new Contract(influxd, database);
        try
        {
            var method = typeof(StoreContract).GetMethod(sentence)!;
            await (Task)method.Invoke(contract, Rows(method)[row])!;
        }
        finally
        {
            await contract.DisposeAsync();
            await influxd.AskAsync($"DROP DATABASE {database}");
        }
    }

    private static object?[][] Rows(MethodInfo method) =>
        method.GetCustomAttributes<InlineDataAttribute>().ToArray() is { Length: > 0 } rows ? [.. rows.SelectMany(r => r.GetData(method))] : [[]];

    // Not found by itself, because it is not public: it cannot say why it is skipped.
    private sealed class Contract(Influxd influxd, string database) : StoreContract
    {
        private readonly DatabaseFile _file = new();

        protected override IRecordStore Open(TimeZoneInfo siteZone) =>
            new FedStore(SqliteStore.Open(_file.Path, siteZone), new InfluxDoor(new(influxd.Url, database, null, () => null), TimeProvider.System), influxd, database, siteZone);

        public override async Task DisposeAsync()
        {
            await base.DisposeAsync();
            if (Directory.Exists(Path.GetDirectoryName(_file.Path))) _file.Remove();
        }
    }
}
