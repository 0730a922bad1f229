using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Boards;

/// <summary>Makes the board of a file that was found good.</summary>
internal static class BoardBuilder
{
    private const double UsualStripHours = 24, UsualNoteHours = 48;
    private const int UsualLines = 12;

    public static Board Build(Place root) => new(
        root["title"].String!, EnumWords<BoardReader>.Find(root["for"].String)!.Value, root["note"].String, root["choose"].Exists, Wall(root["wall"]), [.. root["tiles"].Items.Select(Tile)]);

    private static BoardWall Wall(Place at) => !at.Exists ? BoardWall.Usual : new(
        at["page_seconds"].Number ?? BoardWall.Usual.PageSeconds, Clock(at["dark_from"]), Clock(at["dark_until"]), EnumWords<WallSize>.Find(at["size"].String) ?? WallSize.Usual);

    private static TimeOnly? Clock(Place at) => TimeOnly.TryParseExact(at.String, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;

    private static BoardTile Tile(Place at)
    {
        var show = EnumWords<TileKind>.Find(at["show"].String)!.Value;
        return new()
        {
            Show = show,
            Title = at["title"].String,
            Line = at["of"].Line,
            Of = [.. at["of"].Items.Select(item => item.String!)],
            Measurands = [.. at["measurands"].Items.Select(item => EnumWords<Measurand>.Find(item.String)).OfType<Measurand>()],
            Room = EnumWords<TileRoom>.Find(at["room"].String) ?? UsualRoom(show),
            Hours = at["hours"].Number ?? (show == TileKind.Notes ? UsualNoteHours : UsualStripHours),
            Limits = at["limits"].Boolean ?? true,
            Checks = at["checks"].Boolean ?? true,
            Raw = at["raw"].Boolean ?? true,
            AheadHours = at["ahead_hours"].Number ?? 0,
            AtLeast = EnumWords<Priority>.Find(at["at_least"].String) ?? Priority.Note,
            Most = (int)(at["most"].Number ?? UsualLines),
            About = EnumWords<RecordGroup>.Find(at["about"].String) ?? RecordGroup.All,
        };
    }

    private static TileRoom UsualRoom(TileKind show) => show switch
    {
        TileKind.Pools => TileRoom.Full,
        TileKind.Clock => TileRoom.Narrow,
        _ => TileRoom.Wide,
    };
}
