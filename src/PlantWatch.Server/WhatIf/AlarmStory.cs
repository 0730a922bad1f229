using PlantWatch.Core.Alarms.Compared;
using PlantWatch.Core.Alarms.Health;
using PlantWatch.Core.Plant;

namespace PlantWatch.Server.WhatIf;

/// <summary>What alarms did, out of what was said: nothing else of it is kept.</summary>
internal sealed class AlarmStory
{
    private readonly EpisodeBook _book;

    public AlarmStory()
        : this(new EpisodeBook(), [])
    {
    }

    private AlarmStory(EpisodeBook book, List<AlarmHappening> changes) => (_book, Changes) = (book, changes);

    /// <summary>Every change, in order.</summary>
    public List<AlarmHappening> Changes { get; }

    /// <summary>The times in which they stood.</summary>
    public EpisodeBook Episodes => _book;

    /// <summary>The same up to here, to go on otherwise.</summary>
    public AlarmStory Copy() => new(_book.Copy(), [.. Changes]);

    public void Take(StepResult result)
    {
        foreach (var entry in result.Entries) Take(entry);
    }

    public void Take(RecordEntry entry)
    {
        if (entry.Body is not AlarmEntry said) return;
        _book.Take(entry.At, said.Alarm, said.Change);
        Changes.Add(AlarmHappening.Of(entry.At, said.Alarm, said.Change));
    }
}
