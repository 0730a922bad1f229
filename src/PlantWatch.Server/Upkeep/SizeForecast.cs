using PlantWatch.Storage;

namespace PlantWatch.Server.Upkeep;

/// <summary>What a record will take up when it goes on growing as in the last week.</summary>
/// <param name="BytesADay">Growth a day now.</param>
/// <param name="BytesInAYear">Size in a year under the policy.</param>
/// <param name="DaysLeft">Days until the disk is full at this pace; null when that is more than ten years away.</param>
internal sealed record SizeForecast(double BytesADay, double BytesInAYear, double? DaysLeft)
{
    private const double Year = 365, TenYears = 3650;

    // Where the engine cannot tell tables apart, or there is too little to measure: bytes a row as measured with SQLite 3.53 (docs/decisions/0020).
    private const double UsualReading = 26, UsualMinute = 60, Enough = 10_000;

    /// <summary>Reckons it.</summary>
    /// <param name="size">The record now.</param>
    /// <param name="policy">How long readings are kept.</param>
    /// <param name="diskFree">Free bytes of its disk.</param>
    public static SizeForecast Of(RecordSize size, RetentionPolicy policy, long diskFree)
    {
        var used = size.Bytes - size.FreeBytes;
        var raw = Tier.Of(size.Readings, PerRow(size, "reading", size.Readings, UsualReading), size.ReadingsADay, policy.Raw, size.Days);
        var minutes = Tier.Of(size.Minutes, PerRow(size, "rollup_minute", size.Minutes, UsualMinute), size.MinutesADay, policy.Minutes, size.Days);
        var rest = Math.Max(0, used - raw.Bytes - minutes.Bytes) / Math.Max(1, size.Readings + size.LetGo) * size.ReadingsADay;
        var aDay = raw.GrowthADay + minutes.GrowthADay + rest;
        var inAYear = raw.In(Year) + minutes.In(Year) + Math.Max(0, used - raw.Bytes - minutes.Bytes) + (rest * Year);
        var left = aDay > 0 ? (diskFree + size.FreeBytes) / aDay : double.PositiveInfinity;
        return new(aDay, Math.Max(inAYear, used), left < TenYears ? left : null);
    }

    /// <summary>Bytes by table; where the engine cannot tell, single readings and minutes by their usual size, and all the rest together.</summary>
    public static IReadOnlyList<TableSize> Tables(RecordSize size)
    {
        if (size.Tables.Count > 0) return size.Tables;
        var (readings, minutes) = ((long)(size.Readings * UsualReading), (long)(size.Minutes * UsualMinute));
        return [new("reading", readings), new("rollup_minute", minutes), new("other", Math.Max(0, size.Bytes - size.FreeBytes - readings - minutes))];
    }

    private static double PerRow(RecordSize size, string table, long rows, double usual) =>
        rows >= Enough && size.Tables.FirstOrDefault(t => t.Name == table) is { } found ? (double)found.Bytes / rows : usual;

    private readonly record struct Tier(double Bytes, double BytesADay, double? KeptDays, double Days)
    {
        public static Tier Of(long rows, double perRow, double rowsADay, TimeSpan? kept, double days) => new(rows * perRow, rowsADay * perRow, kept?.TotalDays, days);

        // Once the kept time is full, as much goes as comes.
        public double GrowthADay => KeptDays is { } kept && Days >= kept ? 0 : BytesADay;

        public double In(double days) => KeptDays is { } kept ? Math.Max(0, Math.Min(Bytes + (BytesADay * days), BytesADay * Math.Min(kept, Days + days))) : Bytes + (BytesADay * days);
    }
}
