using System.Collections.Frozen;
using System.Reflection;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Server.LimitPacks;

/// <summary>The limit packs that can be picked, one an authority and edition: those that come with the server, and beside them the plant's own. They are never merged.</summary>
internal sealed class PackShelf
{
    private const string Ending = ".pack.yaml";

    private static readonly Lazy<PackShelf> OfServer = new(() => new(All()));

    private readonly FrozenDictionary<string, LimitPack> _packs;

    private PackShelf(IEnumerable<LimitPack> packs) => _packs = packs.ToFrozenDictionary(p => p.Id, StringComparer.Ordinal);

    /// <summary>The packs that come with the server.</summary>
    public static PackShelf Shipped => OfServer.Value;

    /// <summary>The packs in the order of their ids.</summary>
    public IEnumerable<LimitPack> InOrder => _packs.Values.OrderBy(p => p.Id, StringComparer.Ordinal);

    /// <summary>A pack; null when there is none of that id.</summary>
    public LimitPack? Find(string? id) => id is null ? null : _packs.GetValueOrDefault(id);

    /// <summary>This shelf and the plant's own packs beside it. None of them bears an id that stands here already.</summary>
    public PackShelf With(IReadOnlyCollection<LimitPack> own) => own.Count == 0 ? this : new(_packs.Values.Concat(own));

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
