using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/entries?from=&to=&about=     EntriesView: what people and the plant wrote into the record, newest first

/// <summary>What a row of the record is about.</summary>
public enum RecordGroup
{
    /// <summary>Everything.</summary>
    All = 0,
    /// <summary>Breaches, from reading to closed.</summary>
    Exceptions,
    /// <summary>Tests by hand and laboratory reports.</summary>
    Tests,
    /// <summary>Doses that people gave.</summary>
    Doses,
    /// <summary>Jobs of maintenance, and whether they helped.</summary>
    Jobs,
    /// <summary>Filter washes and backwashes.</summary>
    Filters,
    /// <summary>Reagent lots that were opened, instruments that were verified.</summary>
    Reagents,
    /// <summary>Calibrations, work on probes, corrections of their record.</summary>
    Probes,
    /// <summary>Pools opened and closed, incidents.</summary>
    Pools,
    /// <summary>Rows of the limit pack, the plant file.</summary>
    Limits,
    /// <summary>Deliveries, refills and counts of chemicals, and how many bathed.</summary>
    Chemicals,
    /// <summary>Handovers between shifts.</summary>
    Handovers,
    /// <summary>Notes about spans of time.</summary>
    Notes,
    /// <summary>Rounds through the plant room.</summary>
    Rounds,
}

/// <summary>Rows of the record.</summary>
/// <param name="Entries">Newest first.</param>
/// <param name="More">There are more in this time than are told.</param>
public sealed record EntriesView(IReadOnlyList<EntryView> Entries, bool More);

/// <summary>A row of the record in words.</summary>
/// <param name="Id">Its id.</param>
/// <param name="At">When it was written.</param>
/// <param name="HappenedAt">The time it speaks of.</param>
/// <param name="About">What kind of thing.</param>
/// <param name="SubjectName">What people call the thing it is about.</param>
/// <param name="Text">What it says.</param>
/// <param name="By">Who; null when the plant did it.</param>
public sealed record EntryView(Guid Id, Instant At, Instant HappenedAt, RecordGroup About, string SubjectName, string Text, string? By);
