namespace PlantWatch.Server.PlantFile;

/// <summary>Finds what was meant by a word that is almost right.</summary>
internal static class Spelling
{
    /// <summary>"; did you mean 'volume_m3'?", or nothing when no known word is near.</summary>
    public static string DidYouMean(string word, IEnumerable<string> known) =>
        Nearest(word, known) is { } near ? $"; did you mean '{near}'?" : "";

    private static string? Nearest(string word, IEnumerable<string> known)
    {
        if (word.Length is 0 or > 64) return null;
        var plain = Plain(word);
        string? best = null;
        var least = int.MaxValue;
        foreach (var candidate in known)
        {
            var distance = Distance(plain, Plain(candidate));
            if (distance < least) (best, least) = (candidate, distance);
        }
        return best is not null && least <= Math.Max(1, Math.Max(plain.Length, best.Length) / 3) ? best : TheOnlyOneWith(plain, known);
    }

    // "hardness" is far from "calcium_hardness" by edits, and yet nothing else can be meant.
    private static string? TheOnlyOneWith(string part, IEnumerable<string> known) =>
        part.Length >= 4 && known.Where(candidate => Plain(candidate).Contains(part, StringComparison.Ordinal)).Take(2).ToArray() is [var only] ? only : null;

    private static string Plain(string word) => word.ToLowerInvariant().Replace('-', '_').Replace(' ', '_');

    /// <summary>Edits between two words; two letters swapped count as one (optimal string alignment).</summary>
    private static int Distance(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) cost[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) cost[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
            for (var j = 1; j <= b.Length; j++)
            {
                var change = a[i - 1] == b[j - 1] ? 0 : 1;
                cost[i, j] = Math.Min(Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1, cost[i - 1, j - 1] + change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        return cost[a.Length, b.Length];
    }
}
