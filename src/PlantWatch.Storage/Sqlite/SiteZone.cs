namespace PlantWatch.Storage.Sqlite;

/// <summary>Remembers by which zone the days were cut.</summary>
internal static class SiteZone
{
    /// <summary>Cuts the days anew where the zone is another one than last time.</summary>
    public static void Hold(Session session, RollUps rollUps, TimeZoneInfo zone)
    {
        if (Read(session) == zone.Id) return;
        session.InTransaction(() =>
        {
            rollUps.RebuildDays(session);
            return session.Prepare("INSERT OR REPLACE INTO site (only_row, time_zone) VALUES (1, ?1)").Bind(1, zone.Id).Run();
        });
    }

    private static string? Read(Session session)
    {
        var row = session.Prepare("SELECT time_zone FROM site");
        var zone = row.Next() ? row.Text(0) : null;
        row.Reset();
        return zone;
    }
}
