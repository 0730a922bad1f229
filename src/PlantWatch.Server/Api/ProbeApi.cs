using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>A probe with its past: what the checks said of it, its calibrations and what is advised.</summary>
internal static class ProbeApi
{
    public static void MapProbes(this RouteGroupBuilder api) =>
        api.MapGet("/probes/{id}", ProbeAsync).Produces<ProbeHistory>();

    private static async Task<IResult> ProbeAsync(string id, PlantHost host, LivePublisher live, IRecordStore store, CancellationToken cancellation)
    {
        if (host.WithProbe(id) is not { } worker) return Answers.NotFound($"probe {id}");
        var state = worker.State;
        var index = state.Plan.Probes.Select(p => p.Id).ToList().IndexOf(id);
        // A reload may have taken the probe away between two looks.
        if (index < 0 || live.View(worker).Probes.FirstOrDefault(p => p.Id == id) is not { } now) return Answers.NotFound($"probe {id}");
        var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["judgement"], id), cancellation);
        var judgements = rows.Select(r => JudgementViews.Of(((JudgementEntry)r.Body).Judgement, r.HappenedAt)).ToArray();
        var advice = CalibrationOffers.For(state.Plan.Probes[index], state.Probes[index].Trust, [.. state.Calibrations.Where(c => c.ProbeId == id)], state.Watermark);
        var why = Wording.English.Say(advice.Why);
        var offer = advice.Offer is { } o ? new OfferedCalibration(o.Kind, o.Slope, o.Offset, o.Checks, why) : null;
        return Answers.Ok(new ProbeHistory(SiteApi.Probe(state.Plan.Probes[index]), now, judgements, CalibrationApi.Of(state, id), offer, why));
    }
}
