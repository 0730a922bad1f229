using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>What theory lets an ORP probe say, and its reading against other reference electrodes.</summary>
internal static class OrpApi
{
    private const double AssumedCelsius = 25;

    public static void MapOrp(this RouteGroupBuilder api) => api.MapGet("/probes/{id}/orp", (string id, PlantHost host) =>
            host.WithProbe(id)?.State is { } state && Array.FindIndex([.. state.Plan.Probes], p => p.Id == id && p.Measurand == Measurand.Orp) is >= 0 and var index
                ? Answers.Ok(View(state, index))
                : Answers.NotFound($"ORP probe {id}"))
        .Produces<OrpView>();

    internal static OrpView View(CircuitState state, int index)
    {
        var (plan, last) = (state.Plan.Probes[index], state.Probes[index].Last);
        var known = state.Plan.Pools.Where(p => plan.PoolId is null || p.Id == plan.PoolId)
            .Select(p => PresentWater.Of(state, p, state.Pools.First(s => s.Id == p.Id), Measurand.Temperature)).FirstOrDefault(t => t is not null);
        var water = Celsius.From(known?.Value ?? AssumedCelsius);
        var own = ReferenceElectrodeNames.Read(plan.ReferenceElectrode);
        Millivolts? reading = last.Quality.IsGood() && Quantity.TryFrom(last.Value, out Millivolts value) ? value : null;
        List<Reason> says = [OrpTheory.Caution];
        if (own == ReferenceElectrode.Unknown) says.Add(Reason.Of("orp.electrode_unknown"));
        var against = reading is { } shown ? Against(shown, own, water) : [];
        if (against.Exists(a => a.FromMemory)) says.Add(Reason.Of("orp.reference_from_memory"));
        return new(
            water.Degrees, known is null, OrpTheory.PerPh(water), OrpTheory.PerDoubling(water), reading?.Value, own, against, Reader.Words.Say(says));
    }

    private static List<OrpAgainst> Against(Millivolts reading, ReferenceElectrode own, Celsius water) =>
        [.. from other in Enum.GetValues<ReferenceElectrode>()
            where other is not ReferenceElectrode.Unknown && other != own
            let turned = ReferencePotential.Convert(reading, own, other, water)
            where turned.Reading.IsKnown
            select new OrpAgainst(other, turned.Reading.Value, 2 * turned.StandardUncertainty, !turned.Says.IsEmpty)];
}
