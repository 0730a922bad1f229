using PlantWatch.Campaign;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>The disk is full: nothing is acknowledged, nothing breaks, and it goes on by itself when there is room again.</summary>
public sealed class FullDiskTests : IAsyncLifetime
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly int _port = Programs.FreePort();
    private SmallDisk _disk = null!;
    private ServerProcess _server = null!;

    private string RecordFile => Path.Combine(_server.Data, "record.db");

    public async Task InitializeAsync()
    {
        _disk = SmallDisk.Mount(24)!;
        _server = ServerOn(_disk);
        await File.WriteAllTextAsync(_server.PlantFile, new NumberPlant(2).Yaml());
        _server.Start();
        Assert.True(await Programs.ComesAboutAsync(_server.IsReadyAsync, Patience), Said());
    }

    public async Task DisposeAsync()
    {
        await _server.DisposeAsync();
        _disk.Dispose();
    }

    [SmallDiskFact]
    public async Task Acknowledgements_stop_the_server_says_why_and_when_there_is_room_everything_is_stored_once()
    {
        await using var device = new Device(0, _port);
        var committed = await SayUntilStuck(device);

        Assert.True(await Programs.ComesAboutAsync(async () => !await _server.IsReadyAsync(), Patience), "a server that cannot commit is not ready");
        Assert.False(_server.HasExited, Said());
        Assert.Equal(committed, device.Acknowledged);

        _disk.Clear();
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged == device.Said), Patience), Said());
        Assert.True(await Programs.ComesAboutAsync(_server.IsReadyAsync, Patience), Said());
        await PromiseIsKept(device);
    }

    [SmallDiskFact]
    public async Task Killed_while_the_disk_is_full_and_started_again_before_there_is_room()
    {
        await using var device = new Device(0, _port);
        await SayUntilStuck(device);
        await _server.KillAsync();
        _disk.Fill();
        _server.Start();
        await Task.Delay(TimeSpan.FromSeconds(3)); // every chance to break
        var brokeAt = _server.HasExited ? _server.ExitCode : 0;
        Assert.True(brokeAt == 0, Said());

        _disk.Clear();
        Assert.True(await Programs.ComesAboutAsync(_server.IsReadyAsync, Patience), Said());
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged == device.Said), Patience), Said());
        await PromiseIsKept(device);
    }

    [SmallDiskFact]
    public async Task Asked_to_end_while_the_disk_is_full_it_ends()
    {
        await using var device = new Device(0, _port);
        await SayUntilStuck(device);
        _server.AskToEnd();
        Assert.True(await _server.EndsAsync(TimeSpan.FromSeconds(30)), Said());
        Assert.Equal("ok", new PlantWatch.Campaign.Record(RecordFile, _server.PlantFile).Integrity());
    }

    /// <summary>Numbers flow, the disk fills up, the flow stops. Gives how many were acknowledged then.</summary>
    private async Task<int> SayUntilStuck(Device device)
    {
        await device.SayAsync(500);
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged == 500), Patience), Said());
        _disk.Fill();
        await device.SayAsync(4000);
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(_server.Said.Any(line => line.Contains("nothing is acknowledged until it succeeds", StringComparison.Ordinal))), Patience), Said());
        var before = device.Acknowledged;
        await Task.Delay(500); // every chance to acknowledge what is not on disk
        Assert.True(device.Acknowledged < device.Said, "the disk was not full");
        Assert.Equal(before, device.Acknowledged);
        return before;
    }

    private async Task PromiseIsKept(Device device)
    {
        _server.AskToEnd();
        Assert.True(await _server.EndsAsync(Patience), Said());
        var record = new PlantWatch.Campaign.Record(RecordFile, _server.PlantFile);
        Assert.Equal(default, Tally.Of(record.Values(NumberPlant.Circuit(0), NumberPlant.Probe(0)), device.Said, device.IsAcknowledged));
        Assert.Equal("ok", record.Integrity());
        Assert.True(await record.StatesAgreeAsync());
        var sums = await record.SumsAsync();
        Assert.True(sums.Close && sums.Stored == device.Said, sums.ToString());
    }

    private ServerProcess ServerOn(SmallDisk disk) => new(disk.Folder, BrokerMode.Embedded, _port);

    private string Said() => string.Join('\n', _server.Said.TakeLast(40));
}
