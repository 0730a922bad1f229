using System.Globalization;

namespace PlantWatch.Simulator;

/// <summary>What the command line asks for.</summary>
/// <param name="Host">Broker.</param>
/// <param name="Port">Broker's port.</param>
/// <param name="Api">Address of the server, for checks; null sends none.</param>
/// <param name="Scenario">Scenario file or name.</param>
/// <param name="Speed">Simulated seconds a real second.</param>
/// <param name="From">Simulated start; null means now.</param>
internal sealed record RunOptions(string Host, int Port, Uri? Api, string Scenario, double Speed, DateTimeOffset? From)
{
    /// <summary>What can be asked for.</summary>
    public const string Usage = """
        A simulated pool plant: probes and pumps by MQTT, manual checks by the public interface.
          --broker host:port   where to publish (127.0.0.1:1883)
          --api URL            where to send checks (http://127.0.0.1:5080/); --api none sends none
          --scenario FILE      scenario file, or the name of one that comes along (quiet-month)
          --speed N            simulated seconds a real second (1); device times run ahead of the clock unless --from lies in the past
          --from TIME          simulated start, ISO 8601 with offset (now)
        """;

    /// <summary>Reads the command line; the second part says what was wrong.</summary>
    public static (RunOptions? Options, string? Error) Read(IReadOnlyList<string> args)
    {
        var options = new RunOptions("127.0.0.1", 1883, new Uri("http://127.0.0.1:5080/"), "quiet-month", 1, null);
        for (var i = 0; i < args.Count; i += 2)
        {
            if (i + 1 == args.Count) return (null, $"{args[i]} wants a value");
            if (options.With(args[i], args[i + 1]) is not { } next) return (null, $"not understood: {args[i]} {args[i + 1]}");
            options = next;
        }
        return (options, null);
    }

    private RunOptions? With(string key, string value) => key switch
    {
        "--broker" when value.Split(':') is [var host, var port] && int.TryParse(port, NumberStyles.None, CultureInfo.InvariantCulture, out var number) => this with { Host = host, Port = number },
        "--broker" when !value.Contains(':', StringComparison.Ordinal) => this with { Host = value },
        "--api" when value == "none" => this with { Api = null },
        "--api" when Uri.TryCreate(value.TrimEnd('/') + "/", UriKind.Absolute, out var uri) => this with { Api = uri },
        "--scenario" => this with { Scenario = value },
        "--speed" when double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var speed) && speed is > 0 and <= 100_000 => this with { Speed = speed },
        "--from" when DateTimeOffset.TryParse(value, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var from) => this with { From = from },
        _ => null,
    };
}
