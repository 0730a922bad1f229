using System.Diagnostics;

namespace PlantWatch.Campaign;

/// <summary>Speaks through all devices in turn at a steady rate until told to stop.</summary>
internal sealed class Feed(IReadOnlyList<Device> devices, int rate)
{
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(10);
    private volatile bool _enough;
    private Task _speaking = Task.CompletedTask;

    /// <summary>How long it spoke.</summary>
    public TimeSpan Spoke { get; private set; }

    public void Start() => _speaking = Task.Run(SpeakAsync);

    public async Task StopAsync()
    {
        _enough = true;
        await _speaking;
    }

    private async Task SpeakAsync()
    {
        var clock = Stopwatch.StartNew();
        var (said, next) = (0L, 0);
        while (!_enough)
        {
            var due = (long)(clock.Elapsed.TotalSeconds * rate) - said;
            var shares = new int[devices.Count];
            for (var i = 0; i < due; i++) shares[next++ % devices.Count]++;
            next %= devices.Count;
            for (var i = 0; i < shares.Length; i++)
                if (shares[i] > 0) await devices[i].SayAsync(shares[i]);
            said += due;
            await Task.Delay(Beat);
        }
        Spoke = clock.Elapsed;
    }
}
