namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>How a value shows itself.</summary>
internal enum Shown
{
    /// <summary>Not at all.</summary>
    Nothing = 0,
    /// <summary>As a figure.</summary>
    Figure,
    /// <summary>Only that it is no higher: the pump stands.</summary>
    NoHigher,
    /// <summary>Only that it is no lower: the pump runs flat out.</summary>
    NoLower,
}

/// <summary>What five minutes show of a loop.</summary>
/// <param name="Shown">How the value shows.</param>
/// <param name="Value">The figure or the bound.</param>
/// <param name="Variance">Its variance.</param>
/// <param name="Orp">Redox potential less what pH makes of it, in mV; null when there is none or it says nothing of this loop.</param>
/// <param name="OrpVariance">Its variance.</param>
internal readonly record struct LoopSight(Shown Shown, double Value, double Variance, double? Orp, double OrpVariance);
