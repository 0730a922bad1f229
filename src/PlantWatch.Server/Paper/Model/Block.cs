namespace PlantWatch.Server.Paper.Model;

/// <summary>What stands in a section; a closed list.</summary>
internal abstract record Block;

/// <summary>Names with their values.</summary>
/// <param name="Of">In order.</param>
internal sealed record Facts(IReadOnlyList<FactLine> Of) : Block;

/// <summary>A name with its value.</summary>
/// <param name="Name">What.</param>
/// <param name="Value">Its value in words.</param>
internal sealed record FactLine(string Name, string Value);

/// <summary>A table. Without rows its sentence stands in its place, so that nothing is left out in silence.</summary>
/// <param name="Caption">What it is, in a line.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">A cell for each column.</param>
/// <param name="WhenEmpty">What is said without rows.</param>
internal sealed record Table(string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows, string WhenEmpty) : Block;

/// <summary>A picture of lines over time.</summary>
/// <param name="Png">Draws it, so many pixels for each point of the picture.</param>
/// <param name="Width">Points.</param>
/// <param name="Height">Points.</param>
/// <param name="Describes">What it shows, for whoever cannot see it.</param>
internal sealed record StripPicture(Func<float, byte[]> Png, int Width, int Height, string Describes) : Block;

/// <summary>A sentence.</summary>
internal sealed record Remark(string Text) : Block;

/// <summary>Lines to sign on, each with what it is signed for.</summary>
internal sealed record Signatures(IReadOnlyList<string> For) : Block;

/// <summary>What a column holds. The default is words.</summary>
internal enum ColumnKind
{
    /// <summary>Words.</summary>
    Text = 0,
    /// <summary>Figures, to the right.</summary>
    Number,
    /// <summary>Moments.</summary>
    Time,
}

/// <summary>A column.</summary>
/// <param name="Name">Its heading.</param>
/// <param name="Kind">What it holds.</param>
/// <param name="Unit">Unit of every figure in it; null where each has its own.</param>
/// <param name="Wide">It holds sentences, and takes what is left of the width.</param>
internal sealed record Column(string Name, ColumnKind Kind = ColumnKind.Text, string? Unit = null, bool Wide = false);
