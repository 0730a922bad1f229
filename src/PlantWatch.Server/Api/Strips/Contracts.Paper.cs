namespace PlantWatch.Server.Api;

// ---- GET /api/v1/sheets/{kind}.json?...  PaperView: the same sheet for a page of ours

/// <summary>A sheet as a page shows it.</summary>
/// <param name="Kind">Its kind, such as inspection.</param>
/// <param name="Title">Its name.</param>
/// <param name="Foot">Who printed it when, of which record.</param>
/// <param name="Sections">What it says, in order.</param>
public sealed record PaperView(string Kind, string Title, string Foot, IReadOnlyList<PaperSection> Sections);

/// <summary>A part under a heading.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Level">1, or 2 for what lies under it.</param>
/// <param name="Blocks">What stands under it.</param>
public sealed record PaperSection(string Heading, int Level, IReadOnlyList<PaperBlock> Blocks);

/// <summary>A sentence, facts or a table; the others are null.</summary>
/// <param name="Text">A sentence.</param>
/// <param name="Facts">Names with their values.</param>
/// <param name="Table">A table.</param>
public sealed record PaperBlock(string? Text, IReadOnlyList<PaperFact>? Facts, PaperTable? Table);

/// <summary>A name with its value.</summary>
public sealed record PaperFact(string Name, string Value);

/// <summary>A table.</summary>
/// <param name="Caption">What it is.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">A cell for each column.</param>
public sealed record PaperTable(string Caption, IReadOnlyList<PaperColumn> Columns, IReadOnlyList<IReadOnlyList<PaperCell>> Rows);

/// <summary>A column.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Unit">Unit of its figures; empty where there is none.</param>
/// <param name="Figures">It holds figures.</param>
public sealed record PaperColumn(string Name, string Unit, bool Figures);

/// <summary>What stands in a cell.</summary>
/// <param name="Was">What stood here before corrections, oldest first.</param>
/// <param name="Text">What stands; empty where nothing was asked for.</param>
/// <param name="Outside">It lies outside a limit in force, and says on which side.</param>
/// <param name="Note">How it is known; null when there is nothing to say.</param>
public sealed record PaperCell(IReadOnlyList<string> Was, string Text, bool Outside, string? Note);
