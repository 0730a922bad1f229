using System.Runtime.CompilerServices;

namespace PlantWatch.Core.Tests;

/// <summary>Files of the repository that the tests were built from.</summary>
internal static class Source
{
    public static string Root { get; } = Find(AppContext.BaseDirectory) ?? Find(Here()) ?? throw new InvalidOperationException("no PlantWatch.sln above the tests");

    public static string PathOf(params ReadOnlySpan<string> parts) => Path.Combine([Root, .. parts]);

    private static string? Find(string start)
    {
        for (var folder = new DirectoryInfo(start); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "PlantWatch.sln"))) return folder.FullName;
        return null;
    }

    private static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
