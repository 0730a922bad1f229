namespace PlantWatch.Core.Probes;

/// <summary>The last six readings, newest first. The default holds none.</summary>
/// <param name="A">Newest.</param>
/// <param name="B">The one before.</param>
/// <param name="C">Third newest.</param>
/// <param name="D">Fourth newest.</param>
/// <param name="E">Fifth newest.</param>
/// <param name="F">Oldest.</param>
/// <param name="Count">How many of them are there, 0 to 6.</param>
public readonly record struct SignalTail(double A, double B, double C, double D, double E, double F, int Count)
{
    internal SignalTail Push(double raw) => new(raw, A, B, C, D, E, Math.Min(Count + 1, 6));

    /// <summary>Mean of the newest three (or of what is there), leaving out some of the newest.</summary>
    internal double Newest(int leaveOut) => (leaveOut, Count) switch
    {
        (0, >= 3) => (A + B + C) / 3,
        (0, 2) => (A + B) / 2,
        (0, _) => A,
        (_, >= 4) => (B + C + D) / 3,
        (_, 3) => (B + C) / 2,
        _ => B,
    };

    /// <summary>How much the value rose from the older three to the newer three; 0 while there are fewer than six.</summary>
    internal double Rise => Count < 6 ? 0 : (A + B + C - D - E - F) / 3;
}
