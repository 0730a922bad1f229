using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Boards;

/// <summary>One part of a board.</summary>
internal sealed record BoardTile
{
    /// <summary>What it draws.</summary>
    public required TileKind Show { get; init; }

    /// <summary>Its title; null when it is named after what it shows.</summary>
    public string? Title { get; init; }

    /// <summary>Line of its ids in the file, or of the tile where it names none.</summary>
    public required int Line { get; init; }

    /// <summary>Ids of the plant file; empty means all.</summary>
    public ImmutableArray<string> Of { get; init; } = [];

    /// <summary>What the probes measure that are shown; empty means whatever they measure.</summary>
    public ImmutableArray<Measurand> Measurands { get; init; } = [];

    /// <summary>How much room it wants.</summary>
    public TileRoom Room { get; init; }

    /// <summary>How far back it reaches, in hours.</summary>
    public double Hours { get; init; }

    /// <summary>Draws the limits.</summary>
    public bool Limits { get; init; } = true;

    /// <summary>Marks the manual checks.</summary>
    public bool Checks { get; init; } = true;

    /// <summary>Shows raw beside corrected.</summary>
    public bool Raw { get; init; } = true;

    /// <summary>Also what comes due within so many hours.</summary>
    public double AheadHours { get; init; }

    /// <summary>The lowest priority that is shown.</summary>
    public Priority AtLeast { get; init; }

    /// <summary>How many lines at most.</summary>
    public int Most { get; init; }

    /// <summary>Which kind of entries.</summary>
    public RecordGroup About { get; init; }
}

/// <summary>What a tile draws.</summary>
public enum TileKind
{
    /// <summary>A card a pool.</summary>
    Pools = 0,
    /// <summary>Numbers of probes.</summary>
    Readout,
    /// <summary>Trends of probes.</summary>
    Strip,
    /// <summary>The saturation index of a pool.</summary>
    Balance,
    /// <summary>The newest tests by hand of a pool.</summary>
    Tests,
    /// <summary>What stands.</summary>
    Alarms,
    /// <summary>What is due.</summary>
    Due,
    /// <summary>Dosing pumps.</summary>
    Pumps,
    /// <summary>The standing of probes, and why.</summary>
    Probes,
    /// <summary>Which to believe, the probe or the test.</summary>
    Trust,
    /// <summary>Jobs of maintenance that are not over.</summary>
    Jobs,
    /// <summary>What was written down.</summary>
    Notes,
    /// <summary>The time at the site.</summary>
    Clock,
}

/// <summary>How much room a tile wants where there is room.</summary>
public enum TileRoom
{
    /// <summary>A number.</summary>
    Narrow = 0,
    /// <summary>A strip.</summary>
    Wide,
    /// <summary>A whole row.</summary>
    Full,
}
