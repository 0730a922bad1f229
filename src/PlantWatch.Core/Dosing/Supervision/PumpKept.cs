namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What of a pump stayed the same while the water or the plant file changed. The default is nothing: another pump.</summary>
public enum PumpKept
{
    /// <summary>It is another pump.</summary>
    Nothing = 0,
    /// <summary>The pump, but what it tells of its strokes means something else.</summary>
    Pump,
    /// <summary>The pump and the meaning of its strokes.</summary>
    Strokes,
}
