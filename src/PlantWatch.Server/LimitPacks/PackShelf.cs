using System.Collections.Frozen;
using System.Reflection;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Server.LimitPacks;

/// <summary>The limit packs that come with the server, one an authority and edition. They are never merged.</summary>
internal static class PackShelf
{
    private const string Ending = ".pack.yaml";

    private static readonly Lazy<FrozenDictionary<string, LimitPack>> Packs = new(() => All().ToFrozenDictionary(p => p.Id, StringComparer.Ordinal));

    /// <summary>The packs in the order of their ids.</summary>
    public static IEnumerable<LimitPack> InOrder => Packs.Value.Values.OrderBy(p => p.Id, StringComparer.Ordinal);

    /// <summary>A pack; null when there is none of that id.</summary>
    public static LimitPack? Find(string? id) => id is null ? null : Packs.Value.GetValueOrDefault(id);

    /// <summary>The texts of the files by name.</summary>
    internal static IEnumerable<(string Name, string Text)> Files()
    {
        var assembly = Assembly.GetExecutingAssembly();
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.EndsWith(Ending, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            yield return (name[..^Ending.Length], reader.ReadToEnd());
        }
    }

    private static IEnumerable<LimitPack> All()
    {
        foreach (var (name, text) in Files())
            yield return PackFile.Read(text, out var errors) ?? throw new InvalidOperationException($"the limit pack {name} that came with the server is broken: {errors[0]}");
    }
}
