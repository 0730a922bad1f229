using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Server;
using PlantWatch.Server.Api;

namespace PlantWatch.Campaign;

/// <summary>The real server as a process of its own, configured by its environment as an operator would.</summary>
internal sealed class ServerProcess(string folder, BrokerMode mode, int brokerPort) : IAsyncDisposable
{
    private readonly HttpClient _http = new() { Timeout = TimeSpan.FromSeconds(5) };
    private readonly List<string> _said = [];
    private OwnProcess? _process;
    private int _webPort = Programs.FreePort();

    public string Data => Path.Combine(folder, "data");

    public string PlantFile => Path.Combine(folder, "plant.yaml");

    /// <summary>Further settings, as its environment gives them.</summary>
    public IReadOnlyDictionary<string, string> Further { get; init; } = new Dictionary<string, string>();

    public int Id => _process?.Id ?? 0;

    public bool HasExited => _process?.HasExited ?? true;

    public int ExitCode => _process?.ExitCode ?? 0;

    /// <summary>Every line of all its lives.</summary>
    public IReadOnlyList<string> Said
    {
        get
        {
            lock (_said) return [.. _said];
        }
    }

    /// <summary>Starts it; a shell line may set limits first, before it becomes the server.</summary>
    public void Start(string before = "")
    {
        _webPort = Programs.FreePort();
        var environment = new Dictionary<string, string>
        {
            ["PlantWatch__PlantFile"] = PlantFile,
            ["PlantWatch__Data"] = Data,
            ["PlantWatch__Broker__Mode"] = mode.ToString(),
            ["PlantWatch__Broker__Port"] = brokerPort.ToString(CultureInfo.InvariantCulture),
            ["urls"] = Address,
            // It lies in the build output, where a watcher of files that never change only costs handles.
            ["DOTNET_USE_POLLING_FILE_WATCHER"] = "false",
        };
        foreach (var (name, value) in Further) environment[name] = value;
        string[] server = ["dotnet", Programs.ServerAssembly];
        string[] command = before.Length == 0 ? server : ["/bin/bash", "-c", before + "; exec \"$@\"", "bash", .. server];
        _process = new OwnProcess(command[0], command[1..], Hear, environment, folder);
    }

    /// <summary>True once every part of it stands.</summary>
    public async Task<bool> IsReadyAsync()
    {
        try
        {
            using var answer = await _http.GetAsync(new Uri($"{Address}/health/ready"));
            return answer.StatusCode == HttpStatusCode.OK;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return false;
        }
    }

    /// <summary>The closing sums; null while it does not answer.</summary>
    public async Task<LedgerView?> SumsAsync()
    {
        try
        {
            return (await _http.GetFromJsonAsync<HealthView>($"{Address}/api/v1/health-view", PlantJson.Options))?.Ledger;
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException)
        {
            return null;
        }
    }

    public Task KillAsync() => _process?.KillAsync() ?? Task.CompletedTask;

    public void AskToEnd() => _process?.AskToEnd();

    public Task<bool> EndsAsync(TimeSpan within) => _process?.EndsAsync(within) ?? Task.FromResult(true);

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        if (_process is { } process) await process.DisposeAsync();
    }

    private string Address => $"http://127.0.0.1:{_webPort.ToString(CultureInfo.InvariantCulture)}";

    private void Hear(string line)
    {
        lock (_said) _said.Add(line);
    }
}
