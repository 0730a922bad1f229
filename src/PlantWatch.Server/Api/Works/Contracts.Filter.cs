using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

//      GET  /api/v1/filters                     FiltersView[]: circulation and filters of every circuit that has any
//      POST /api/v1/filters/{id}/washed         WashRequest -> WashView: a person washed a filter
//      POST /api/v1/filters/{id}/backwash       WashRequest -> FilterView: a person begins to backwash it
//      POST /api/v1/filters/{id}/backwash/end   WashRequest -> FilterView: the backwash of that id ended without a wash

/// <summary>A filter was washed, or a backwash of it begins or is over.</summary>
/// <param name="Id">Id of the wash or of the backwash, UUIDv7: sending it again is harmless.</param>
/// <param name="By">Who washed it.</param>
/// <param name="Circuit">The circuit, where two have a filter of the same id.</param>
/// <param name="CubicMetres">Of a wash: water that it drained, rinse included, m3; null leaves the plant file's usual figure.</param>
/// <param name="Why">Why a backwash begins so soon after the last one.</param>
public sealed record WashRequest(Guid Id, string? By, string? Circuit = null, double? CubicMetres = null, string? Why = null);

/// <summary>A filter after its wash.</summary>
/// <param name="FilterId">The filter.</param>
/// <param name="WashedAt">The newest wash.</param>
/// <param name="WashedBy">Who washed it.</param>
/// <param name="CleanKilopascals">Clean pressure that holds, kPa; null while none is known.</param>
public sealed record WashView(string FilterId, Instant WashedAt, string? WashedBy, double? CleanKilopascals);

/// <summary>The circulation of a circuit and its filters.</summary>
/// <param name="CircuitId">The circuit.</param>
/// <param name="Name">What people call it.</param>
/// <param name="FlowCubicMetresPerHour">Newest circulation, m3/h; null where none was read.</param>
/// <param name="FlowAt">When that was read.</param>
/// <param name="LowCubicMetresPerHour">Below this it is low, m3/h; null where nothing is known of it.</param>
/// <param name="Filters">Its filters and strainers.</param>
/// <param name="Turnover">The turnover of the last hour against its design.</param>
/// <param name="Says">What the filters say of a turnover that falls short, and of a rate that is too high.</param>
public sealed record FiltersView(
    string CircuitId, string Name, double? FlowCubicMetresPerHour, Instant FlowAt, double? LowCubicMetresPerHour, IReadOnlyList<FilterView> Filters, TurnoverView Turnover, IReadOnlyList<Said> Says);

/// <summary>The turnover as the meter shows it.</summary>
/// <param name="MeanCubicMetresPerHour">Mean circulation of the last whole hour, m3/h; null while there is none.</param>
/// <param name="Hours">How long a turnover takes at that, h.</param>
/// <param name="DesignCubicMetresPerHour">What the design turnover asks for, m3/h; null when the plant file states none.</param>
/// <param name="DesignHours">The design turnover, h.</param>
/// <param name="FallsShort">It falls short: the mean is under nine tenths of the design.</param>
/// <param name="Rate">Through the beds at that mean, m/h; null where an area or the mean is not known.</param>
/// <param name="RateKind">What kind of filtration that is.</param>
public sealed record TurnoverView(double? MeanCubicMetresPerHour, double? Hours, double? DesignCubicMetresPerHour, double? DesignHours, bool FallsShort, double? Rate, FilterRateKind RateKind);

/// <summary>A filter now.</summary>
/// <param name="Id">Its id in its circuit.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kilopascals">Newest pressure across it, kPa; null where none was read.</param>
/// <param name="ReadAt">When that was read.</param>
/// <param name="CleanKilopascals">Clean pressure that holds, kPa; null while none is known.</param>
/// <param name="DueRiseKilopascals">Rise over clean at which a wash is due, kPa.</param>
/// <param name="WashedAt">The newest wash; never when none was noted.</param>
/// <param name="WashedBy">Who washed it.</param>
/// <param name="EveryDays">Longest time between two washes; null when none is set.</param>
/// <param name="Due">A wash is due, by pressure or by time: its alarm stands.</param>
/// <param name="Backwash">The backwash that is under way; null when none is.</param>
/// <param name="Kind">A bed, or a strainer that is emptied by hand.</param>
/// <param name="UsualWashM3">Water that a wash usually drains by the plant file, m3.</param>
/// <param name="WashM3">Water that the newest wash drained, m3; null when nobody said.</param>
public sealed record FilterView(
    string Id, string Name, double? Kilopascals, Instant ReadAt, double? CleanKilopascals, double DueRiseKilopascals, Instant WashedAt, string? WashedBy, double? EveryDays, bool Due,
    BackwashView? Backwash, FilterKind Kind, double? UsualWashM3, double? WashM3)
{
    /// <summary>Whoever begins another backwash now has to say why: the last one is not long over, and the pressure does not ask for it.</summary>
    public bool AgainNeedsWhy { get; init; }
}

/// <summary>A backwash that is under way.</summary>
/// <param name="Id">Its id: whoever ends it names it.</param>
/// <param name="By">Who began it.</param>
/// <param name="Since">When.</param>
/// <param name="Until">When it ends by itself.</param>
/// <param name="QuietUntil">Until when flow, pressure and sample cells call nobody; the same as its beginning where the filter's quiet is used up.</param>
public sealed record BackwashView(Guid Id, string By, Instant Since, Instant Until, Instant QuietUntil);
