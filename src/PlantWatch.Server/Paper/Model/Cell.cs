using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Paper.Model;

/// <summary>What stands in a row under a column.</summary>
internal abstract record Cell
{
    /// <summary>What stood here before a correction; null where nothing was corrected.</summary>
    public Cell? Was { get; init; }

    /// <summary>How it is known, in a few words; null where there is nothing to say.</summary>
    public string? Note { get; init; }
}

/// <summary>Nothing to say.</summary>
internal sealed record Blank : Cell
{
    /// <summary>The one there is.</summary>
    public static Blank Cell { get; } = new();
}

/// <summary>Something was expected here and is not there: a dash, never nothing.</summary>
internal sealed record Dash : Cell
{
    /// <summary>Without more words.</summary>
    public static Dash Cell { get; } = new();
}

/// <summary>Words.</summary>
internal sealed record Text(string Says) : Cell;

/// <summary>A moment.</summary>
internal sealed record When(Instant At) : Cell;

/// <summary>On which side of a limit a figure lies. The default is neither.</summary>
internal enum Beyond
{
    /// <summary>Inside, or there is no limit.</summary>
    None = 0,
    /// <summary>Below the lowest.</summary>
    Below,
    /// <summary>Above the highest.</summary>
    Above,
}

/// <summary>A figure.</summary>
/// <param name="Value">The figure; of a bound the end of the method's range.</param>
/// <param name="Unit">Its unit.</param>
internal sealed record Number(double Value, string Unit) : Cell
{
    /// <summary>A number, or only below or above one.</summary>
    public Censoring Bound { get; init; }

    /// <summary>Expanded uncertainty, k = 2; null where none is claimed.</summary>
    public double? U { get; init; }

    /// <summary>Outside a limit.</summary>
    public Beyond Beyond { get; init; }
}
