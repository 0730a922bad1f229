using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Boards;

namespace PlantWatch.Server.Api;

// ---- GET /api/v1/boards : BoardLine[] in the order of their titles; also hub message "boards", on connect and whenever one of them changed
// ---- GET /api/v1/boards/{id} : BoardView

/// <summary>A board in a list.</summary>
/// <param name="Id">Name of its file without the ending.</param>
/// <param name="Version">Changes with anything that the board shows or says of itself.</param>
/// <param name="Title">Its title; its id where it never was good.</param>
/// <param name="For">Whose job it serves; null where it never was good.</param>
/// <param name="Note">What it is for.</param>
/// <param name="Own">It is the plant's own and not one that comes with the server.</param>
/// <param name="Problems">How much is wrong with it: with its file, and what it names that the plant has not.</param>
public sealed record BoardLine(string Id, string Version, string Title, BoardReader? For, string? Note, bool Own, int Problems);

/// <summary>A board to be drawn.</summary>
/// <param name="Id">Name of its file without the ending.</param>
/// <param name="Version">As in the list.</param>
/// <param name="Title">Its title.</param>
/// <param name="For">Whose job it serves; null where it never was good.</param>
/// <param name="Note">What it is for.</param>
/// <param name="Own">It is the plant's own.</param>
/// <param name="OnePool">It shows one pool at a time.</param>
/// <param name="Wall">How it hangs on a wall.</param>
/// <param name="Tiles">Its parts in their order; empty where it never was good.</param>
/// <param name="Errors">What is wrong with the file as it lies there; what is drawn is then its last good version.</param>
public sealed record BoardView(
    string Id, string Version, string Title, BoardReader? For, string? Note, bool Own, bool OnePool, WallView Wall, IReadOnlyList<TileView> Tiles, IReadOnlyList<BoardErrorView> Errors);

/// <summary>How a board hangs on a wall. Times are of the site's clock, such as 21:30.</summary>
public sealed record WallView(double PageSeconds, string? DarkFrom, string? DarkUntil, WallSize Size);

/// <summary>A part of a board.</summary>
/// <param name="Show">What it draws.</param>
/// <param name="Title">Its title; null when it is named after what it shows.</param>
/// <param name="Of">Ids; empty means all.</param>
/// <param name="Measurands">What its probes measure; empty means whatever they measure.</param>
/// <param name="Room">How much room it wants.</param>
/// <param name="Hours">How far back it reaches.</param>
/// <param name="Limits">Draws limits.</param>
/// <param name="Checks">Marks checks.</param>
/// <param name="Raw">Shows raw beside corrected.</param>
/// <param name="AheadHours">Also what comes due within so many hours.</param>
/// <param name="AtLeast">Lowest priority that is shown.</param>
/// <param name="Most">How many lines at most.</param>
/// <param name="About">Which kind of entries.</param>
/// <param name="Problems">What it names that the plant has not, in words.</param>
public sealed record TileView(
    TileKind Show, string? Title, IReadOnlyList<string> Of, IReadOnlyList<Measurand> Measurands, TileRoom Room, double Hours, bool Limits, bool Checks, bool Raw,
    double AheadHours, Priority AtLeast, int Most, RecordGroup About, IReadOnlyList<string> Problems);

/// <summary>What is wrong with a file of a board, where, and what would be right.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Line">Line in the file, from 1.</param>
/// <param name="Key">Path of the key; empty for the file as a whole.</param>
/// <param name="Message">What was expected and what was found.</param>
public sealed record BoardErrorView(string File, int Line, string Key, string Message);
