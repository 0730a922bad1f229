namespace PlantWatch.Core.Probes;

/// <summary>The order of standings: failure over function check over out of specification over maintenance over good (NAMUR NE 107, display priority after device manuals F, C, S, M).</summary>
public static class Standings
{
    /// <summary>The worse of two; unknown yields to anything known.</summary>
    public static Standing Worse(Standing a, Standing b) => (Standing)Math.Max((int)a, (int)b);

    /// <summary>True when the first is worse than the second.</summary>
    public static bool IsWorse(Standing a, Standing b) => (int)a > (int)b;
}
