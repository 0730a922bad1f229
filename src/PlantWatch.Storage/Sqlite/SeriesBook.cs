using System.Collections.Immutable;
using PlantWatch.Core.Plant;

namespace PlantWatch.Storage.Sqlite;

/// <summary>The writer's dictionaries: partitions and series by key. Forgotten after a failed transaction, since it may hold what was rolled back.</summary>
internal sealed class SeriesBook(Session session)
{
    private readonly Dictionary<string, Section> _sections = new(StringComparer.Ordinal);

    /// <summary>A partition with its series.</summary>
    public sealed class Section(long id)
    {
        public long Id => id;

        public Dictionary<string, SeriesSlot> Series { get; } = new(StringComparer.Ordinal);
    }

    /// <summary>The partition, made where it is new.</summary>
    public Section Of(PartitionKey partition)
    {
        if (_sections.TryGetValue(partition.Value, out var section)) return section;
        session.Prepare("INSERT INTO partition (key) VALUES (?1) ON CONFLICT DO NOTHING").Bind(1, partition.Value).Run();
        section = new Section(session.Prepare("SELECT id FROM partition WHERE key = ?1").Bind(1, partition.Value).Scalar()!.Value);
        _sections.Add(partition.Value, section);
        return section;
    }

    /// <summary>The series, made where it is new.</summary>
    public SeriesSlot Of(Section section, string key)
    {
        if (section.Series.TryGetValue(key, out var slot)) return slot;
        session.Prepare("INSERT INTO series (partition, key) VALUES (?1, ?2) ON CONFLICT DO NOTHING").Bind(1, section.Id).Bind(2, key).Run();
        var id = IdOf(section, key)!.Value;
        var newest = session.Prepare("SELECT t FROM reading WHERE series = ?1 ORDER BY t DESC LIMIT 1").Bind(1, id).Scalar();
        var (rawFrom, minuteFrom) = LetGoOf(id);
        // What was let go is older than all that may come as the newest.
        slot = new SeriesSlot(id, newest ?? (rawFrom > 0 ? rawFrom - 1 : long.MinValue)) { RawFrom = rawFrom, MinuteFrom = minuteFrom };
        section.Series.Add(key, slot);
        return slot;
    }

    /// <summary>Gives series their new keys, all at once, so that two may swap. What stands in the way keeps its rows under a key of its own.</summary>
    public void Rename(Section section, ImmutableArray<SeriesRenamed> renames, long seq)
    {
        var ids = new long?[renames.Length];
        for (var i = 0; i < renames.Length; i++) ids[i] = IdOf(section, renames[i].From);
        for (var i = 0; i < renames.Length; i++)
            if (ids[i] is { } id) SetKey(id, $"\n{id}");
        for (var i = 0; i < renames.Length; i++)
        {
            if (ids[i] is not { } id) continue;
            if (IdOf(section, renames[i].To) is { } other) SetKey(other, $"{renames[i].To}~{seq}");
            SetKey(id, renames[i].To);
        }
        section.Series.Clear();
    }

    /// <summary>A series as it is known; null when it was not met yet.</summary>
    public SeriesSlot? Known(long id) => _sections.Values.SelectMany(s => s.Series.Values).FirstOrDefault(s => s.Id == id);

    /// <summary>Forgets everything.</summary>
    public void Clear() => _sections.Clear();

    private (long RawFrom, long MinuteFrom) LetGoOf(long id)
    {
        var row = session.Prepare("SELECT raw_from, minute_from FROM series WHERE id = ?1").Bind(1, id);
        row.Next();
        var found = (row.Int64(0), row.Int64(1));
        row.Reset();
        return found;
    }

    private long? IdOf(Section section, string key) =>
        session.Prepare("SELECT id FROM series WHERE partition = ?1 AND key = ?2").Bind(1, section.Id).Bind(2, key).Scalar();

    private void SetKey(long id, string key) => session.Prepare("UPDATE series SET key = ?2 WHERE id = ?1").Bind(1, id).Bind(2, key).Run();
}
