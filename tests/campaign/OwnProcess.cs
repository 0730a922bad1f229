using System.Diagnostics;
using System.Globalization;

namespace PlantWatch.Campaign;

/// <summary>A program that was started here, is heard line by line, and is ended by its process id.</summary>
internal sealed class OwnProcess : IAsyncDisposable
{
    private readonly Process _process;

    public OwnProcess(string program, IEnumerable<string> arguments, Action<string> hear, IReadOnlyDictionary<string, string>? environment = null, string? folder = null)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, UseShellExecute = false, WorkingDirectory = folder ?? "",
        };
        foreach (var (name, value) in environment ?? new Dictionary<string, string>()) start.Environment[name] = value;
        _process = new Process { StartInfo = start };
        _process.OutputDataReceived += (_, e) => { if (e.Data is { } line) hear(line); };
        _process.ErrorDataReceived += (_, e) => { if (e.Data is { } line) hear(line); };
        _process.Start();
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
    }

    public int Id => _process.Id;

    public bool HasExited => _process.HasExited;

    /// <summary>Valid once it has ended.</summary>
    public int ExitCode => _process.ExitCode;

    public StreamWriter Input => _process.StandardInput;

    /// <summary>Ends it as a power cut would (SIGKILL).</summary>
    public async Task KillAsync()
    {
        if (!_process.HasExited) _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <summary>Asks it to end (SIGTERM) and goes on.</summary>
    public void AskToEnd()
    {
        if (_process.HasExited) return;
        using var kill = Process.Start("kill", ["-TERM", Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    /// <summary>Waits for its end; false when it does not come in time.</summary>
    public async Task<bool> EndsAsync(TimeSpan within)
    {
        using var patience = new CancellationTokenSource(within);
        try
        {
            await _process.WaitForExitAsync(patience.Token);
            return true;
        }
        catch (OperationCanceledException)
        {
            return false;
        }
    }

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        _process.Dispose();
    }
}
