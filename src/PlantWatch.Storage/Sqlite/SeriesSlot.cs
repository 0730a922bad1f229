using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>One series as the writer knows it: its id, its newest time, and the rows of the transaction in hand.</summary>
internal sealed class SeriesSlot(long id, long newest)
{
    /// <summary>Integer id in the store.</summary>
    public long Id => id;

    /// <summary>Newest time stored, or <see cref="long.MinValue"/>. What is later can be no duplicate, whatever the reading says of itself.</summary>
    public long Newest { get; set; } = newest;

    /// <summary>Raw readings before it were let go; 0 when none was.</summary>
    public long RawFrom { get; set; }

    /// <summary>Minutes before it were let go; 0 when none was.</summary>
    public long MinuteFrom { get; set; }

    /// <summary>Rows waiting to be written, in arrival order. Written a series at a time: neighbours in the tree.</summary>
    public List<Row> Rows { get; } = [];

    /// <summary>A row to write.</summary>
    /// <param name="T">Measured, in microseconds.</param>
    /// <param name="Value">Raw number.</param>
    /// <param name="Lag">Received less measured, in microseconds.</param>
    /// <param name="Quality">Facts.</param>
    /// <param name="Commit">Index of the commit it came with.</param>
    public readonly record struct Row(long T, double Value, long Lag, Quality Quality, int Commit);
}
