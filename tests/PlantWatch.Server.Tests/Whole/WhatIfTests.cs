using System.Net;
using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The balance of a pool and what would become of it, through the public interface.</summary>
public sealed class WhatIfTests
{
    private const string Path = "/api/v1/pools/main/what-if";
    private static readonly WhatIfRequest Nothing = new(null, null, null, null);

    [PeerFact("mosquitto_pub")]
    public async Task Nothing_changed_is_the_present_water()
    {
        await using var server = await StartAsync();
        var view = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, Nothing));
        Assert.Equal(view.Now!.Figures.SaturationIndex!.Value, view.After!.Figures.SaturationIndex!.Value, 1e-6);
        Assert.Equal(7.4, view.Now.Figures.Ph, 1e-9);
        Assert.Equal("balanced", view.Now.Word);
        Assert.True(view.Inputs.Single(i => i.Measurand == Measurand.Ph).Live);
        Assert.Equal(view.AgainstPh.At.Count, view.AgainstPh.Hocl.Count);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_higher_pH_takes_hypochlorous_acid_away_and_scales_and_nothing_is_recorded()
    {
        await using var server = await StartAsync();
        var before = await server.SumsAsync();
        var view = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, Nothing with { Water = new(8.2, 28, 120, 300, 1000, 0, 1.5) }));
        Assert.True(view.After!.Figures.HypochlorousAcid < view.Now!.Figures.HypochlorousAcid / 2);
        Assert.Equal("scale_forming", view.After.Word);
        Assert.Equal(before.Received, (await server.SumsAsync()).Received);
        Assert.Single(await server.GetAsync<List<CheckAnswer>>("/api/v1/checks?pool=main"));
    }

    [PeerFact("mosquitto_pub")]
    public async Task What_lies_outside_is_named_field_by_field_with_its_range()
    {
        await using var server = await StartAsync();
        var answer = await server.PostAsync(Path, Nothing with { Water = new(14, 28, -5, 300, 1000, 0, 1.5), VolumeM3 = 0, Doses = [new("no such", -1)], Curve = "no such" });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var said = await answer.Content.ReadAsStringAsync();
        foreach (var field in (string[])["water.ph", "water.totalAlkalinity", "volumeM3", "doses[0].product", "doses[0].kilograms", "curve"])
            Assert.Contains($"\"{field}\"", said, StringComparison.Ordinal);
        Assert.Contains("From 4.5 to 10.5", said, StringComparison.Ordinal);
    }

    [PeerFact("mosquitto_pub")]
    public async Task What_cannot_be_read_is_refused_and_never_a_failure_of_ours()
    {
        await using var server = await StartAsync();
        foreach (var body in (string[])
            ["{", "null", "{\"doses\":[null]}", "{\"water\":{\"ph\":\"seven\"}}", "{\"water\":{\"ph\":1e999,\"temperature\":28,\"totalAlkalinity\":100}}", "{\"doses\":[{\"product\":null,\"kilograms\":1e308}]}"])
        {
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            Assert.Equal((body, HttpStatusCode.BadRequest), (body, (await server.Http.PostAsync(Path, content)).StatusCode));
        }
    }

    [PeerFact("mosquitto_pub")]
    public async Task Amounts_and_ranges_are_said_in_the_units_of_the_plant()
    {
        await using var server = await StartAsync(WholeServer.Plant.Replace("time_zone: Europe/London", "time_zone: Europe/London\n  units: us", StringComparison.Ordinal));
        var view = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, Nothing with { Doses = [new("acid", 5)], Curve = "acid" }));
        var amount = Assert.Single(view.Doses);
        Assert.Contains("lb", amount.Mass.Text, StringComparison.Ordinal);
        Assert.Equal("5\u00a0kg", amount.Mass.InSi);
        Assert.Contains("US gal", amount.Volume!.Text, StringComparison.Ordinal);
        Assert.Contains("US gal", view.Volume.Text, StringComparison.Ordinal);
        Assert.True(view.After!.Figures.Ph < view.Now!.Figures.Ph);
        Assert.Equal(view.After.Figures.Ph, At(view.AgainstDose, 5), 0.01);
        Assert.Contains(view.Remarks, r => r.Code == "what_if.volume_unconfirmed");
        var refusal = await server.PostAsync(Path, Nothing with { Water = new(7.4, 80, 120, 300, 1000, 0, 1.5) });
        Assert.Contains("\u00b0F", await refusal.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    /// <summary>Reference pack, section 4: hypochlorite raises pH at once, and after the chlorine is consumed the net is only its excess caustic (computed).</summary>
    [PeerFact("mosquitto_pub")]
    public async Task Hypochlorite_raises_pH_and_chlorine_and_most_of_the_pH_goes_with_the_chlorine()
    {
        await using var server = await StartAsync();
        var wish = Nothing with { Doses = [new("sodium_hypochlorite", 30)] };
        var fresh = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, wish));
        var spent = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, wish with { ChlorineSpent = true }));
        Assert.True(fresh.After!.Figures.FreeChlorine > fresh.Now!.Figures.FreeChlorine + 5);
        Assert.Equal(spent.Now!.Figures.FreeChlorine!.Value, spent.After!.Figures.FreeChlorine!.Value, 1e-6);
        var (rise, left) = (fresh.After.Figures.Ph - fresh.Now.Figures.Ph, spent.After.Figures.Ph - spent.Now.Figures.Ph);
        Assert.True(rise > 0.05);
        Assert.InRange(left, 0, rise / 3);
    }

    [PeerFact("mosquitto_pub")]
    public async Task More_dechlorinator_than_there_is_chlorine_is_named_and_no_failure()
    {
        await using var server = await StartAsync();
        var view = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, Nothing with { Doses = [new("sodium_thiosulfate", 100)], Curve = "sodium_thiosulfate" }));
        Assert.Null(view.After);
        Assert.Contains(view.Remarks, r => r.Code == "what_if.more_than_there_is");
        Assert.NotEmpty(view.AgainstDose.At);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_water_that_cannot_be_is_explained()
    {
        await using var server = await StartAsync();
        var view = await WholeServer.ReadAsync<WhatIfView>(await server.PostAsync(Path, Nothing with { Water = new(9.5, 28, 5, 300, 1000, 300, 1.5) }));
        Assert.Null(view.After);
        Assert.Empty(view.AgainstPh.At.Where((_, i) => view.AgainstPh.Ph[i] > 9));
        Assert.NotEmpty(view.Remarks);
    }

    [PeerFact("mosquitto_pub")]
    public async Task The_balance_says_what_is_missing_and_gives_chlorine_all_the_same()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 5));
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(
            WholeServer.Now, new TestResult(Measurand.FreeChlorine, 1.5, TestMethod.Photometer), new TestResult(Measurand.Temperature, 28, TestMethod.Meter)));
        var balance = await server.GetAsync<BalanceView>("/api/v1/pools/main/balance");
        Assert.Null(balance.Index);
        Assert.Contains(balance.Missing, m => m.Text.Contains("total alkalinity", StringComparison.Ordinal));
        Assert.InRange(balance.Chlorine!.Hocl!.Value, 0.5, 1.2);
        Assert.Equal(HttpStatusCode.NotFound, (await server.Http.GetAsync("/api/v1/pools/nowhere/balance")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync("/api/v1/pools/nowhere/what-if", Nothing)).StatusCode);
    }

    private static async Task<WholeServer> StartAsync(string plant = WholeServer.Plant)
    {
        var server = await WholeServer.StartAsync(plant: plant);
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.40", 5));
        var check = WholeServer.Check(
            WholeServer.Now, new TestResult(Measurand.Temperature, 28, TestMethod.Meter), new TestResult(Measurand.TotalAlkalinity, 120, TestMethod.TabletCount),
            new TestResult(Measurand.CalciumHardness, 300, TestMethod.Photometer), new TestResult(Measurand.DissolvedSolids, 1000, TestMethod.Meter),
            new TestResult(Measurand.FreeChlorine, 1.5, TestMethod.Photometer));
        Assert.True((await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", check)).IsSuccessStatusCode);
        return server;
    }

    // By straight line between the points of a curve.
    private static double At(CurveView curve, double x)
    {
        var i = curve.At.ToList().FindIndex(v => v >= x);
        var part = (x - curve.At[i - 1]) / (curve.At[i] - curve.At[i - 1]);
        return curve.Ph[i - 1] + (part * (curve.Ph[i] - curve.Ph[i - 1]));
    }
}
