using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.History;

/// <summary>The stored readings of a circuit in the order of their sample times, as messages on topics of their own: a reading is kept in its own unit, whatever form it came in.</summary>
internal sealed class StoredFeed
{
    private static readonly TimeSpan Slice = TimeSpan.FromHours(1);

    private readonly SqliteArchive _archive;
    private readonly PartitionKey _partition;
    private readonly (string Series, string Topic)[] _sources;

    /// <summary>Finds the series of a plan; one that was renamed is read under its former name where the record knows no other.</summary>
    public StoredFeed(SqliteArchive archive, PartitionKey partition, CircuitPlan plan, Instant to)
    {
        (_archive, _partition) = (archive, partition);
        Plan = Speaking(plan);
        _sources =
        [
            .. plan.Probes.Select(p => (Stored(p.Id, p.Was, to), p.Id)),
            .. plan.Pumps.Select(p => (Stored(p.StateSeries, p.Was is null ? null : p.Was + "/state", to), p.StateSeries)),
            .. plan.Pumps.Where(p => p.TankTopic is not null).Select(p => (Stored(p.TankSeries, p.Was is null ? null : p.Was + "/tank", to), p.TankSeries)),
            .. plan.Pumps.Where(p => p.StrokesTopic is not null).Select(p => (Stored(p.StrokesSeries, p.Was is null ? null : p.Was + "/strokes", to), p.StrokesSeries)),
        ];
    }

    /// <summary>The plan with the topics that this feed speaks on.</summary>
    public CircuitPlan Plan { get; }

    /// <summary>A plan with the topics that a feed speaks on.</summary>
    public static CircuitPlan Speaking(CircuitPlan plan) => plan with
    {
        Probes = [.. plan.Probes.Select(p => p with { Topic = p.Id, Format = PayloadFormat.Number, RecordName = null, Unit = null })],
        Pumps = [.. plan.Pumps.Select(p => p with { StateTopic = p.StateSeries, TankTopic = p.TankTopic is null ? null : p.TankSeries, StrokesTopic = p.StrokesTopic is null ? null : p.StrokesSeries })],
    };

    /// <summary>The key under which the record holds what a probe read.</summary>
    public string SeriesOf(string probe) => _sources.First(s => s.Topic == probe).Series;

    /// <summary>All readings from the start (included) to the end (excluded).</summary>
    public IEnumerable<(Instant At, string Topic, byte[] Payload)> Between(Instant from, Instant to)
    {
        for (var start = from; start < to; start += Slice)
        {
            var end = Instant.Earlier(start + Slice, to);
            var readings = new List<(Instant At, int Source, double Value)>();
            for (var i = 0; i < _sources.Length; i++)
                foreach (var reading in _archive.Raw(_partition, _sources[i].Series, start, end)) readings.Add((reading.MeasuredAt, i, reading.Raw));
            readings.Sort((a, b) => a.At != b.At ? a.At.CompareTo(b.At) : a.Source.CompareTo(b.Source));
            foreach (var (at, source, value) in readings) yield return (at, _sources[source].Topic, Encoding.UTF8.GetBytes(value.ToString("R", CultureInfo.InvariantCulture)));
        }
    }

    private string Stored(string series, string? was, Instant to) =>
        was is null || _archive.Raw(_partition, series, Instant.Never, to, 1).Count > 0 ? series : was;
}
