using System.Net;
using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>An id that is sent twice: with the same content it is the first answer again, with another it is a conflict, and never a silent loss or a second row.</summary>
public sealed class SameIdTests
{
    private static readonly string Plant = WholeServer.Plant
        .Replace("circuits:\n", "  - { id: hypo, name: Hypochlorite, kind: sodium_hypochlorite, strength_percent: 12, strength_means: trade, delivery_days: 3 }\ncircuits:\n", StringComparison.Ordinal)
        .Replace("    name: Hall\n", "    name: Hall\n    filters:\n      - { id: f1, name: Filter 1, clean_kpa: 30, wash_m3: 8 }\n      - { id: f2, name: Filter 2, clean_kpa: 30 }\n", StringComparison.Ordinal) + """


          - id: spa
            name: Spa circuit
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }
            pumps:
              - { id: spa-hypo, name: Spa hypochlorite, product: hypo, state_topic: spa/hypo/state }

        """;

    [Fact]
    public async Task A_delivery_under_its_id_with_another_label_price_note_or_second_person_is_a_conflict()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, row) = (Guid.CreateVersion7(), new StockMoveRequest("hypo", null, 100, null, WholeServer.Now, "R. Castellan", "T. Wren", Batch: "B-1", Strength: 12, Price: 90, Note: "two drums dented"));
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{id}", row));
        foreach (var other in new[] { row with { Batch = "B-2" }, row with { Strength = 15 }, row with { Price = 95 }, row with { Note = "all sound" }, row with { CheckedBy = "J. Sample" }, row with { Containers = 4 }, row with { WentIn = true } })
            Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/deliveries/{id}", other)).StatusCode);
        // What the server added from the store's label is nothing that the phone has to know when it sends its refill again.
        var (again, refill) = (Guid.CreateVersion7(), row with { PumpId = "spa-hypo", Litres = 20, Batch = null, Strength = null, Price = null });
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/refills/{again}", refill));
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/refills/{again}", refill));
        Assert.Equal(80, (await server.GetAsync<StockBookView>("/api/v1/stock")).Products.Single(p => p.Id == "hypo").Store);
    }

    [Fact]
    public async Task Two_corrections_of_one_row_at_once_take_it_back_once()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, row) = (Guid.CreateVersion7(), new StockMoveRequest("hypo", null, 100, null, WholeServer.Now, "R. Castellan", "T. Wren"));
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{id}", row));
        var answers = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => server.PutAsync($"/api/v1/deliveries/{Guid.CreateVersion7()}", row with { Litres = 10, Corrects = id, CorrectionReason = "a nought too many" })));
        Assert.Equal([HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.Conflict, HttpStatusCode.Conflict], answers.Select(a => a.StatusCode).Order());
        Assert.Equal(10, (await server.GetAsync<StockBookView>("/api/v1/stock")).Products.Single(p => p.Id == "hypo").Store);
    }

    [Fact]
    public async Task Bathers_under_one_id_are_those_of_one_pool_though_another_circuit_holds_the_other()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, request) = (Guid.CreateVersion7(), new BathersRequest("main", DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-1), 310, "R. Castellan"));
        await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{id}", request));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/bathers/{id}", request with { PoolId = "spa-pool" })).StatusCode);
        Assert.Single(await server.GetAsync<List<BathersView>>("/api/v1/bathers"));
    }

    [Fact]
    public async Task A_job_stays_with_the_thing_it_is_about()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, job) = (Guid.CreateVersion7(), new JobRequest("acid-pump", "hose leaks", null, JobState.Open, null, "T. Wren"));
        await WholeServer.ReadAsync<JobView>(await server.PutAsync($"/api/v1/jobs/{id}", job));
        foreach (var other in new[] { "ph", "spa-hypo", "spa-pool" })
            Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/jobs/{id}", job with { Asset = other })).StatusCode);
        Assert.Equal("acid-pump", Assert.Single(await server.GetAsync<List<JobView>>("/api/v1/jobs")).Asset);
    }

    [Fact]
    public async Task A_part_without_a_name_is_named_by_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var answer = await server.PutAsync($"/api/v1/jobs/{Guid.CreateVersion7()}", new JobRequest("acid-pump", "hose leaks", null, JobState.Open, null, "T. Wren") { Parts = [new("hose", 1, null), new(null!, 1, null)] });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("parts[1].name", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wash_that_is_sent_again_after_the_next_one_is_no_third_wash()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var first = new WashRequest(Guid.CreateVersion7(), "R. Castellan");
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", first));
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", first with { Id = Guid.CreateVersion7(), CubicMetres = 6 }));
        await WholeServer.ReadAsync<WashView>(await server.PostAsync("/api/v1/filters/f1/washed", first));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/filters/f1/washed", first with { CubicMetres = 50 })).StatusCode);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/filters/f2/washed", first)).StatusCode);
        var rows = await server.Record.EntriesAsync(server.Host.Circuits.First().Partition, new EntryQuery(["filter_washed"]), default);
        Assert.Equal([8.0, 6], rows.Select(r => r.Body).OfType<FilterEntry>().Select(e => e.CubicMetres).Reverse());
    }

    [Fact]
    public async Task A_backwash_that_is_sent_again_after_the_next_one_silences_nothing_anew()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (first, second) = (new WashRequest(Guid.CreateVersion7(), "R. Castellan"), new WashRequest(Guid.CreateVersion7(), "R. Castellan") { Why = "bed still cloudy" });
        foreach (var wash in new[] { first, second })
        {
            await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash", wash));
            await WholeServer.ReadAsync<FilterView>(await server.PostAsync("/api/v1/filters/f1/backwash/end", wash));
        }

        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/filters/f1/backwash", first with { Why = "sent again" })).StatusCode);
        Assert.Null((await server.GetAsync<List<FiltersView>>("/api/v1/filters"))[0].Filters[0].Backwash);
    }

    [Fact]
    public async Task The_alarm_of_a_product_is_put_out_of_service_in_the_circuit_that_would_raise_it()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var request = new OutOfService("R-045", "hypo", "R. Castellan", "a new supplier comes");
        await WholeServer.ReadAsync<AlarmView>(await server.PostAsync("/api/v1/alarms/out-of-service", request));
        Assert.Contains("R-045/hypo", server.Host.Find("spa")!.State.Alarms.Keys);
        Assert.Empty(server.Host.Find("hall")!.State.Alarms);
    }
}
