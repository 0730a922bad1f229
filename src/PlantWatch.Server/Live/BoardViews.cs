using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Boards;

namespace PlantWatch.Server.Live;

/// <summary>Boards as pages show them, held against the plant that is in force.</summary>
internal static class BoardViews
{
    private const int VersionDigits = 12;

    public static BoardView Of(BoardStanding standing, PlantPlan? plan)
    {
        var board = standing.Shown;
        var wall = board?.Wall ?? BoardWall.Usual;
        var view = new BoardView(
            standing.Id, "", board?.Title ?? standing.Id, board?.For, board?.Note, standing.Own, board?.OnePool ?? false, new WallView(wall.PageSeconds, Clock(wall.DarkFrom), Clock(wall.DarkUntil), wall.Size),
            board is null ? [] : [.. board.Tiles.Select(tile => Tile(tile, plan))], [.. standing.Errors.Select(e => new BoardErrorView(e.File ?? "", e.Line, e.Key, e.Message))]);
        return view with { Version = VersionOf(view) };
    }

    public static BoardLine Line(BoardView view) =>
        new(view.Id, view.Version, view.Title, view.For, view.Note, view.Own, view.Errors.Count + view.Tiles.Sum(t => t.Problems.Count));

    private static TileView Tile(BoardTile t, PlantPlan? plan) => new(
        t.Show, t.Title, t.Of, t.Measurands, t.Room, t.Hours, t.Limits, t.Checks, t.Raw, t.AheadHours, t.AtLeast, t.Most, t.About, BoardIds.Problems(t, plan));

    private static string? Clock(TimeOnly? time) => time?.ToString("HH:mm", CultureInfo.InvariantCulture);

    // Of what is shown and not of the file: a plant that changes under a board changes the board.
    private static string VersionOf(BoardView view) => Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(view, PlantJson.Options)))[..VersionDigits];
}
