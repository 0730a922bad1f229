using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant.Opening;

/// <summary>How one condition of opening stands. The default is that nobody knows, which opens nothing.</summary>
public enum GateWord
{
    /// <summary>It cannot be said: as good as not passed.</summary>
    NotKnown = 0,
    /// <summary>It speaks against opening.</summary>
    NotPassed,
    /// <summary>It is met.</summary>
    Passed,
}

/// <summary>One condition of opening a pool.</summary>
/// <param name="Code">What is asked, such as <c>test.ph</c>, <c>bottom</c> or <c>flow</c>.</param>
/// <param name="Word">How it stands.</param>
/// <param name="Reason">Why, with figures.</param>
public sealed record GateLine(string Code, GateWord Word, Reason Reason);
