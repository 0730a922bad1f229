using System.Diagnostics;
using System.Globalization;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>How far a long command is: one line written over on a terminal, a plain line each tenth where the output goes into a file. Asked from many threads.</summary>
internal sealed class Progress(TextWriter output, bool isTerminal, long whole)
{
    private const int Cells = 40;
    private static readonly TimeSpan Between = TimeSpan.FromMilliseconds(100);

    private readonly Lock _turn = new();
    private long _done;
    private long _shownAt;
    private int _tenths;

    /// <summary>So much more is done.</summary>
    public void Add(long bytes)
    {
        var done = Interlocked.Add(ref _done, bytes);
        // Whoever finds another showing goes on: the next block shows it.
        if (!_turn.TryEnter()) return;
        try
        {
            Show(Math.Min(1, (double)done / Math.Max(1, whole)));
        }
        finally
        {
            _turn.Exit();
        }
    }

    /// <summary>Takes the line away, so that the next words begin where it began.</summary>
    public void End()
    {
        lock (_turn)
        {
            if (isTerminal && _shownAt != 0) output.Write($"\r{new string(' ', Cells + 9)}\r");
        }
    }

    private void Show(double part)
    {
        if (!isTerminal)
        {
            if ((int)(part * 10) > _tenths) output.WriteLine($"{10 * (_tenths = (int)(part * 10))} %");
            return;
        }

        if (_shownAt != 0 && Stopwatch.GetElapsedTime(_shownAt) < Between) return;
        _shownAt = Stopwatch.GetTimestamp();
        var full = (int)(part * Cells);
        output.Write(string.Create(CultureInfo.InvariantCulture, $"\r[{new string('#', full)}{new string('.', Cells - full)}] {100 * part,3:0} %"));
        output.Flush();
    }
}
