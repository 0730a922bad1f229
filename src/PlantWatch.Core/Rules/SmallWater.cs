namespace PlantWatch.Core.Rules;

/// <summary>Delays of limits on little water. The same dose, the same bather and the same leak move a quantity so many times as fast as the water is less: what waits two minutes in a pool would wait too long in a spa.</summary>
/// <remarks>The delays of the rules are meant for a pool of 60 m3 and more, and shrink in proportion below it, not under 30 s: three readings of a probe every ten seconds tell a limit from noise. Common practice, to be tuned on the plant's own noise.</remarks>
public static class SmallWater
{
    /// <summary>Volume in m3 from which the delays of the rules hold as they stand.</summary>
    public const double FullFrom = 60;

    /// <summary>The shortest delay.</summary>
    public static TimeSpan Shortest { get; } = TimeSpan.FromSeconds(30);

    /// <summary>A delay as it holds for a volume.</summary>
    /// <param name="usual">The delay of the rule.</param>
    /// <param name="cubicMetres">Volume of the pool in m3; 0 where it is not known leaves the usual one.</param>
    public static TimeSpan Delay(TimeSpan usual, double cubicMetres)
    {
        if (!(cubicMetres > 0) || cubicMetres >= FullFrom || usual <= Shortest) return usual;
        var shrunk = TimeSpan.FromSeconds(Math.Round(usual.TotalSeconds * cubicMetres / FullFrom));
        return shrunk < Shortest ? Shortest : shrunk;
    }
}
