using System.Globalization;
using System.Text.RegularExpressions;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>A path of keys and positions, such as <c>circuits[0].pools[1].volume_m3</c>.</summary>
internal static partial class YamlPath
{
    private const int Longest = 400;

    /// <summary>The steps, each a key (string) or a position (int); null for what is no path.</summary>
    public static IReadOnlyList<object>? Steps(string path)
    {
        if (path.Length is 0 or > Longest || !Whole().IsMatch(path)) return null;
        return [.. Step().Matches(path).Select(m => m.Groups[2].Success ? (object)int.Parse(m.Groups[2].ValueSpan, CultureInfo.InvariantCulture) : m.Groups[1].Value)];
    }

    [GeneratedRegex(@"^[A-Za-z0-9_-]+(\[[0-9]{1,6}\])*(\.[A-Za-z0-9_-]+(\[[0-9]{1,6}\])*)*\z")]
    private static partial Regex Whole();

    [GeneratedRegex(@"([A-Za-z0-9_-]+)(?![^\[]*\])|\[([0-9]+)\]")]
    private static partial Regex Step();
}
