using System.Runtime.CompilerServices;

namespace PlantWatch.Server.Tests.House;

/// <summary>The repository the tests were built from: the house rules are read from its files.</summary>
internal static class Repository
{
    /// <summary>Set to true, it makes the tests write the generated files (docs/NOTICE, docs/log-messages.md) instead of comparing them.</summary>
    public const string WriteVariable = "PLANTWATCH_WRITE_GENERATED";

    public static string Root { get; } = FindRoot();

    public static string PathOf(params ReadOnlySpan<string> parts) => Path.Combine([Root, .. parts]);

    public static string ReadText(params ReadOnlySpan<string> parts) => File.ReadAllText(PathOf(parts)).ReplaceLineEndings("\n");

    /// <summary>C# sources of a folder, without what the compiler made.</summary>
    public static IEnumerable<string> Sources(params ReadOnlySpan<string> folder) =>
        Directory.EnumerateFiles(PathOf(folder), "*.cs", SearchOption.AllDirectories).Where(f => !IsMade(f)).Order(StringComparer.Ordinal);

    /// <summary>Files of a name anywhere in the repository, without what builds and package managers made.</summary>
    public static IEnumerable<string> Named(string name) =>
        Directory.EnumerateFiles(Root, name, new EnumerationOptions { RecurseSubdirectories = true }).Where(f => !IsMade(f)).Order(StringComparer.Ordinal);

    /// <summary>Fails when a generated file is not what it would be generated as now; or writes it when asked to.</summary>
    public static void IsUpToDate(string expected, params ReadOnlySpan<string> parts)
    {
        var path = PathOf(parts);
        if (Environment.GetEnvironmentVariable(WriteVariable) == "true") File.WriteAllText(path, expected);
        var found = File.Exists(path) ? ReadText(parts) : "";
        if (found == expected) return;
        var (line, is_, be) = FirstDifference(found, expected);
        Assert.Fail($"{Path.GetRelativePath(Root, path)} is out of date at line {line}: it says \"{is_}\", now it would say \"{be}\". "
            + $"Write it again with {WriteVariable}=true dotnet test tests/PlantWatch.Server.Tests --filter \"FullyQualifiedName~House|FullyQualifiedName~LogCatalogue\"");
    }

    private static (int Line, string Found, string Expected) FirstDifference(string found, string expected)
    {
        string[] a = found.Split('\n'), b = expected.Split('\n');
        var i = 0;
        while (i < a.Length && i < b.Length && a[i] == b[i]) i++;
        return (i + 1, i < a.Length ? a[i] : "(end)", i < b.Length ? b[i] : "(end)");
    }

    private static bool IsMade(string file) => Path.GetRelativePath(Root, file).Split(Path.DirectorySeparatorChar) is var parts
        && (parts.Contains("bin") || parts.Contains("obj") || parts.Contains("node_modules") || parts.Contains("TestResults"));

    private static string FindRoot([CallerFilePath] string here = "")
    {
        foreach (var start in (string[])[AppContext.BaseDirectory, Path.GetDirectoryName(here)!])
            for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
                if (File.Exists(Path.Combine(folder.FullName, "PlantWatch.sln"))) return folder.FullName;
        throw new InvalidOperationException("no PlantWatch.sln above the tests");
    }
}
