using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Model;

/// <summary>One document, in the order in which it is read; what draws it adds nothing of its own but pages.</summary>
internal sealed record Sheet
{
    /// <summary>Which kind.</summary>
    public required SheetKind Kind { get; init; }

    /// <summary>Its name in words.</summary>
    public required string Title { get; init; }

    /// <summary>The site.</summary>
    public required string Site { get; init; }

    /// <summary>The pools it is about, by name.</summary>
    public required IReadOnlyList<string> Pools { get; init; }

    /// <summary>The days it is about.</summary>
    public required SheetSpan Span { get; init; }

    /// <summary>Who made it when, of which record.</summary>
    public required SheetStamp Stamp { get; init; }

    /// <summary>The language it is in.</summary>
    public required Wording Words { get; init; }

    /// <summary>What it says.</summary>
    public required IReadOnlyList<Section> Sections { get; init; }
}

/// <summary>Who made a sheet when, of which record.</summary>
/// <param name="PrintedAt">When.</param>
/// <param name="By">Who asked for it.</param>
/// <param name="Digest">What the record of the span came to, and how far it went.</param>
internal sealed record SheetStamp(Instant PrintedAt, string By, RecordDigest Digest);

/// <summary>A part of a document under a heading.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Blocks">What stands under it.</param>
/// <param name="Level">1 for what begins a pool or a subject, 2 for what lies under it.</param>
internal sealed record Section(string Heading, IReadOnlyList<Block> Blocks, int Level = 1);
