using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>How a signal wanders from block to block. The default has seen nothing.</summary>
public sealed record SignalWander
{
    /// <summary>A signal never seen.</summary>
    public static SignalWander New { get; } = new();

    /// <summary>The newest block means.</summary>
    public BlockRing Ring { get; init; }

    /// <summary>Blocks passed since the last whole window, and windows since the last whole day.</summary>
    public int Blocks { get; init; }

    /// <summary>Liveliness of the newest two hours that could be watched, in the square of the measurand's unit.</summary>
    public double Lively { get; init; }

    /// <summary>Liveliness over two hours.</summary>
    public SignalCalm Hours { get; init; }

    /// <summary>Liveliness over whole days, for plants whose nights are so quiet that two hours tell nothing.</summary>
    public SignalCalm Days { get; init; }

    /// <summary>Sum of the liveliness of the windows of the day under way.</summary>
    public double DaySum { get; init; }

    /// <summary>How many these are.</summary>
    public int DayWindows { get; init; }

    /// <summary>How fast it follows the water.</summary>
    public SignalPace Pace { get; init; } = SignalPace.New;

    /// <summary>Since when the signal is still; never while it is lively.</summary>
    public Instant StillSince { get; init; }

    /// <summary>True while the signal is far calmer than it ever was.</summary>
    public bool IsStill => Hours.IsStill || Days.IsStill;
}

/// <summary>The block under way. The default is none.</summary>
/// <param name="Since">Its start.</param>
/// <param name="Sum">Sum of its readings.</param>
/// <param name="Count">How many these are.</param>
public readonly record struct SignalBlock(Instant Since, double Sum, int Count);
