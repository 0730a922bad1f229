using System.Collections.Immutable;

namespace PlantWatch.Server.Boards;

/// <summary>One screen for one job, as its file describes it.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="For">Whose job it serves.</param>
/// <param name="Note">What it is for; null when nothing is said.</param>
/// <param name="OnePool">It shows one pool at a time, and the page offers the choice.</param>
/// <param name="Wall">How it hangs on a wall.</param>
/// <param name="Tiles">Its parts, the most important first.</param>
internal sealed record Board(string Title, BoardReader For, string? Note, bool OnePool, BoardWall Wall, ImmutableArray<BoardTile> Tiles);

/// <summary>How a board hangs on the wall of a plant room.</summary>
/// <param name="PageSeconds">How long tiles that do not fit beside the others are shown in turn, in seconds.</param>
/// <param name="DarkFrom">From when on the display is dark, on the site's clock; null when it follows the device.</param>
/// <param name="DarkUntil">Until when it is dark; null when and only when <paramref name="DarkFrom"/> is.</param>
/// <param name="Size">How large everything is drawn.</param>
public sealed record BoardWall(double PageSeconds, TimeOnly? DarkFrom, TimeOnly? DarkUntil, WallSize Size)
{
    /// <summary>A board that says nothing of walls.</summary>
    public static BoardWall Usual { get; } = new(20, null, null, WallSize.Usual);
}

/// <summary>How large a wall display is drawn.</summary>
public enum WallSize
{
    /// <summary>Figures readable from five metres on a large screen.</summary>
    Usual = 0,
    /// <summary>More on one screen, for a shorter distance.</summary>
    Smaller,
    /// <summary>Less on one screen, for a longer distance.</summary>
    Larger,
}

/// <summary>Whose job a board serves.</summary>
public enum BoardReader
{
    /// <summary>Plant engineer.</summary>
    Engineer = 0,
    /// <summary>Who makes the rounds.</summary>
    Operator,
    /// <summary>Who mends pumps and probes.</summary>
    Maintenance,
    /// <summary>Duty manager.</summary>
    Manager,
}
