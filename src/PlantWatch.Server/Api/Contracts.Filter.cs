using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

//      POST /api/v1/filters/{id}/washed   WashRequest -> WashView: a person washed a filter

/// <summary>A filter was washed.</summary>
/// <param name="Id">Id of the wash, UUIDv7: sending it again is harmless.</param>
/// <param name="By">Who washed it.</param>
/// <param name="Circuit">The circuit, where two have a filter of the same id.</param>
public sealed record WashRequest(Guid Id, string? By, string? Circuit = null);

/// <summary>A filter after its wash.</summary>
/// <param name="FilterId">The filter.</param>
/// <param name="WashedAt">The newest wash.</param>
/// <param name="WashedBy">Who washed it.</param>
/// <param name="CleanKilopascals">Clean pressure that holds, kPa; null while none is known.</param>
public sealed record WashView(string FilterId, Instant WashedAt, string? WashedBy, double? CleanKilopascals);
