using System.Text.Json;
using System.Xml.Linq;

namespace PlantWatch.Server.Tests.House;

/// <summary>Every package of the lock files, with the licence its own description states.</summary>
internal static class Packages
{
    private static readonly string Folder = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
        ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    public static string Client { get; } = Repository.PathOf("src", "PlantWatch.Server", "client");

    /// <summary>True when the client's packages are installed, so that their copyright lines can be read.</summary>
    public static bool ClientIsInstalled => !File.Exists(Path.Combine(Client, "package-lock.json")) || Directory.Exists(Path.Combine(Client, "node_modules"));

    public static IReadOnlyList<Package> All { get; } =
    [
        .. FromNuget().Concat(FromNpm())
            .GroupBy(p => (p.Name, p.Version)).Select(g => g.First() with { Distributed = g.Any(p => p.Distributed) })
            .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase).ThenBy(p => p.Version, StringComparer.Ordinal),
    ];

    // What the product and its simulator are locked to goes out; what only the tests are locked to does not.
    private static IEnumerable<Package> FromNuget() =>
        from file in Repository.Named("packages.lock.json")
        let distributed = !Path.GetRelativePath(Repository.Root, file).StartsWith("tests", StringComparison.Ordinal)
        from entry in NugetEntries(file)
        select Nuget(entry.Name, entry.Version, distributed);

    private static List<(string Name, string Version)> NugetEntries(string file)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(file));
        return
        [
            .. from framework in json.RootElement.GetProperty("dependencies").EnumerateObject()
               from package in framework.Value.EnumerateObject()
               where package.Value.GetProperty("type").GetString() != "Project"
               select (package.Name, package.Value.GetProperty("resolved").GetString()!),
        ];
    }

    private static Package Nuget(string name, string version, bool distributed)
    {
        var folder = Path.Combine(Folder, name.ToLowerInvariant(), version.ToLowerInvariant());
        var description = XDocument.Load(Path.Combine(folder, name.ToLowerInvariant() + ".nuspec")).Root!.Elements().First();
        string? Value(string element) => description.Elements().FirstOrDefault(e => e.Name.LocalName == element)?.Value.Trim();
        var isFile = description.Elements().FirstOrDefault(e => e.Name.LocalName == "license")?.Attribute("type")?.Value == "file";
        var text = isFile ? File.ReadAllText(Path.Combine(folder, Value("license")!)) : null;
        var licence = text is not null ? Licences.Recognise(text) : Value("license") ?? "";
        if (licence.Length == 0) licence = Licences.Known.GetValueOrDefault(name, "");
        var holder = Value("copyright") ?? (text is null ? null : Licences.CopyrightIn(text)) ?? Value("authors");
        return new(name, version, licence, holder is null ? null : Licences.Tidy(holder), distributed);
    }

    private static List<Package> FromNpm()
    {
        var file = Path.Combine(Client, "package-lock.json");
        if (!File.Exists(file)) return [];
        using var json = JsonDocument.Parse(File.ReadAllText(file));
        return [.. json.RootElement.GetProperty("packages").EnumerateObject().Where(p => p.Name.Length > 0).Select(p => Npm(p.Name, p.Value))];
    }

    private static Package Npm(string path, JsonElement entry)
    {
        const string Modules = "node_modules/";
        var name = path[(path.LastIndexOf(Modules, StringComparison.Ordinal) + Modules.Length)..];
        var distributed = !(entry.TryGetProperty("dev", out var dev) && dev.GetBoolean());
        var licence = entry.TryGetProperty("license", out var l) ? l.GetString()! : Licences.Known.GetValueOrDefault(name, "");
        var holder = distributed ? HolderIn(Path.Combine(Client, path)) : null;
        return new(name, entry.GetProperty("version").GetString()!, licence, holder, distributed);
    }

    private static string? HolderIn(string folder)
    {
        if (!Directory.Exists(folder)) return null;
        return Directory.EnumerateFiles(folder).Where(f => Path.GetFileName(f).StartsWith("LICEN", StringComparison.OrdinalIgnoreCase))
            .Order(StringComparer.Ordinal).Select(f => Licences.CopyrightIn(File.ReadAllText(f))).FirstOrDefault(c => c is not null) ?? AuthorIn(folder);
    }

    private static string? AuthorIn(string folder)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "package.json")));
        if (!json.RootElement.TryGetProperty("author", out var author)) return null;
        return author.ValueKind == JsonValueKind.String ? author.GetString() : author.GetProperty("name").GetString();
    }
}
