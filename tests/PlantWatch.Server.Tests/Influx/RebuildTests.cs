using PlantWatch.Server.Commands;
using PlantWatch.Server.Commands.Rebuild;
using PlantWatch.Server.Hosting;
using PlantWatch.Server.Series;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>The command that writes everything again.</summary>
public sealed class RebuildTests : IDisposable
{
    private const int Readings = 12_000;
    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("plantwatch-rebuild-");
    private readonly StringWriter _output = new();
    private readonly StringWriter _complaints = new();

    public void Dispose()
    {
        _data.Delete(recursive: true);
        _output.Dispose();
        _complaints.Dispose();
    }

    [PeerFact("influxd")]
    public async Task A_database_that_was_lost_is_filled_again_and_the_command_says_how_far_it_is()
    {
        await using var influxd = await Influxd.StartAsync();
        await FillAsync();
        Assert.Equal(0, Run(influxd.Url));
        await influxd.AskAsync($"DROP DATABASE {Influxd.Database}; CREATE DATABASE {Influxd.Database}");

        Assert.Equal(0, Run(influxd.Url));

        Assert.Equal(Readings, await PointsAsync(influxd));
        var lines = _output.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("12,000 readings are to be written.", lines[0]);
        Assert.Contains("40 %", lines);
        Assert.Equal("All 12,000 readings were written.", lines[^1]);
        Assert.Equal("", _complaints.ToString());
    }

    [PeerFact("influxd")]
    public async Task Broken_off_it_goes_on_where_it_was()
    {
        await using var influxd = await Influxd.StartAsync();
        await FillAsync();
        await using var gate = await Gate.BeforeAsync(influxd.Url);
        gate.AfterWrite = _ =>
        {
            gate.Refuses = 401;
            return Task.CompletedTask;
        };

        Assert.Equal(2, Run(gate.Url));
        Assert.Contains("InfluxDB refuses the token", _complaints.ToString(), StringComparison.Ordinal);
        var writtenBefore = await PointsAsync(influxd);
        (gate.Refuses, gate.AfterWrite) = (null, _ => Task.CompletedTask);
        Assert.Equal(0, Run(gate.Url));

        Assert.Equal((5000L, (long)Readings), (writtenBefore, await PointsAsync(influxd)));
        Assert.Contains("It goes on: 7,000 of 12,000 readings are still to be written.", _output.ToString(), StringComparison.Ordinal);
    }

    [PeerFact("influxd")]
    public async Task Where_the_server_runs_it_writes_and_the_command_looks_on()
    {
        await using var influxd = await Influxd.StartAsync();
        await FillAsync();
        Assert.Equal(0, Run(influxd.Url));
        await influxd.AskAsync($"DROP DATABASE {Influxd.Database}; CREATE DATABASE {Influxd.Database}");
        using var held = RecordLock.Take(_data.FullName);
        await using var record = Open();
        using var door = new InfluxDoor(new(influxd.Url, Influxd.Database, null, () => null), TimeProvider.System);
        using var end = new CancellationTokenSource();
        var server = Task.Run(async () =>
        {
            var feeder = new SeriesFeeder(record, door, TimeProvider.System);
            while (!end.IsCancellationRequested)
                if (!(await feeder.StepAsync(default)).IsMore) await Task.Delay(50);
        });

        Assert.Equal(0, await Task.Run(() => Run(influxd.Url)));
        await end.CancelAsync();
        await server;

        Assert.Equal(Readings, await PointsAsync(influxd));
        Assert.Contains("The server runs and writes them.", _output.ToString(), StringComparison.Ordinal);
    }

    [PeerFact("influxd")]
    public async Task Lines_that_are_refused_are_named_at_the_end_and_get_another_chance()
    {
        await using var influxd = await Influxd.StartAsync();
        await FillAsync();
        await influxd.WriteAsync($"reading,circuit=x,probe=y value=7i {FedRecord.Noon.UnixMicroseconds}");

        Assert.Equal(1, Run(influxd.Url));
        Assert.Contains("but for 12,000 lines that InfluxDB refuses:", _output.ToString(), StringComparison.Ordinal);
        Assert.Contains("main-circuit/main-ph, 12,000 from 2026-06-01T12:00:00Z to 2026-06-01T15:19:59Z: partial write: field type conflict", _output.ToString(), StringComparison.Ordinal);

        await influxd.AskAsync($"DROP DATABASE {Influxd.Database}; CREATE DATABASE {Influxd.Database}");
        Assert.Equal(0, Run(influxd.Url));
        Assert.Equal(Readings, await PointsAsync(influxd));
    }

    [Fact]
    public void Without_a_server_or_a_record_it_says_what_is_missing()
    {
        Assert.Equal(2, RebuildSeriesCommand.Run(new(null, false), new PlantWatchOptions { Data = _data.FullName }, _output, _complaints));
        Assert.Equal(2, Run(new Uri("http://127.0.0.1:9")));
        Assert.Equal($"PlantWatch__Influx__Url names no server{Environment.NewLine}{Path.Combine(_data.FullName, "record.db")} is not there{Environment.NewLine}", _complaints.ToString());
        Assert.Equal(2, CommandLine.Run(["rebuild-series", "--new"], _output, _complaints));
    }

    private int Run(Uri url) => RebuildSeriesCommand.Run(
        new(null, false), new PlantWatchOptions { Data = _data.FullName, PlantFile = Path.Combine(_data.FullName, "plant.yaml"), Influx = new InfluxOptions { Url = url.ToString() } }, _output, _complaints);

    private SqliteStore Open() => SqliteStore.Open(Path.Combine(_data.FullName, "record.db"), TimeZoneInfo.Utc);

    private async Task FillAsync()
    {
        await using var store = Open();
        await store.CommitAsync([Batch.Of(1, FedRecord.Seconds(0, Readings))], default);
    }

    private static async Task<long> PointsAsync(Influxd influxd)
    {
        using var door = new InfluxDoor(new(influxd.Url, Influxd.Database, null, () => null), TimeProvider.System);
        return await door.AskAsync("SELECT count(value) FROM reading WHERE circuit = 'main-circuit'", default) is [var table] ? (long)table.Rows[0][1]!.Value : 0;
    }
}
