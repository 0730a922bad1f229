namespace PlantWatch.Server.PlantFile;

/// <summary>The time zone must be one that this machine knows: without it no day begins and no check is due.</summary>
internal static class SiteChecks
{
    public static void Check(Place root, Complaints complaints)
    {
        var zone = root["site"]["time_zone"];
        if (zone.String is not { Length: > 0 } id || IsKnown(id)) return;
        var hint = Spelling.DidYouMean(id, TimeZoneInfo.GetSystemTimeZones().Select(known => known.Id));
        complaints.Add(zone, $"expected an IANA time zone such as Europe/London, found '{Text.Short(id)}'{hint}");
    }

    // A path or a zone of three letters may happen to open a file on one machine and not on the next.
    private static bool IsKnown(string id) =>
        id == "UTC" || (id.Contains('/', StringComparison.Ordinal) && char.IsAsciiLetter(id[0]) && !id.Contains("..", StringComparison.Ordinal)
            && TimeZoneInfo.TryFindSystemTimeZoneById(id, out _));
}
