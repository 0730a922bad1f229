using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>The fields of one payload as they stand, whether it is the message itself or the envelope of a compressed one.</summary>
internal struct SparkplugRead()
{
    /// <summary>The numbers of a metric's fields that are looked at; those of values are <see cref="SparkplugField"/>.</summary>
    public const uint Name = 1, Alias = 2, CapturedAt = 3, DataType = 4, Historical = 5, Transient = 6, Null = 7, Properties = 9;

    /// <summary>The numbers of a payload's fields.</summary>
    public const uint SentAtField = 1, MetricsField = 2, SequenceField = 3, UuidField = 4, BodyField = 5;

    public SparkplugFault Fault;
    public string Detail = "";
    public Instant SentAt;
    public byte? Sequence;
    public bool IsCompressed;
    public Range Body = 0..0;
    public List<SparkplugMetric> Metrics = [];

    /// <summary>What an envelope says of its body; null when it does not say.</summary>
    public readonly string? Algorithm
    {
        get
        {
            foreach (var metric in Metrics)
                if (metric.Name == "algorithm") return metric.Word ?? "";
            return null;
        }
    }
}
