using System.Net;
using System.Text.Json;
using PlantWatch.Core.Chemistry;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>What an ORP probe may say, through the public interface.</summary>
public sealed class OrpTests
{
    private static readonly string WithOrp = WholeServer.Plant.Replace(
        "    probes:", "    probes:\n      - { id: orp, name: ORP, pool: main, measurand: orp, origin: raw, topic: hall/orp, format: number, range: [0, 1000], every_seconds: 1, reference_electrode: Ag/AgCl 3 M }",
        StringComparison.Ordinal);

    [Fact]
    public async Task An_orp_probe_is_told_the_slopes_of_theory_and_that_no_concentration_comes_of_them()
    {
        await using var server = await WholeServer.StartAsync(plant: WithOrp);
        var view = await server.GetAsync<OrpView>("/api/v1/probes/orp/orp");
        // CL-41 and CL-42 at 25 degC, which is taken while nothing is known of the water.
        Assert.True(view.TemperatureIsAssumed);
        Assert.Equal((-29.58, 8.90), (Math.Round(view.PerPh, 2), Math.Round(view.PerDoubling, 2)));
        Assert.Equal(ReferenceElectrode.SilverChloride3M, view.Own);
        Assert.Contains("No mg/L", view.Sayings[0].Text, StringComparison.Ordinal);
        // Nothing was read yet, so nothing is turned.
        Assert.Empty(view.Against);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync(new Uri("/api/v1/probes/ph/orp", UriKind.Relative))).StatusCode);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Its_reading_is_turned_to_other_electrodes_at_the_temperature_of_the_water()
    {
        await using var server = await WholeServer.StartAsync(plant: WithOrp);
        await server.PublishLinesAsync("hall/orp", Enumerable.Repeat("650", 5));
        var view = await server.GetAsync<OrpView>("/api/v1/probes/orp/orp");
        Assert.Equal(650, view.Reading);
        // PR-27 at 25 degC: 857 against hydrogen, 613 against calomel; published there.
        Assert.Equal(857, view.Against.Single(a => a.Electrode == ReferenceElectrode.StandardHydrogen).Millivolts, 1.0);
        Assert.Equal(613, view.Against.Single(a => a.Electrode == ReferenceElectrode.Calomel).Millivolts, 1.0);
        Assert.All(view.Against, a => Assert.False(a.FromMemory));
    }

    [Fact]
    public void Electrodes_travel_as_words() => Assert.Equal(
        ["unknown", "standard_hydrogen", "silver_chloride3_m", "silver_chloride3_m5", "silver_chloride_saturated", "calomel"],
        Enum.GetValues<ReferenceElectrode>().Select(e => JsonNamingPolicy.SnakeCaseLower.ConvertName(e.ToString())));
}
