using System.Text;

namespace PlantWatch.Server.Tests.House;

/// <summary>The NOTICE file: whose work goes out with PlantWatch, under which licence, with the licences' words.</summary>
internal static class Notice
{
    public static string Write(IReadOnlyList<Package> packages)
    {
        var text = new StringBuilder();
        text.Append("PlantWatch contains the work of others. This file is generated from the lock files; do not edit it.\n");
        Section(text, "Distributed with PlantWatch");
        foreach (var p in packages.Where(p => p.Distributed)) Entry(text, $"{p.Name} {p.Version}", p.Licence, p.Copyright);
        Section(text, "Inside those packages, or beside them");
        foreach (var row in Licences.Inside) Entry(text, $"{row[0]} ({row[3]})", row[1], row[2]);
        Section(text, "Used to build and test, not distributed");
        foreach (var group in packages.Where(p => !p.Distributed).GroupBy(p => p.Licence).OrderBy(g => g.Key, StringComparer.Ordinal))
            text.Append(group.Key).Append(": ").AppendJoin(", ", group.Select(p => $"{p.Name} {p.Version}")).Append("\n\n");
        foreach (var id in Identifiers(packages).Where(HasWords)) Words(text, id);
        return text.ToString();
    }

    /// <summary>Licences of what is distributed, each once.</summary>
    private static IEnumerable<string> Identifiers(IReadOnlyList<Package> packages) => packages.Where(p => p.Distributed).Select(p => p.Licence).Concat(Licences.Inside.Select(r => r[1]))
        .SelectMany(l => l.Replace("(", "", StringComparison.Ordinal).Replace(")", "", StringComparison.Ordinal).Split([" OR ", " AND "], StringSplitOptions.TrimEntries))
        .Where(Licences.Allowed.ContainsKey).Distinct().Order(StringComparer.Ordinal);

    // Public domain needs no words, and the font's lie beside the font.
    private static bool HasWords(string id) => id is not ("blessing" or "Bitstream-Vera");

    private static void Section(StringBuilder text, string title) => text.Append('\n').Append(title).Append('\n').Append('-', title.Length).Append("\n\n");

    private static void Entry(StringBuilder text, string what, string licence, string? holder) =>
        text.Append(what).Append(": ").Append(licence).Append(holder is null ? "" : ". " + holder).Append('\n');

    private static void Words(StringBuilder text, string id)
    {
        Section(text, "The words of " + id);
        text.Append(Repository.ReadText("tests", "licences", "texts", id + ".txt").TrimEnd()).Append('\n');
    }
}
