using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Units;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What is asked about the fresh water of a day.</summary>
/// <param name="Bathers">Bathers of the day; null asks nothing of them.</param>
/// <param name="LitresPerBather">Litres for each; null takes the usual figure.</param>
/// <param name="BackwashFlow">Backwash flow in m3/h; null for none.</param>
/// <param name="BackwashMinutes">Its length in minutes.</param>
internal readonly record struct FreshWaterAsked(int? Bathers, double? LitresPerBather, double? BackwashFlow, double? BackwashMinutes)
{
    public bool IsAsked => Bathers is not null || BackwashFlow is not null;
}

/// <summary>Turnover, filter rate, mixing and fresh water of a circuit, from the plant file and what a person asks.</summary>
internal static class CirculationViews
{
    private static readonly int[] Turnovers = [1, 2, 3, 4, 6];

    public static CirculationView Of(CircuitPlan circuit, FreshWaterAsked asked, UnitSystem units, WashWaterView? washes = null)
    {
        var (say, amounts, says) = (Reader.Words.In(units), new AmountWords(units, Reader.Here.Language), new List<Reason>());
        var volume = circuit.Pools.Sum(p => p.VolumeCubicMetres) + (circuit.BalanceTankCubicMetres ?? 0);
        if (circuit.TurnoverHours is null) says.Add(Reason.Of("circulation.turnover_missing"));
        double? Known(Figure figure)
        {
            if (figure.Why is { } why && !says.Contains(why)) says.Add(why);
            return figure.OrNull;
        }

        var (hours, area) = (circuit.TurnoverHours, circuit.FilterArea);
        if (area is null) says.Add(Reason.Of("circulation.filter_area_missing"));
        var flow = hours is { } h ? Known(Turnover.Flow(circuit.PoolCubicMetres, h)) : null;
        var rate = flow is { } f && area is { } a ? Known(FilterRate.Of(f, a)) : null;
        return new(
            amounts.Water(volume), hours, flow is { } m3 ? amounts.Flow(m3) : null, rate is { } speed ? amounts.FilterRate(speed) : null, FilterRate.Kind(rate ?? 0),
            hours is { } r ? Known(MixingTime.ToRetest(r)) : null, hours is { } e ? Known(MixingTime.UntilEven(e)) : null,
            [.. Turnovers.Select(n => new PassedView(n, Turnover.PartPassed(n).Value))], asked.IsAsked ? Fresh(asked, volume, amounts, Known) : null, washes, say.Say(says));
    }

    private static FreshWaterView? Fresh(FreshWaterAsked asked, double volume, AmountWords amounts, Func<Figure, double?> known)
    {
        var bathers = known(FreshWater.ForBathers(asked.Bathers ?? 0, asked.LitresPerBather ?? FreshWater.LitresPerBather));
        var backwash = asked.BackwashFlow is { } flow ? known(FreshWater.ByBackwash(flow, asked.BackwashMinutes ?? 0)) : 0;
        if (bathers is not { } forBathers || backwash is not { } byBackwash) return null;
        var total = forBathers + byBackwash;
        // A matter that the fresh water holds none of falls by this part.
        return known(FreshWater.Dilutes(1, 0, total, volume)) is { } left
            ? new(amounts.Water(forBathers), amounts.Water(byBackwash), amounts.Water(total), 1 - left)
            : null;
    }
}
