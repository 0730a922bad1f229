using System.Net;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>A limit pack is confirmed and taken back row by row by people, through the public interface.</summary>
public sealed class LimitTests
{
    private const string Row = "ph-chlorine-disinfectants";
    private const string Limits = "/api/v1/circuits/hall/limits";

    private static readonly string Plant = "limit_pack: who-2006\npeople:\n  - { id: b, name: I. Brandvold, role: engineer }\n  - { id: c, name: R. Castellan, role: operator }\n" + WholeServer.Plant.ReplaceLineEndings("\n");

    [Fact]
    public async Task A_row_that_an_engineer_confirms_is_watched_until_it_is_taken_back()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var before = await server.GetAsync<CircuitLimitsView>(Limits);
        Assert.Equal(["I. Brandvold"], before.MayConfirm);
        Assert.Contains(Row, before.Pools[0].Unconfirmed);
        Assert.Equal((7.6, ""), Upper(before));

        var after = await WholeServer.ReadAsync<CircuitLimitsView>(await ConfirmAsync(server, Asked(before)));
        Assert.Equal(("I. Brandvold", "the guidelines, 5.10"), (Of(after).Confirmed!.By, Of(after).Confirmed!.Document));
        Assert.DoesNotContain(Row, after.Pools[0].Unconfirmed);
        // The plant's own limit is the tighter of the two and stays; no other row was confirmed by it.
        Assert.Equal((7.6, ""), Upper(after));
        Assert.Single(after.Rows, r => r.Confirmed is not null);

        using var unsaid = await server.PostAsync($"{Limits}/{Row}/revoke", new RevokeRow("I. Brandvold", " "));
        Assert.Equal(HttpStatusCode.BadRequest, unsaid.StatusCode);
        var back = await WholeServer.ReadAsync<CircuitLimitsView>(await server.PostAsync($"{Limits}/{Row}/revoke", new RevokeRow("I. Brandvold", "an older edition lay on the table")));
        Assert.Null(Of(back).Confirmed);
        Assert.Contains(Row, back.Pools[0].Unconfirmed);
    }

    [Fact]
    public async Task What_was_not_on_the_screen_cannot_be_confirmed()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var asked = Asked(await server.GetAsync<CircuitLimitsView>(Limits));
        await RefusedAsync(server, asked with { Digest = "of an older figure" }, HttpStatusCode.Conflict, "digest");
        await RefusedAsync(server, asked with { By = "R. Castellan" }, HttpStatusCode.BadRequest, "by");
        await RefusedAsync(server, asked with { By = " " }, HttpStatusCode.BadRequest, "by");
        await RefusedAsync(server, asked with { Document = "" }, HttpStatusCode.BadRequest, "document");
        await RefusedAsync(server, asked with { Applies = false }, HttpStatusCode.BadRequest, "applies");
        Assert.All((await server.GetAsync<CircuitLimitsView>(Limits)).Rows, r => Assert.Null(r.Confirmed));
    }

    [Fact]
    public async Task A_confirmed_row_sets_the_limit_where_the_plant_has_none_and_outlives_a_restart()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var row = (await server.GetAsync<CircuitLimitsView>(Limits)).Rows.Single(r => r.Id == "cya");
        await WholeServer.ReadAsync<CircuitLimitsView>(await server.PostAsync($"{Limits}/cya/confirm", new ConfirmRow(row.Digest, "I. Brandvold", "the guidelines, 5.10", null)));
        await using var again = await server.RestartAsync();
        var bound = (await again.GetAsync<CircuitLimitsView>(Limits)).Pools[0].Bounds.Single(b => b.Quantity == PackQuantity.CyanuricAcid);
        Assert.Equal((100, "cya"), (bound.High, bound.HighFrom));
    }

    [Fact]
    public async Task The_plant_of_a_hall_without_an_ORP_probe_comes_to_limits_in_force_when_every_row_it_waits_for_is_confirmed()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var view = await server.GetAsync<CircuitLimitsView>(Limits);
        foreach (var row in view.Rows.Where(r => view.Pools[0].Unconfirmed.Contains(r.Id)))
            view = await WholeServer.ReadAsync<CircuitLimitsView>(await server.PostAsync($"{Limits}/{row.Id}/confirm", new ConfirmRow(row.Digest, "I. Brandvold", "the guidelines, 5.10", null)));
        Assert.Equal(LimitsWord.InForce, view.Pools[0].Word);
        Assert.Equal(["orp-ag-agcl-reference", "orp-calomel-reference"], view.Pools[0].NotMeasured);
        Assert.All(view.Rows.Where(r => r.Quantity == PackQuantity.Orp), r => Assert.False(Assert.Single(r.Pools).Measured));
    }

    private static async Task RefusedAsync(WholeServer server, ConfirmRow asked, HttpStatusCode status, string field)
    {
        using var answer = await ConfirmAsync(server, asked);
        Assert.Equal(status, answer.StatusCode);
        Assert.Contains($"\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    private static ConfirmRow Asked(CircuitLimitsView view) => new(Of(view).Digest, "I. Brandvold", "the guidelines, 5.10", null);

    private static PackRowView Of(CircuitLimitsView view) => view.Rows.Single(r => r.Id == Row);

    private static (double? High, string From) Upper(CircuitLimitsView view)
    {
        var bound = view.Pools[0].Bounds.Single(b => b is { Quantity: PackQuantity.Ph, Grade: RowGrade.Operating });
        return (bound.High, bound.HighFrom);
    }

    private static Task<HttpResponseMessage> ConfirmAsync(WholeServer server, ConfirmRow asked) => server.PostAsync($"{Limits}/{Row}/confirm", asked);
}
