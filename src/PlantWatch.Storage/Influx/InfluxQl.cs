using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Influx;

/// <summary>Questions in InfluxQL, of the kind that 1.x, 2.x and 3.x all answer.</summary>
internal static class InfluxQl
{
    /// <summary>Rows of a page of raw readings.</summary>
    public const int PageOfRaw = 10_000;

    /// <summary>Buckets of a page.</summary>
    public const long PageOfBuckets = 20_000;

    // Quality is a number there: the good ones are counted out from what Core calls good.
    private static readonly string Good = string.Join(" OR ", Enumerable.Range(0, byte.MaxValue + 1).Where(q => ((Quality)q).IsGood()).Select(q => $"quality = {q}"));

    /// <summary>Raw readings of a series, from a time (included) to another (excluded).</summary>
    public static string Raw(PartitionKey partition, string series, long from, long to, int limit) =>
        $"SELECT value, quality, lag FROM {LineProtocol.Measurement} WHERE {Named(partition, series)} AND {Between(from, to)} ORDER BY time LIMIT {limit}";

    /// <summary>Buckets of a span each: first of all readings, then of the good ones.</summary>
    public static string Buckets(PartitionKey partition, string series, long from, long to, long span)
    {
        var (what, where, group) = ("count(value), sum(value), min(value), max(value)", $"{Named(partition, series)} AND {Between(from, to)}", $"GROUP BY time({span}u) fill(none)");
        return $"SELECT {what}, last(value) FROM {LineProtocol.Measurement} WHERE {where} {group}; SELECT {what} FROM {LineProtocol.Measurement} WHERE {where} AND ({Good}) {group}";
    }

    /// <summary>Readings of every series, from a time (included) to another (excluded).</summary>
    public static string Counts(long from, long to) => $"SELECT count(value) FROM {LineProtocol.Measurement} WHERE {Between(from, to)} GROUP BY circuit, probe";

    private static string Named(PartitionKey partition, string series) => $"circuit = {Text(partition.Value)} AND probe = {Text(series)}";

    private static string Between(long from, long to) => $"time >= {from}u AND time < {to}u";

    private static string Text(string name) => $"'{LineProtocol.NameOf(name).Replace("'", @"\'", StringComparison.Ordinal)}'";
}
