namespace PlantWatch.Core.Plans;

/// <summary>Priority by severity and time to respond. The default is a note: no defined response, no alarm.</summary>
public enum Priority
{
    /// <summary>Worth knowing, nothing to do now.</summary>
    Note = 0,
    /// <summary>Act within the shift.</summary>
    Low,
    /// <summary>Act within the hour.</summary>
    Medium,
    /// <summary>Act now.</summary>
    High,
    /// <summary>People may be harmed: act now, bathers out.</summary>
    Critical,
}
