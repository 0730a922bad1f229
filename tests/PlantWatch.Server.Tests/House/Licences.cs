using System.Text.RegularExpressions;

namespace PlantWatch.Server.Tests.House;

/// <summary>A package somebody else made.</summary>
/// <param name="Name">As its registry knows it.</param>
/// <param name="Version">Locked version.</param>
/// <param name="Licence">SPDX expression; empty when none could be found.</param>
/// <param name="Copyright">The holder's own line; null when the package carries none.</param>
/// <param name="Distributed">It goes out with PlantWatch; otherwise it only builds or tests it.</param>
internal sealed record Package(string Name, string Version, string Licence, string? Copyright, bool Distributed);

/// <summary>The allow-list, and what it says of an SPDX expression.</summary>
internal static partial class Licences
{
    /// <summary>Scope by identifier: any or build.</summary>
    public static IReadOnlyDictionary<string, string> Allowed { get; } =
        Rows("allowed.txt", ' ').ToDictionary(r => r[0], r => r[1], StringComparer.Ordinal);

    /// <summary>Licence of packages that do not name theirs readably.</summary>
    public static IReadOnlyDictionary<string, string> Known { get; } =
        Rows("known.txt", ' ').ToDictionary(r => r[0], r => r[1], StringComparer.OrdinalIgnoreCase);

    /// <summary>What distributed packages carry inside: name, licence, holder, where.</summary>
    public static IReadOnlyList<string[]> Inside { get; } = [.. Rows("inside.txt", '\t')];

    /// <summary>True when a choice of the expression is allowed. OR leaves the choice to us, AND does not.</summary>
    public static bool Allows(string expression, bool distributed)
    {
        if (expression.Length == 0) return false;
        var plain = expression.Replace("(", "", StringComparison.Ordinal).Replace(")", "", StringComparison.Ordinal);
        return plain.Split(" OR ").Any(choice => choice.Split(" AND ").All(id => IsAllowed(id.Trim(), distributed)));
    }

    /// <summary>The identifier of a licence text, empty when it is none of those that packages carry as a file here.</summary>
    public static string Recognise(string text)
    {
        var words = Spaces().Replace(text, " ");
        if (words.Contains("Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files", StringComparison.Ordinal)) return "MIT";
        if (words.Contains("Apache License Version 2.0, January 2004", StringComparison.Ordinal)) return "Apache-2.0";
        return "";
    }

    /// <summary>The first line that names a holder.</summary>
    public static string? CopyrightIn(string text) => Holder().Match(text) is { Success: true } match ? Tidy(match.Value) : null;

    /// <summary>One line, one way to write the sign.</summary>
    public static string Tidy(string copyright) =>
        Spaces().Replace(copyright.Replace("©", "(c)", StringComparison.Ordinal).Replace("(C)", "(c)", StringComparison.Ordinal), " ").Trim().TrimEnd('.');

    private static bool IsAllowed(string id, bool distributed) => Allowed.TryGetValue(id, out var scope) && (scope == "any" || (scope == "build" && !distributed));

    private static IEnumerable<string[]> Rows(string file, char separator) => Repository.ReadText("tests", "licences", file).Split('\n')
        .Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split(separator, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"^[ \t]*(Copyright\b.*|©.*|\(c\).*)$", RegexOptions.Multiline | RegexOptions.IgnoreCase)]
    private static partial Regex Holder();
}
