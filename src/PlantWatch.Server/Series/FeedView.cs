using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Series;

/// <summary>How far the series are in InfluxDB. The default is switched off.</summary>
internal sealed record FeedView
{
    /// <summary>Nobody asked for it.</summary>
    public static FeedView Off { get; } = new();

    /// <summary>The series are fed.</summary>
    public bool IsOn { get; init; }

    /// <summary>Readings written since the start.</summary>
    public long Written { get; init; }

    /// <summary>What is owed, as last counted.</summary>
    public Backlog Owed { get; init; }

    /// <summary>Age of the oldest reading owed, when it was counted.</summary>
    public TimeSpan Lag { get; init; }

    /// <summary>Why nothing is taken at the moment; empty when it is.</summary>
    public string Trouble { get; init; } = "";

    /// <summary>Since when.</summary>
    public Instant TroubleSince { get; init; }

    /// <summary>What the last lines that were refused for good were refused for; empty when none were.</summary>
    public string LastRefusal { get; init; } = "";

    /// <summary>Days of series that the last nightly comparison found to differ; they were written again then.</summary>
    public int Differing { get; init; }
}

/// <summary>Where the present view lies; read by others at any time.</summary>
internal sealed class FeedBook
{
    private volatile FeedView _now = FeedView.Off;

    public FeedView Now
    {
        get => _now;
        set => _now = value;
    }
}
