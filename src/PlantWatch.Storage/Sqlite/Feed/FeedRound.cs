namespace PlantWatch.Storage.Sqlite;

/// <summary>Goes round the series and takes what follows their marks, none more than its share before the others had theirs. Used by one feed.</summary>
internal sealed class FeedRound
{
    /// <summary>Readings a series gives before it is the next one's turn: enough that reading on in one place pays.</summary>
    private const int Share = 500;

    private List<FeedSeries> _series = [];
    private int _next;

    /// <summary>A series of this round gave as much as it was asked for, and may have more.</summary>
    public bool IsMore { get; private set; }

    /// <summary>Forgets what it knows: the marks are read again.</summary>
    public void Forget() => (_series, _next) = ([], 0);

    /// <summary>True when the marks must be read before the next page.</summary>
    public bool IsOver => _next >= _series.Count;

    /// <summary>Begins a round with the marks as they stand, but for a page that is on its way.</summary>
    public void Begin(Session session, FeedPage? ahead)
    {
        (_series, _next, IsMore) = ([], 0, false);
        var rows = session.Prepare(
            "SELECT s.id, p.key, s.key, f.circuit, f.probe, f.upto FROM feed_series f JOIN series s ON s.id = f.series JOIN partition p ON p.id = s.partition ORDER BY s.id");
        while (rows.Next()) _series.Add(Of(rows));
        if (ahead is null) return;
        var byId = _series.ToDictionary(s => s.Id);
        foreach (var piece in ahead.Pieces)
            if (piece.Minute is null && byId.TryGetValue(piece.Series, out var series) && series.Upto == piece.Was) series.Upto = piece.Upto;
    }

    /// <summary>Takes pieces until there are so many readings, or the round is over.</summary>
    public int Take(Session session, int most, List<FeedPiece> pieces)
    {
        var taken = 0;
        var begun = _next;
        for (; taken < most && _next < _series.Count; _next++) taken += Take(session, _series[_next], Math.Min(Share, most - taken), pieces);
        // Room is left after a whole round: those that had more than their share go on.
        if (begun > 0 || _next < _series.Count) return taken;
        var hungry = _series.Where(s => pieces.Exists(p => p.Series == s.Id && p.Minute is null && p.Readings.Count == Share)).ToArray();
        IsMore = false;
        for (var i = 0; i < hungry.Length; i++) taken += Take(session, hungry[i], (most - taken) / (hungry.Length - i), pieces);
        return taken;
    }

    private int Take(Session session, FeedSeries series, int most, List<FeedPiece> pieces)
    {
        if (most <= 0 || FeedReader.After(session, series.Id, series.Upto, most) is not { Count: > 0 } readings) return 0;
        var upto = readings[^1].MeasuredAt.UnixMicroseconds;
        pieces.Add(new(series.Id, series.Circuit, series.Probe, series.SayFormerly(), readings, series.Upto, upto));
        series.Upto = upto;
        IsMore |= readings.Count == most;
        return readings.Count;
    }

    private static FeedSeries Of(Statement row)
    {
        var (circuit, probe, before) = (row.Text(1), row.Text(2), (Circuit: row.Text(3), Probe: row.Text(4)));
        var upto = row.Int64(5);
        var isSame = upto == FeedTable.Nothing || before == (circuit, probe);
        return new(row.Int64(0), circuit, probe, isSame ? null : $"{before.Circuit}/{before.Probe}", upto);
    }
}
