using System.Globalization;
using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage;

/// <summary>The refusal that keeps a reading for whose time another value stands.</summary>
public static class Conflicts
{
    /// <summary>Makes the refusal. Its topic is the series, because storage knows no other; its payload is the value as text; its detail names the time and the value that stands.</summary>
    /// <param name="commit">The batch it came with.</param>
    /// <param name="ordinal">Count of conflicts in this batch before this one: equal items stay two.</param>
    /// <param name="series">Series key as the reading named it.</param>
    /// <param name="measuredAt">Time of both.</param>
    /// <param name="receivedAt">When this one came.</param>
    /// <param name="value">The value kept out.</param>
    /// <param name="stands">The value that stands.</param>
    public static Refusal Refuse(Commit commit, long ordinal, string series, Instant measuredAt, Instant receivedAt, double value, double stands)
    {
        ArgumentNullException.ThrowIfNull(commit);
        var id = TimeOrderedId.Derive(receivedAt, string.Create(CultureInfo.InvariantCulture, $"conflict/{commit.Partition}/{commit.Seq}/{ordinal}"));
        return new Refusal(id, receivedAt, series, Encoding.UTF8.GetBytes(Text(value)), RefusalReason.ConflictingValue, $"{measuredAt} {Text(stands)}");
    }

    /// <summary>Makes the refusal of a reading whose minute was let go by the retention.</summary>
    /// <param name="commit">The batch it came with.</param>
    /// <param name="ordinal">Count of conflicts in this batch before this one: equal items stay two.</param>
    /// <param name="series">Series key as the reading named it.</param>
    /// <param name="measuredAt">Its time.</param>
    /// <param name="receivedAt">When it came.</param>
    /// <param name="value">Its value.</param>
    public static Refusal TooLate(Commit commit, long ordinal, string series, Instant measuredAt, Instant receivedAt, double value)
    {
        ArgumentNullException.ThrowIfNull(commit);
        var id = TimeOrderedId.Derive(receivedAt, string.Create(CultureInfo.InvariantCulture, $"conflict/{commit.Partition}/{commit.Seq}/{ordinal}"));
        return new Refusal(id, receivedAt, series, Encoding.UTF8.GetBytes(Text(value)), RefusalReason.ClockBehind, measuredAt.ToString());
    }

    private static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
