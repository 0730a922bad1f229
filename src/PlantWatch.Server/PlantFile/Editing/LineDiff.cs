namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>What became of a line.</summary>
public enum LineFate
{
    /// <summary>It stays; shown for its neighbours' sake.</summary>
    Same = 0,
    /// <summary>It goes.</summary>
    Removed,
    /// <summary>It comes.</summary>
    Added,
}

/// <summary>A line of a difference.</summary>
/// <param name="Fate">What became of it.</param>
/// <param name="Line">Its number, from 1: in the old text of one that goes, else in the new.</param>
/// <param name="Text">Its text.</param>
public sealed record DiffLine(LineFate Fate, int Line, string Text);

/// <summary>The difference of two texts by lines: the fewest that go and come (longest common subsequence), each with its neighbours.</summary>
internal static class LineDiff
{
    private const int Around = 2;
    private const long LargestTable = 4_000_000;

    public static IReadOnlyList<DiffLine> Between(string old, string next)
    {
        var (a, b) = (Lines(old), Lines(next));
        var head = 0;
        while (head < a.Length && head < b.Length && a[head] == b[head]) head++;
        var tail = 0;
        while (tail < a.Length - head && tail < b.Length - head && a[^(tail + 1)] == b[^(tail + 1)]) tail++;
        var lines = new List<DiffLine>();
        for (var i = 0; i < head; i++) lines.Add(new(LineFate.Same, i + 1, b[i]));
        Middle(a[head..^tail], b[head..^tail], head, lines);
        for (var i = b.Length - tail; i < b.Length; i++) lines.Add(new(LineFate.Same, i + 1, b[i]));
        return Near(lines);
    }

    private static string[] Lines(string text) => text.Length == 0 ? [] : text.TrimEnd('\n').Split('\n');

    private static void Middle(string[] a, string[] b, int offset, List<DiffLine> lines)
    {
        var common = (long)a.Length * b.Length <= LargestTable ? Table(a, b) : null;
        var (i, j) = (0, 0);
        while (i < a.Length || j < b.Length)
        {
            if (common is not null && i < a.Length && j < b.Length && a[i] == b[j]) (lines, i, j) = (With(lines, new(LineFate.Same, offset + j + 1, b[j])), i + 1, j + 1);
            else if (i < a.Length && (common is null || j == b.Length || common[i + 1, j] >= common[i, j + 1])) lines.Add(new(LineFate.Removed, offset + ++i, a[i - 1]));
            else lines.Add(new(LineFate.Added, offset + ++j, b[j - 1]));
        }
    }

    private static List<DiffLine> With(List<DiffLine> lines, DiffLine line)
    {
        lines.Add(line);
        return lines;
    }

    private static int[,] Table(string[] a, string[] b)
    {
        var common = new int[a.Length + 1, b.Length + 1];
        for (var i = a.Length - 1; i >= 0; i--)
            for (var j = b.Length - 1; j >= 0; j--)
                common[i, j] = a[i] == b[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
        return common;
    }

    private static IReadOnlyList<DiffLine> Near(List<DiffLine> lines)
    {
        var near = new bool[lines.Count];
        for (var i = 0; i < lines.Count; i++)
            if (lines[i].Fate != LineFate.Same)
                for (var k = Math.Max(0, i - Around); k <= Math.Min(lines.Count - 1, i + Around); k++) near[k] = true;
        return [.. lines.Where((_, i) => near[i])];
    }
}
