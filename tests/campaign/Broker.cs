using System.Globalization;
using System.Net.Sockets;

namespace PlantWatch.Campaign;

/// <summary>A mosquitto with the configuration that PlantWatch is deployed with, on a port and in a folder of its own.</summary>
internal sealed class Broker(string folder, int port) : IAsyncDisposable
{
    private OwnProcess? _process;

    public async Task StartAsync()
    {
        Directory.CreateDirectory(folder);
        var file = Path.Combine(folder, "mosquitto.conf");
        await File.WriteAllTextAsync(file, Configuration());
        _process = new OwnProcess(Programs.Find("mosquitto"), ["-c", file], _ => { });
        if (!await Programs.ComesAboutAsync(AnswersAsync, TimeSpan.FromSeconds(20))) throw new IOException("mosquitto does not answer");
    }

    public Task KillAsync() => _process?.KillAsync() ?? Task.CompletedTask;

    public ValueTask DisposeAsync() => _process?.DisposeAsync() ?? ValueTask.CompletedTask;

    private string Configuration()
    {
        var deployed = File.ReadAllLines(Path.Combine(Programs.Repository, "src", "PlantWatch.Server", "Deploy", "mosquitto.conf"));
        var kept = deployed.Where(line => !line.StartsWith("listener ", StringComparison.Ordinal) && !line.StartsWith("persistence_location ", StringComparison.Ordinal));
        // The listener comes first: some keys speak of the listener above them. As root it would become a user that may not write here.
        string[] own = [$"listener {port.ToString(CultureInfo.InvariantCulture)} 127.0.0.1", $"persistence_location {folder}/", "user root"];
        return string.Join('\n', own.Concat(kept).Append(""));
    }

    private async Task<bool> AnswersAsync()
    {
        try
        {
            if (_process!.HasExited) throw new IOException($"mosquitto ended with {_process.ExitCode}");
            using var client = new TcpClient();
            await client.ConnectAsync("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
