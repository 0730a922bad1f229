namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>Which of the two dosing pumps of a pool.</summary>
public enum DosedProduct
{
    /// <summary>The pump that lowers pH.</summary>
    Acid = 0,
    /// <summary>The pump that brings chlorine.</summary>
    Chlorine,
}

/// <summary>What may be wrong with a dosing pump, each an account of its own of strokes and water. The default is that nothing is.</summary>
public enum PumpTrouble
{
    /// <summary>It does what its strokes say.</summary>
    None = 0,
    /// <summary>It strokes and nothing arrives: prime lost, suction or injector shut.</summary>
    LostPrime,
    /// <summary>It strokes and its tank is empty.</summary>
    EmptyTank,
    /// <summary>Product arrives without strokes: siphon or leaking injector.</summary>
    Siphon,
    /// <summary>What arrives does less than it did: the assay has fallen, or the stroke is worn.</summary>
    WeakProduct,
    /// <summary>It runs on and its controller cannot have asked for it.</summary>
    StuckOn,
    /// <summary>The products stand at each other's pumps: the response has the wrong sign.</summary>
    Swapped,
    /// <summary>It strokes into standing water.</summary>
    WithoutCirculation,
}
