using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Stock;

/// <summary>What is known of the tank of a pump.</summary>
public sealed record TankState
{
    /// <summary>The pump's id: the pump is the tank.</summary>
    public required string PumpId { get; init; }

    /// <summary>How its level goes, where one is measured.</summary>
    public TankTrail Trail { get; init; }

    /// <summary>Litres by the book, where no level is measured: what was put in less what the pump delivered by its running time. Null before somebody filled or dipped it.</summary>
    public double? Book { get; init; }

    /// <summary>How strong its content is; null while no label was written down.</summary>
    public TankMix? Mix { get; init; }

    /// <summary>What it was before the newest fill, so that a correction of that one can begin anew; null before the first.</summary>
    public MixBefore? Before { get; init; }

    /// <summary>A product in it that does not belong there; null while none is known of.</summary>
    public WrongFill? Wrong { get; init; }

    /// <summary>A rise of the level that nobody has written down as a fill; null while there is none.</summary>
    public UnknownFill? Unknown { get; init; }

    /// <summary>What was used today.</summary>
    public DayUse Today { get; init; }

    /// <summary>What was used on the days before, oldest first.</summary>
    public ImmutableArray<DayUse> Days { get; init; } = [];
}

/// <summary>A product in the tank of another.</summary>
/// <param name="MoveId">The row that says so.</param>
/// <param name="Product">Name of what went in.</param>
/// <param name="Cause">What it comes to.</param>
public sealed record WrongFill(Guid MoveId, string Product, Reasons.Reason Cause);

/// <summary>A rise of a level.</summary>
/// <param name="From">When it began.</param>
/// <param name="At">When it was over.</param>
/// <param name="Percent">By how much of the tank.</param>
public sealed record UnknownFill(Instant From, Instant At, double Percent)
{
    // People write down what they have done when the drum is away, and guess the time (our choice: within the same half shift).
    private static readonly TimeSpan About = TimeSpan.FromHours(3);

    /// <summary>A row is about it when it was done within three hours of it.</summary>
    public bool IsSaidBy(StockMove move) => move.HappenedAt >= From - About && move.HappenedAt <= At + About;
}

/// <summary>The content of a tank before a fill.</summary>
/// <param name="MoveId">The fill.</param>
/// <param name="Mix">How strong it was.</param>
/// <param name="Litres">How much was left; null when not known.</param>
public sealed record MixBefore(Guid MoveId, TankMix? Mix, double? Litres);
