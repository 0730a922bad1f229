using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Where each session stands in the packet memory's list. Devices may be many, and each packet asks.</summary>
internal sealed class SessionPlaces
{
    // An index pays once a list has lasted for some packets; devices under ever new names make a new list with each.
    private const int AskedBeforeIndexing = 8;

    private static readonly ConditionalWeakTable<string[], SessionPlaces> Known = [];

    private readonly string[] _names;
    private Dictionary<string, int>? _index;
    private int _asked;

    private SessionPlaces(string[] names) => _names = names;

    /// <summary>The places of a list, kept as long as the list.</summary>
    public static SessionPlaces Of(ImmutableArray<string> names) => Known.GetValue(ImmutableCollectionsMarshal.AsArray(names) ?? [], static n => new SessionPlaces(n));

    /// <summary>The place of a session, or -1.</summary>
    public int Find(string name)
    {
        if (_index is { } made) return made.GetValueOrDefault(name, -1);
        if (++_asked <= AskedBeforeIndexing) return Array.IndexOf(_names, name);
        var all = new Dictionary<string, int>(_names.Length, StringComparer.Ordinal);
        for (var i = 0; i < _names.Length; i++) all.TryAdd(_names[i], i);
        // Two folds at once may both make it; they make the same.
        Volatile.Write(ref _index, all);
        return all.GetValueOrDefault(name, -1);
    }
}
