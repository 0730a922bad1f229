namespace PlantWatch.Core.Maintenance;

/// <summary>What the plant's own signals say of a job that was done.</summary>
public enum JobEffect
{
    /// <summary>Nothing yet: it is not done, or was done a short while ago.</summary>
    Unknown = 0,
    /// <summary>What spoke of the fault has been quiet for a day.</summary>
    Helped,
    /// <summary>It still speaks after a day, or came back.</summary>
    DidNotHelp,
    /// <summary>No signal can say: none spoke of the fault, or none could be heard since.</summary>
    CannotTell,
}
