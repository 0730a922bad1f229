using System.Net;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Filters through the public interface: how they stand, a backwash that is said, a wash that is noted.</summary>
public sealed class FilterTests
{
    private static readonly string Plant = WholeServer.Plant
        .Replace("    name: Hall\n", "    name: Hall\n    turnover_hours: 4\n    filters:\n      - { id: f1, name: Filter 1, clean_kpa: 30, backwash_every_days: 7 }\n      - { id: s1, name: Strainer, kind: strainer }\n", StringComparison.Ordinal)
        .Replace("    pumps:\n", """
                  - { id: round, name: Circulation, measurand: circulation_flow, topic: hall/round, format: number, range: [-5, 300], every_seconds: 5 }
                  - { id: across, name: Pressure, measurand: filter_pressure, filter: f1, topic: hall/across, format: number, range: [-20, 300], every_seconds: 5 }
                pumps:

            """, StringComparison.Ordinal);

    [Fact]
    public async Task A_backwash_is_begun_shown_and_ended_by_the_wash_and_stands_in_the_record()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        await server.PublishAsync("hall/round", "88");
        await server.PublishAsync("hall/across", "71.5");
        var circuit = Assert.Single(await server.GetAsync<List<FiltersView>>("/api/v1/filters"));
        Assert.Equal(("hall", 88, 75), (circuit.CircuitId, circuit.FlowCubicMetresPerHour, circuit.LowCubicMetresPerHour));
        var filter = circuit.Filters[0];
        Assert.Equal((71.5, 30, 50, 7, false, null), (filter.Kilopascals, filter.CleanKilopascals, filter.DueRiseKilopascals, filter.EveryDays, filter.Due, filter.Backwash));

        var begun = new WashRequest(Guid.CreateVersion7(), "R. Castellan", "hall");
        var under = await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", begun));
        Assert.Equal((begun.Id, "R. Castellan", TimeSpan.FromMinutes(30)), (under.Backwash!.Id, under.Backwash.By, under.Backwash.Until - under.Backwash.Since));
        await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", begun));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/filters/f1/backwash", begun with { Id = Guid.CreateVersion7(), By = "J. Sample" })).StatusCode);

        server = await server.RestartAsync();
        await using (server)
        {
            Assert.Equal(begun.Id, (await FilterAsync(server)).Backwash?.Id);
            await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", new WashRequest(Guid.CreateVersion7(), "J. Sample")));
            var washed = await FilterAsync(server);
            Assert.Equal(("J. Sample", true, null), (washed.WashedBy, washed.WashedAt.IsSet, washed.Backwash));
            var told = (await server.Record.EntriesAsync(server.Host.Circuits.First(c => c.Partition.Value == "hall").Partition, new EntryQuery(["backwash", "filter_washed"]), default)).Select(e => e.Body);
            Assert.Equal([BackwashChange.Begun, BackwashChange.Washed], told.OfType<BackwashEntry>().Reverse().Select(b => b.Change));
            Assert.Single(told.OfType<FilterEntry>());
            // Right after it another one says why; the page knows that it will be asked.
            Assert.True(washed.AgainNeedsWhy);
            var again = new WashRequest(Guid.CreateVersion7(), "J. Sample", "hall");
            Assert.Contains("backwash.again_why", await (await server.PostAsync("/api/v1/filters/f1/backwash", again)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
            var second = await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", again with { Why = "bed still cloudy" }));
            Assert.Equal(second.Backwash!.Until, second.Backwash.QuietUntil);
        }
    }

    [Fact]
    public async Task A_second_backwash_without_a_word_that_a_journal_of_before_holds_is_answered_as_the_first_time_when_it_is_sent_again()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", new WashRequest(Guid.CreateVersion7(), "R. Castellan", "hall")));
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", new WashRequest(Guid.CreateVersion7(), "R. Castellan")));
        var again = new WashRequest(Guid.CreateVersion7(), "J. Sample", "hall");
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PostAsync("/api/v1/filters/f1/backwash", again)).StatusCode);
        Assert.IsType<Outcome.Done>(await server.Host.SendAsync("hall", at => new BackwashBegun(at, again.Id, "f1", again.By!), default));
        Assert.Equal(again.Id, (await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", again))).Backwash?.Id);
    }

    [Fact]
    public async Task The_water_of_a_wash_is_dilution_and_a_strainer_is_emptied_by_hand()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Null((await server.GetAsync<CirculationView>("/api/v1/pools/main/circulation")).Washes);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PostAsync("/api/v1/filters/f1/washed", new WashRequest(Guid.CreateVersion7(), "R. Castellan", CubicMetres: -1))).StatusCode);
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", new WashRequest(Guid.CreateVersion7(), "R. Castellan", CubicMetres: 8)));
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/s1/washed", new WashRequest(Guid.CreateVersion7(), "R. Castellan")));
        var washes = (await server.GetAsync<CirculationView>("/api/v1/pools/main/circulation")).Washes!;
        Assert.Equal((1, 0, 8.0), (washes.Count, washes.Unstated, washes.Total.Value));
        Assert.True(washes.PartReplaced is > 0.01 and < 0.03);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.PostAsync("/api/v1/filters/s1/backwash", new WashRequest(Guid.CreateVersion7(), "R. Castellan"))).StatusCode);
    }

    [Theory]
    [InlineData("f1/washed", " ", true, HttpStatusCode.BadRequest)]
    [InlineData("f1/backwash", "", true, HttpStatusCode.BadRequest)]
    [InlineData("f1/backwash", "R. Castellan", false, HttpStatusCode.BadRequest)]
    [InlineData("f9/backwash", "R. Castellan", true, HttpStatusCode.NotFound)]
    [InlineData("f9/washed", "R. Castellan", true, HttpStatusCode.NotFound)]
    [InlineData("f1/backwash/end", "R. Castellan", true, HttpStatusCode.NotFound)]
    public async Task What_lacks_a_name_an_id_or_a_filter_is_refused(string path, string by, bool timeOrdered, HttpStatusCode expected)
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        Assert.Equal(expected, (await server.PostAsync($"/api/v1/filters/{path}", new WashRequest(timeOrdered ? Guid.CreateVersion7() : Guid.NewGuid(), by))).StatusCode);
        Assert.Equal((false, null), (await FilterAsync(server) is var f ? (f.WashedAt.IsSet, f.Backwash) : default));
    }

    private static async Task<FilterView> FilterAsync(WholeServer server) => (await server.GetAsync<List<FiltersView>>("/api/v1/filters"))[0].Filters[0];
}
