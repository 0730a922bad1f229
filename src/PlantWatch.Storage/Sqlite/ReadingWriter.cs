namespace PlantWatch.Storage.Sqlite;

/// <summary>Writes the rows of a series and finds out what the late ones are: new, there already, or in conflict.</summary>
internal sealed class ReadingWriter(Session session, RollUps rollUps)
{
    private readonly Statement _append = session.Prepare("INSERT INTO reading (series, t, value, quality, lag) VALUES (?1, ?2, ?3, ?4, ?5)");
    private readonly Statement _insert = session.Prepare("INSERT INTO reading (series, t, value, quality, lag) VALUES (?1, ?2, ?3, ?4, ?5) ON CONFLICT DO NOTHING");
    private readonly FeedMarks _marks = new(session);
    private readonly Statement _valueAt = session.Prepare("SELECT value FROM reading WHERE series = ?1 AND t = ?2");

    private readonly Statement _isWhole = session.Prepare(
        """
        SELECT (SELECT count(*) FROM reading WHERE series = ?1 AND t >= ?2 AND t < ?2 + 60000000)
          >= coalesce((SELECT count FROM rollup_minute WHERE series = ?1 AND t = ?2), 0)
        """);

    /// <summary>A reading that another value keeps out; without one, that comes when its minute was let go, so that nobody can tell whether it was there.</summary>
    public readonly record struct Conflict(SeriesSlot.Row Row, double? Stands);

    /// <summary>Writes the waiting rows of a series and its roll-ups.</summary>
    /// <param name="slot">The series; its rows are taken.</param>
    /// <param name="alreadyThere">Called with the commit's index for each duplicate.</param>
    /// <param name="conflict">Called for each conflict.</param>
    public void Write(SeriesSlot slot, Action<int> alreadyThere, Action<Conflict> conflict)
    {
        _append.Bind(1, slot.Id);
        var (quality, lag) = (-1L, -1L);
        foreach (var row in slot.Rows)
        {
            if (row.T <= slot.Newest)
            {
                Late(slot, row, alreadyThere, conflict);
                continue;
            }
            // Bound values stay, and these two seldom change.
            if ((long)row.Quality != quality) _append.Bind(4, quality = (long)row.Quality);
            if (row.Lag != lag) _append.Bind(5, lag = row.Lag);
            _append.Bind(2, row.T).Bind(3, row.Value).Run();
            slot.Newest = row.T;
            rollUps.Newer(row.T, row.Value, row.Quality);
        }
        slot.Rows.Clear();
        _marks.Write(slot.Id, rollUps.LateMinutes);
        rollUps.Write(slot.Id);
    }

    private void Late(SeriesSlot slot, SeriesSlot.Row row, Action<int> alreadyThere, Action<Conflict> conflict)
    {
        if (row.T < slot.RawFrom && !IsWhole(slot, row.T))
        {
            conflict(new Conflict(row, null));
            return;
        }
        var rows = _insert.Bind(1, slot.Id).Bind(2, row.T).Bind(3, row.Value).Bind(4, (long)row.Quality).Bind(5, row.Lag).Run();
        if (rows == 1)
        {
            rollUps.Late(row.T);
            return;
        }
        _valueAt.Bind(1, slot.Id).Bind(2, row.T).Next();
        var stands = _valueAt.Double(0);
        _valueAt.Reset();
        if (stands == row.Value) alreadyThere(row.Commit);
        else conflict(new Conflict(row, stands));
    }

    // A minute that was empty, or got its first readings late, can be told from what it holds; one whose readings went cannot.
    private bool IsWhole(SeriesSlot slot, long t) => t >= slot.MinuteFrom && _isWhole.Bind(1, slot.Id).Bind(2, Tiers.Floor(t, Tiers.Minute)).Scalar() == 1;
}
