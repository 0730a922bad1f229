using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What is known of one filter.</summary>
/// <param name="Id">The filter's id.</param>
/// <param name="Since">Since when it is known here: a wash before that is nobody's word.</param>
/// <param name="WashedAt">The newest wash; never when none was noted.</param>
/// <param name="WashId">Id of that wash.</param>
/// <param name="WashedBy">Who washed it.</param>
/// <param name="CleanKilopascals">Pressure right after a wash, kPa; null before the first.</param>
/// <param name="Sum">Sum of the pressures since the wash, while clean is being taken.</param>
/// <param name="Count">How many these are; 0 once it is taken.</param>
/// <param name="Backwash">The newest time in which it was backwashed.</param>
/// <param name="WashCubicMetres">Water that the newest wash drained, m3; null when nobody said.</param>
/// <param name="FlowSum">Sum of the circulation beside the pressures that are being taken, m3/h.</param>
/// <param name="CleanFlow">Circulation at which the clean pressure was taken, m3/h; null where none was read.</param>
/// <param name="FlowCount">Beside how many of them it was known.</param>
public sealed record FilterState(
    string Id, Instant Since, Instant WashedAt = default, Guid WashId = default, string? WashedBy = null, double? CleanKilopascals = null, double Sum = 0, int Count = 0,
    BackwashWindow Backwash = default, double? WashCubicMetres = null, double FlowSum = 0, double? CleanFlow = null, int FlowCount = 0)
{
    /// <summary>When its backwashes before that silenced, as far as it matters still.</summary>
    public ImmutableArray<QuietSpan> Quiet { get; init; } = [];
}
