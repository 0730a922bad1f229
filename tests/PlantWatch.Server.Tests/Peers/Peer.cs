using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace PlantWatch.Server.Tests.Peers;

/// <summary>A program of somebody else, started by a test and ended by its process id.</summary>
public sealed class Peer : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);
    private readonly StringBuilder _output = new();
    private readonly Process _process;

    private Peer(Process process) => _process = process;

    /// <summary>Everything written so far, both streams.</summary>
    public string Output
    {
        get
        {
            lock (_output) return _output.ToString();
        }
    }

    public IReadOnlyList<string> Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public bool HasExited => _process.HasExited;

    public StreamWriter Input => _process.StandardInput;

    /// <summary>Where a program lies; null when it is not installed. Daemons hide in sbin, which is often not on the path.</summary>
    public static string? Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Concat(["/usr/sbin", "/usr/local/sbin", "/usr/bin"])
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists);

    public static Peer Start(string program, params string[] arguments)
    {
        var path = Find(program) ?? throw new FileNotFoundException("not installed", program);
        // Line by line even into a pipe; stdbuf becomes the program, so the process id is its own.
        string[] command = Find("stdbuf") is { } stdbuf ? [stdbuf, "-oL", path, .. arguments] : [path, .. arguments];
        var start = new ProcessStartInfo(command[0], command[1..])
        {
            RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, UseShellExecute = false,
        };
        var peer = new Peer(new Process { StartInfo = start });
        peer._process.OutputDataReceived += (_, e) => peer.Note(e.Data);
        peer._process.ErrorDataReceived += (_, e) => peer.Note(e.Data);
        peer._process.Start();
        peer._process.BeginOutputReadLine();
        peer._process.BeginErrorReadLine();
        return peer;
    }

    /// <summary>A port that was free a moment ago, below those that the system gives to outgoing connections: one of these could take it meanwhile, or even connect to itself.</summary>
    public static int FreePort()
    {
        while (true)
        {
            var port = Random.Shared.Next(10_000, 32_000);
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return port;
            }
            catch (SocketException)
            {
                // Taken: another one.
            }
        }
    }

    /// <summary>Waits until something holds, and fails with its sentence when it does not come about.</summary>
    public static async Task UntilAsync(Func<bool> holds, string sentence)
    {
        var deadline = Stopwatch.StartNew();
        while (!holds())
        {
            if (deadline.Elapsed > Patience) Assert.Fail($"did not come about within {Patience.TotalSeconds} s: {sentence}");
            await Task.Delay(10);
        }
    }

    /// <summary>The exit code, once the program has ended by itself.</summary>
    public async Task<int> ExitAsync()
    {
        using var patience = new CancellationTokenSource(Patience);
        await _process.WaitForExitAsync(patience.Token);
        return _process.ExitCode;
    }

    /// <summary>True when the program still runs after a while in which it had every chance to end.</summary>
    public async Task<bool> GoesOnAsync(TimeSpan forAtLeast)
    {
        using var over = new CancellationTokenSource(forAtLeast);
        try
        {
            await _process.WaitForExitAsync(over.Token);
            return false;
        }
        catch (OperationCanceledException)
        {
            return true;
        }
    }

    /// <summary>Ends it without a chance to say goodbye or write anything (SIGKILL).</summary>
    public async Task KillAsync()
    {
        if (!_process.HasExited) _process.Kill();
        await ExitAsync();
    }

    /// <summary>Asks it to end (SIGTERM) and waits.</summary>
    public async Task StopAsync()
    {
        if (!_process.HasExited)
        {
            using var kill = Process.Start("kill", ["-TERM", _process.Id.ToString(CultureInfo.InvariantCulture)]);
            await kill.WaitForExitAsync();
        }
        await ExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited) await KillAsync();
        _process.Dispose();
    }

    private void Note(string? line)
    {
        if (line is null) return;
        lock (_output) _output.Append(line).Append('\n');
    }
}
