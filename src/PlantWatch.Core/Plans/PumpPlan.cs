namespace PlantWatch.Core.Plans;

/// <summary>A dosing pump.</summary>
public sealed record PumpPlan
{
    /// <summary>Stable key, unique in the plant.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>Former id when it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>The pool it doses; null when it doses the common return.</summary>
    public string? PoolId { get; init; }

    /// <summary>The product it delivers.</summary>
    public required string ProductId { get; init; }

    /// <summary>What that product is, as the plant file says; unknown in plans read before this was written down.</summary>
    public ProductKind Doses { get; init; }

    /// <summary>The probe its controller doses by, where the plant file names it; null leaves it to <see cref="PumpFollows"/>.</summary>
    public string? FollowsProbeId { get; init; }

    /// <summary>Topic of its state: the words stopped, running, fault, or the codes 0, 1, 2.</summary>
    public required string StateTopic { get; init; }

    /// <summary>Topic of its tank level in per cent; null when not measured.</summary>
    public string? TankTopic { get; init; }

    /// <summary>Content of the full tank in litres.</summary>
    public double? TankLitres { get; init; }

    /// <summary>Tank level in per cent under which it is time to refill.</summary>
    public double TankLowPercent { get; init; } = 15;

    /// <summary>What it delivers while it runs, flat out and well, in L/h; null when not known.</summary>
    public double? LitresPerHour { get; init; }

    /// <summary>Topic of its strokes; null when it only says whether it runs.</summary>
    public string? StrokesTopic { get; init; }

    /// <summary>What the number on that topic counts.</summary>
    public StrokeCount StrokesAre { get; init; }

    /// <summary>Its state topic tells every start and stop of its pulses as it happens. A state that is only asked for now and then tells nothing of pulses in between.</summary>
    public bool PulsesTold { get; init; }

    /// <summary>What a stroke delivers when all is well, in mL; null when not known.</summary>
    public double? MillilitresPerStroke { get; init; }

    /// <summary>The most in litres that is plausible in a day; null when nobody said.</summary>
    public double? DailyLimitLitres { get; init; }

    /// <summary>The product as the plant file describes it, under its id and without price: neither changes what it does to water. Null in plans read before this was written down.</summary>
    public ProductPlan? Product { get; init; }

    /// <summary>Tank level in per cent from which the pump draws nothing any more: what stands under its foot valve. 5 per cent where the plant file says nothing (common practice).</summary>
    public double TankFootPercent { get; init; } = 5;

    /// <summary>Series key of the state.</summary>
    public string StateSeries => Id + "/state";

    /// <summary>Series key of the tank level.</summary>
    public string TankSeries => Id + "/tank";

    /// <summary>Series key of the strokes.</summary>
    public string StrokesSeries => Id + "/strokes";
}

/// <summary>What a pump's number of strokes counts.</summary>
public enum StrokeCount
{
    /// <summary>All strokes since it was last set to nil: a running counter.</summary>
    Total = 0,
    /// <summary>The strokes of the last minute.</summary>
    LastMinute,
}
