using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

/// <summary>What one filter or strainer says of a turnover that falls short.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">A bed or a strainer.</param>
/// <param name="Sign">What its pressure speaks for.</param>
/// <param name="Kilopascals">Pressure across it, kPa; 0 where none is known.</param>
/// <param name="Clean">The same when clean, kPa; 0 where none is known.</param>
public readonly record struct ShortfallSign(string Name, FilterKind Kind, FilterSign Sign, double Kilopascals, double Clean);

/// <summary>A turnover that falls short of its design, and what the filters say of it.</summary>
public static class TurnoverShortfall
{
    /// <summary>Part of the design flow that is enough: flow meters of a plant room are good to some per cent (common practice).</summary>
    public const double Enough = 0.9;

    /// <summary>Part of it that must have come back before it is said to be enough again.</summary>
    public const double Back = 0.95;

    /// <summary>What each filter and strainer speaks for.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="filters">Its filters as they are known, in its order.</param>
    /// <param name="last">The newest reading of a probe by its place in the plan.</param>
    /// <param name="flow">Circulation in m3/h.</param>
    /// <param name="now">A pressure of a probe that is silent by then tells nothing.</param>
    public static ImmutableArray<ShortfallSign> Signs(CircuitPlan plan, ImmutableArray<FilterState> filters, Func<int, LastReading> last, double flow, Instant now)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(last);
        var signs = ImmutableArray.CreateBuilder<ShortfallSign>(filters.Length);
        foreach (var filter in filters)
            if (plan.Filters.FirstOrDefault(f => f.Id == filter.Id) is { } known) signs.Add(Sign(plan, known, filter, last, flow, now));
        return signs.ToImmutable();
    }

    private static ShortfallSign Sign(CircuitPlan plan, FilterPlan known, FilterState filter, Func<int, LastReading> last, double flow, Instant now)
    {
        var nothing = new ShortfallSign(known.Name, known.Kind, FilterSign.Unknown, 0, 0);
        if (Pressure(plan, filter.Id, last, now) is not { } across || (filter.CleanKilopascals ?? known.CleanKilopascals) is not { } clean) return nothing;
        // A clean pressure of the plant file was read at its commissioning: at the design flow.
        var cleanFlow = filter.CleanKilopascals is null ? plan.DesignFlow : filter.CleanFlow ?? plan.DesignFlow;
        return nothing with { Sign = FilterSigns.Of(across, clean, flow, cleanFlow ?? 0), Kilopascals = across, Clean = clean };
    }

    private static double? Pressure(CircuitPlan plan, string filter, Func<int, LastReading> last, Instant now)
    {
        for (var i = 0; i < plan.Probes.Length; i++)
            if (plan.Probes[i].FilterId == filter && last(i) is { Quality: not Quality.NotReceived } read && now - read.MeasuredAt <= SignalLimits.SilentAfter(plan.Probes[i].Every)) return read.Value;
        return null;
    }

    /// <summary>The signs in words, the ones that speak loudest first; what throttles elsewhere is named when no filter does.</summary>
    public static ImmutableArray<Reason> Says(ImmutableArray<ShortfallSign> signs)
    {
        var says = signs.Where(s => s.Sign != FilterSign.Unknown).OrderBy(s => s.Sign).Select(Saying).ToImmutableArray().ToBuilder();
        foreach (var blind in signs.Where(s => s.Sign == FilterSign.Unknown)) says.Add(Reason.Of("turnover.sign_unknown", blind.Name));
        if (!signs.Any(s => s.Sign == FilterSign.Loaded)) says.Add(Reason.Of(signs.Any(s => s is { Kind: FilterKind.Strainer, Sign: FilterSign.AsClean }) ? "turnover.look_at_valves" : "turnover.look_at_strainer"));
        return says.ToImmutable();
    }

    private static Reason Saying(ShortfallSign sign) => Reason.Of(sign.Sign switch
    {
        FilterSign.Loaded => sign.Kind == FilterKind.Strainer ? "turnover.sign_strainer_full" : "turnover.sign_loaded",
        FilterSign.InPart => "turnover.sign_in_part",
        FilterSign.TakesNone => "turnover.sign_takes_none",
        _ => "turnover.sign_as_clean",
    }, sign.Name, sign.Kilopascals, sign.Clean, Measurand.FilterPressure.Unit());
}
