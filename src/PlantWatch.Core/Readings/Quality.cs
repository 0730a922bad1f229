namespace PlantWatch.Core.Readings;

/// <summary>Independent facts about one reading. The default is <see cref="NotReceived"/>: a zeroed reading never looks good.</summary>
[Flags]
public enum Quality : byte
{
    /// <summary>There is no reading.</summary>
    NotReceived = 0,
    /// <summary>A number arrived and lies inside the instrument's range.</summary>
    Received = 1,
    /// <summary>Older than the watermark: stored and rolled up, but raises and clears no live alarm.</summary>
    Late = 2,
    /// <summary>The device's clock disagrees with ours.</summary>
    ClockDoubted = 4,
    /// <summary>No sample flow, backwash or work on the probe (NAMUR NE 107: function check): outside limits and statistics.</summary>
    FunctionCheck = 8,
    /// <summary>The signal itself looks wrong: a spike, stuck, broken.</summary>
    Suspect = 16,
}

/// <summary>Readings of <see cref="Quality"/>.</summary>
public static class Qualities
{
    /// <summary>True when the number may be judged against limits and counted as good: received, and nothing speaks against it but its lateness.</summary>
    public static bool IsGood(this Quality quality) => (quality & ~Quality.Late) == Quality.Received;

    /// <summary>Joins the quality of two inputs of one result: every doubt stays, and what one lacks the result lacks.</summary>
    public static Quality With(this Quality a, Quality b) =>
        ((a | b) & ~Quality.Received) | (a & b & Quality.Received);
}
