using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a manual test says of a hold, before any table is asked. A value that cannot be relied on is left out, and <see cref="WhyNot"/> says why.</summary>
/// <param name="Id">The check.</param>
/// <param name="At">When the sample was taken.</param>
/// <param name="LowestPoint">Taken at the pool's lowest point or outlet: only these count.</param>
/// <param name="Place">The place in words; tests at several make sure of the residual through the pool.</param>
/// <param name="Residual">Free chlorine in mg/L, diluted where the method's range needs it; null when it cannot be relied on.</param>
/// <param name="Ph">pH by meter; null when it cannot be relied on.</param>
/// <param name="Celsius">Water temperature by thermometer; null when it was not taken.</param>
/// <param name="WhyNot">What keeps a value from being relied on.</param>
public sealed record HoldTest(Guid Id, Instant At, bool LowestPoint, string Place, double? Residual, double? Ph, double? Celsius, ImmutableArray<Reason> WhyNot)
{
    /// <summary>The pool it was taken in; null for that of the incident itself.</summary>
    public string? PoolId { get; init; }

    /// <summary>The place as it is told from others: the lowest point is one, however it is called.</summary>
    internal string Where => LowestPoint ? "" : "at " + Place.Trim().ToUpperInvariant();
}

/// <summary>A test as the clock took it.</summary>
/// <param name="Test">The test.</param>
/// <param name="Counts">It stands at an end of time that is counted.</param>
/// <param name="Gained">What the time since the counted test before it added, in the unit of the hold.</param>
/// <param name="Why">Why it does not count, or adds nothing.</param>
public sealed record JudgedTest(HoldTest Test, bool Counts, double Gained, ImmutableArray<Reason> Why);
