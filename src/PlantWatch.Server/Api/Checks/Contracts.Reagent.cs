using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/reagents               ReagentView[]: what the plant tests with, and how long it is good
//      POST /api/v1/reagents/{id}/opened   LotRequest -> ReagentView: a person opened a lot

/// <summary>How a reagent stands.</summary>
public enum ReagentWord
{
    /// <summary>Nobody has noted a lot.</summary>
    NotNoted = 0,
    /// <summary>In date.</summary>
    InDate,
    /// <summary>In date for two more weeks at most: another is to be ordered.</summary>
    Order,
    /// <summary>Out of date.</summary>
    OutOfDate,
}

/// <summary>A lot was opened.</summary>
/// <param name="Id">Id of the note, UUIDv7: sending it again is harmless.</param>
/// <param name="Lot">Number as printed.</param>
/// <param name="LastDay">The last day on which it may be used; of a printed month its last day.</param>
/// <param name="OpenedAt">When it was opened.</param>
/// <param name="By">Who notes it.</param>
public sealed record LotRequest(Guid Id, string? Lot, DateOnly LastDay, Instant OpenedAt, string? By);

/// <summary>A reagent.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Tests">What is tested with it.</param>
/// <param name="Method">The method it is for.</param>
/// <param name="DaysAfterOpening">How long it is good once opened; null when only the printed day counts.</param>
/// <param name="Word">How it stands.</param>
/// <param name="Lot">The lot in use; null when none was noted.</param>
/// <param name="LastDay">Its last day as printed.</param>
/// <param name="OpenedAt">When it was opened.</param>
/// <param name="NotedBy">Who noted it.</param>
/// <param name="GoodUntil">The moment at which it is out of date.</param>
/// <param name="Why">Why it is out of date; null while it is not.</param>
public sealed record ReagentView(
    string Id, string Name, IReadOnlyList<Measurand> Tests, ReagentUse Method, double? DaysAfterOpening, ReagentWord Word, string? Lot, DateOnly? LastDay, Instant OpenedAt, string? NotedBy, Instant GoodUntil,
    Said? Why);
