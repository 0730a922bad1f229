namespace PlantWatch.Storage.Sqlite;

/// <summary>A series as the feed knows it while it goes round.</summary>
internal sealed class FeedSeries(long id, string circuit, string probe, string? formerly, long upto)
{
    public long Id => id;
    public string Circuit => circuit;
    public string Probe => probe;

    /// <summary>Up to here it was read for a page.</summary>
    public long Upto { get; set; } = upto;

    /// <summary>The other name it was written under; null when there is none, or it was said already.</summary>
    public string? SayFormerly()
    {
        var said = formerly;
        formerly = null;
        return said;
    }
}
