using System.Collections;
using System.Globalization;
using System.Text.RegularExpressions;

namespace PlantWatch.Campaign;

/// <summary>A device: mosquitto's own publisher, fed one number a line. It says itself what was acknowledged, and after a lost connection sends the rest again with DUP and the same packet identifiers.</summary>
/// <remarks>It counts its packets from 1, so the packet identifier tells which of its numbers an acknowledgement is for.</remarks>
internal sealed partial class Device : IAsyncDisposable
{
    private const int Identifiers = 65535;
    private readonly OwnProcess _process;
    private readonly BitArray _acknowledged = new(2 * NumberPlant.MostValue);
    private int _said;
    private int _known;
    private int _again;

    public Device(int number, int port)
    {
        Number = number;
        string[] publisher =
        [
            "-oL", Programs.Find("mosquitto_pub"), "-h", "127.0.0.1", "-p", port.ToString(CultureInfo.InvariantCulture), "-i", $"device-{number}",
            "-c", "-q", "1", "-t", NumberPlant.Topic(number), "-l", "-d",
        ];
        // Line by line even into a pipe; stdbuf becomes the program, so the process id is its own.
        _process = new OwnProcess(Programs.Find("stdbuf"), publisher, Hear);
    }

    public int Number { get; }

    /// <summary>Numbers handed to it.</summary>
    public int Said => _said;

    /// <summary>Numbers it saw acknowledged.</summary>
    public int Acknowledged => Volatile.Read(ref _known);

    /// <summary>Packets it sent a second time.</summary>
    public int SentAgain => Volatile.Read(ref _again);

    public bool IsAcknowledged(int n)
    {
        lock (_acknowledged) return _acknowledged[n];
    }

    public bool HasGivenUp => _process.HasExited;

    public async Task SayAsync(int howMany)
    {
        for (var i = 0; i < howMany; i++) await _process.Input.WriteLineAsync(NumberPlant.Value(_said++).ToString(CultureInfo.InvariantCulture));
        await _process.Input.FlushAsync();
    }

    public ValueTask DisposeAsync() => _process.DisposeAsync();

    private void Hear(string line)
    {
        if (line.Contains("PUBLISH (d1", StringComparison.Ordinal)) Interlocked.Increment(ref _again);
        if (Puback().Match(line) is not { Success: true } puback) return;
        var id = int.Parse(puback.Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        lock (_acknowledged)
        {
            // Identifiers come round; acknowledgements come close to their order.
            var round = (int)Math.Round((_known - (id - 1)) / (double)Identifiers);
            var n = id - 1 + (Math.Max(0, round) * Identifiers);
            if (_acknowledged[n]) return;
            _acknowledged[n] = true;
            _known++;
        }
    }

    [GeneratedRegex(@"received PUBACK \(Mid: (\d+)", RegexOptions.CultureInvariant)]
    private static partial Regex Puback();
}
