namespace PlantWatch.Simulator.Plant;

/// <summary>How often the plant speaks. It may change while the plant runs: thin for history, dense for live.</summary>
/// <param name="PackedEvery">Sampling of probes whose readings leave in SenML packs with device time.</param>
/// <param name="PackSpan">Time that one pack covers.</param>
/// <param name="PlainEvery">Sampling of probes that send one plain number at a time.</param>
/// <param name="PumpLook">How often a pump's state is looked at; it is sent when it changed.</param>
/// <param name="CountEvery">How often the strokes of a pump are said.</param>
/// <param name="PumpRepeat">How long an unchanged state or tank level may go unsaid.</param>
internal sealed record Cadence(TimeSpan PackedEvery, TimeSpan PackSpan, TimeSpan PlainEvery, TimeSpan PumpLook, TimeSpan PumpRepeat, TimeSpan CountEvery)
{
    /// <summary>A lively plant.</summary>
    public static Cadence Live { get; } = new(TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(2), TimeSpan.FromSeconds(3), TimeSpan.FromSeconds(2), TimeSpan.FromMinutes(1), TimeSpan.FromSeconds(30));

    /// <summary>Weeks in a minute.</summary>
    public static Cadence History { get; } = new(TimeSpan.FromSeconds(60), TimeSpan.FromMinutes(5), TimeSpan.FromMinutes(3), TimeSpan.FromMinutes(15), TimeSpan.FromHours(1), TimeSpan.FromMinutes(5));
}
