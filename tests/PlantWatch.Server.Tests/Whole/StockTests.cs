using System.Net;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Chemicals through the public interface: deliveries by two names, a wrong tank, the store, doses, counts, and what that comes to.</summary>
public sealed class StockTests
{
    private static readonly string Plant = WholeServer.Plant.Replace("circuits:\n", """
          - id: hypo
            name: Hypochlorite
            kind: sodium_hypochlorite
            strength_percent: 12
            strength_means: trade
            price_per_l: 1
            delivery_days: 7
            store: Bund A
          - { id: bicarb, name: Bicarbonate, kind: sodium_bicarbonate, price_per_kg: 1.1, added_by: hand }
        circuits:

        """, StringComparison.Ordinal) + """

              - { id: hypo-pump, name: Hypochlorite pump, product: hypo, state_topic: hall/hypo/state }

          - id: spa
            name: Spa circuit
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }
            pumps:
              - { id: spa-hypo, name: Spa hypochlorite, product: hypo, state_topic: spa/hypo/state, tank_topic: spa/hypo/tank, tank_litres: 60 }

        """;

    private static StockMoveRequest Delivery(string product, string? pump, double litres) =>
        new(product, pump, litres, null, WholeServer.Now, "R. Castellan", "T. Wren");

    [Fact]
    public async Task A_delivery_into_the_store_a_refill_of_two_circuits_and_a_count_add_up_and_a_restart_keeps_them()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var came = await PutAsync(server, "deliveries", Delivery("hypo", null, 200) with { Containers = 8, Batch = "B-17", Strength = 14, Price = 260 });
        Assert.Equal((200.0, StockUnit.Litre, (string?)null), (came.Move.Amount, came.Move.Unit, came.Place));
        Assert.Equal("stock.strength_differs", Assert.Single(came.Advice).Code);
        // What is taken from the store bears the label that came with it.
        var filled = await PutAsync(server, "refills", Delivery("hypo", "spa-hypo", 50));
        Assert.Equal((14.0, "B-17", "Spa hypochlorite, Spa circuit"), (filled.Move.Strength, filled.Move.Batch, filled.Place));
        await PutAsync(server, "refills", Delivery("hypo", "hypo-pump", 75));
        server = await server.RestartAsync();
        await using (server)
        {
            var hypo = await HypoAsync(server);
            // 200 - 50 - 75 = 75 in the store; by the book 75 in the tank without a level; the level of the other was never heard.
            Assert.Equal((75.0, 150.0, 1.3), (hypo.Store, hypo.Total, hypo.UnitPrice));
            Assert.Equal([75.0, null], hypo.Tanks.Select(t => t.Litres));
            Assert.Equal("stock.too_few_days", hypo.Why?.Code);
            var count = await PutAsync(server, "stock-counts", Delivery("hypo", null, 70) with { CheckedBy = null });
            Assert.Equal(75, count.Move.Book);
            Assert.Equal(70, (await HypoAsync(server)).Store);
            var moves = await server.GetAsync<List<StockMoveView>>("/api/v1/stock/moves");
            Assert.Equal([StockAct.Counted, StockAct.Refilled, StockAct.Refilled, StockAct.Delivered], moves.Select(m => m.Move.Act));
            var told = (await server.GetAsync<EntriesView>("/api/v1/entries?about=chemicals")).Entries;
            Assert.Contains(("From the store into the tank of Spa hypochlorite: 50 L of Hypochlorite, label and tank read with T. Wren", "R. Castellan"), told.Select(t => (t.Text, t.By)));
            Assert.Equal(4, told.Count);
        }
    }

    [Fact]
    public async Task Bathers_of_the_last_days_are_those_of_the_sites_calendar()
    {
        // Nine in the evening in London's winter is the next morning in Auckland: there it is the 13th.
        await using var server = await WholeServer.StartAsync(plant: Plant.Replace("Europe/London", "Pacific/Auckland", StringComparison.Ordinal), clock: new ClockAt(new(2027, 1, 12, 21, 0, 0, TimeSpan.Zero)));
        foreach (var day in new[] { 11, 12, 13 })
            await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{Guid.CreateVersion7()}", new BathersRequest("main", new DateOnly(2027, 1, day), 10 * day, "R. Castellan")));
        Assert.Equal([130, 120], (await server.GetAsync<List<BathersView>>("/api/v1/bathers?days=1")).Select(b => b.Number));
    }

    [Fact]
    public async Task A_wrong_tank_is_asked_about_then_recorded_and_its_alarm_outlives_a_restart_until_it_is_safe()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        var (id, wrong) = (Guid.CreateVersion7(), Delivery("acid", "hypo-pump", 25));
        var asked = await server.PutAsync($"/api/v1/deliveries/{id}", wrong);
        var text = await asked.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.Conflict, asked.StatusCode);
        Assert.Contains("wrong_tank.chlorine_gas", text, StringComparison.Ordinal);
        Assert.Contains("chlorine gas", text, StringComparison.Ordinal);
        Assert.Empty((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms);

        var kept = await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{id}", wrong with { WentIn = true }));
        Assert.Equal("wrong_tank.chlorine_gas", kept.Wrong?.Code);
        server = await server.RestartAsync();
        await using (server)
        {
            var alarm = Assert.Single((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms, a => a.Rule == "R-043");
            Assert.True(alarm is { Active: true, MustBeMadeSafe: true, Shelvable: false });
            Assert.Contains("emergency services", alarm.Action, StringComparison.Ordinal);
            Assert.NotNull((await HypoAsync(server)).Tanks[0].Wrong);
            var half = await server.PostAsync($"/api/v1/alarms/{alarm.Id}/made-safe", new MakeSafe(true, true, true, "T. Wren", null));
            Assert.Contains("roomLeft", await half.Content.ReadAsStringAsync(), StringComparison.Ordinal);
            await WholeServer.ReadAsync<AlarmView>(await server.PostAsync($"/api/v1/alarms/{alarm.Id}/made-safe", new MakeSafe(false, true, false, "T. Wren", "emptied", RoomLeft: true, TankDealtWith: true)));
            alarm = Assert.Single((await server.GetAsync<CircuitView>("/api/v1/circuits/hall")).Alarms, a => a.Rule == "R-043");
            Assert.True(alarm is { Active: false, LatchHeld: true });
            Assert.Null((await HypoAsync(server)).Tanks[0].Wrong);
        }
    }

    [Fact]
    public async Task A_dose_by_hand_is_taken_from_the_store_and_what_was_delivered_goes_into_its_advice()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        await PutAsync(server, "stock-counts", new("bicarb", null, null, 60, WholeServer.Now, "R. Castellan"));
        await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{Guid.CreateVersion7()}", new GivenDoseRequest("main", "bicarb", 12, null, WholeServer.Now, "R. Castellan")));
        Assert.Equal(48, (await server.GetAsync<StockBookView>("/api/v1/stock")).Products.Single(p => p.Id == "bicarb").Store);

        Assert.Equal(12, await GramsAsync(server), 0.01);
        await PutAsync(server, "deliveries", Delivery("hypo", "hypo-pump", 50) with { Strength = 15, Batch = "C-3" });
        Assert.Equal(15, await GramsAsync(server), 0.01);
        var product = (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Products.Single(p => p.Id == "hypo");
        Assert.Contains(product.Says, s => s.Code == "product.as_delivered" && s.Text.Contains("C-3", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_same_row_once_more_is_answered_as_the_first_time_and_another_under_its_id_is_a_conflict()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, row) = (Guid.CreateVersion7(), Delivery("hypo", null, 100));
        var first = await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{id}", row));
        var again = await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{id}", row));
        Assert.Equal(first.ArrivedAt, again.ArrivedAt);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/deliveries/{id}", row with { Litres = 101 })).StatusCode);
        Assert.Equal(100, (await HypoAsync(server)).Store);
        await PutAsync(server, "deliveries", row with { Litres = 10, Corrects = id, CorrectionReason = "a nought too many" });
        Assert.Equal(10, (await HypoAsync(server)).Store);
        Assert.Equal([false, true], (await server.GetAsync<List<StockMoveView>>("/api/v1/stock/moves")).Select(m => m.Corrected).Order());
    }

    [Fact]
    public async Task What_is_wrong_is_said_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var row = Delivery("hypo", "hypo-pump", 50);
        foreach (var (wrong, field) in new[]
        {
            (row with { CheckedBy = " r castellan " }, "checkedBy"), (row with { CheckedBy = null }, "checkedBy"), (row with { By = null }, "by"), (row with { Litres = null }, "amount"), (row with { Litres = -3 }, "amount"),
            (row with { ProductId = "none" }, "productId"), (row with { PumpId = "none" }, "pumpId"), (row with { HappenedAt = WholeServer.Now + TimeSpan.FromDays(1) }, "happenedAt"), (row with { HappenedAt = default }, "happenedAt"),
            (row with { Strength = 140 }, "strength"), (row with { MadeOn = new DateOnly(2090, 1, 1) }, "madeOn"), (row with { Corrects = Guid.NewGuid(), CorrectionReason = "slip" }, "corrects"),
        })
        {
            var answer = await server.PutAsync($"/api/v1/deliveries/{Guid.CreateVersion7()}", wrong);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Contains($"\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.BadRequest, (await server.PutAsync($"/api/v1/deliveries/{Guid.NewGuid()}", row)).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, (await server.Http.GetAsync("/api/v1/stock?days=0")).StatusCode);
    }

    [Theory]
    [InlineData("R. Castellan", "Castellan, R.", HttpStatusCode.BadRequest, "stock.two_people")]
    [InlineData("R. Castellan", "R. C\u0430stellan", HttpStatusCode.BadRequest, "stock.two_people")]
    [InlineData("R. Castellan", "...", HttpStatusCode.BadRequest, "field.required")]
    [InlineData("...", "T. Wren", HttpStatusCode.BadRequest, "field.required")]
    public async Task One_person_in_another_spelling_is_no_second_one(string by, string checkedBy, HttpStatusCode status, string code)
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        foreach (var path in new[] { "deliveries", "refills" })
        {
            var answer = await server.PutAsync($"/api/v1/{path}/{Guid.CreateVersion7()}", Delivery("hypo", "hypo-pump", 50) with { By = by, CheckedBy = checkedBy });
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(code, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Empty(await server.GetAsync<List<StockMoveView>>("/api/v1/stock/moves"));
    }

    [Fact]
    public async Task A_row_is_corrected_once_and_next_to_nothing_is_no_delivery()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var row = Delivery("hypo", null, 100);
        var first = await PutAsync(server, "deliveries", row);
        await PutAsync(server, "deliveries", row with { Litres = 10, Corrects = first.Move.Id, CorrectionReason = "a nought too many" });
        foreach (var (wrong, status, code) in new[]
        {
            (row with { Litres = 11, Corrects = first.Move.Id, CorrectionReason = "so did I" }, HttpStatusCode.Conflict, "stock.corrected_already"),
            (row with { Litres = 1e-320, Price = 5 }, HttpStatusCode.BadRequest, "stock.amount_impossible"),
        })
        {
            var answer = await server.PutAsync($"/api/v1/deliveries/{Guid.CreateVersion7()}", wrong);
            Assert.Equal(status, answer.StatusCode);
            Assert.Contains(code, await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(10, (await HypoAsync(server)).Store);
    }

    [Fact]
    public async Task A_row_that_a_journal_of_before_holds_is_answered_as_the_first_time_when_it_is_sent_again()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var row = Delivery("hypo", null, 100) with { CheckedBy = "Castellan, R." };
        var old = new StockMove { Id = Guid.CreateVersion7(), Act = StockAct.Delivered, ProductId = "hypo", Amount = 100, HappenedAt = row.HappenedAt, By = row.By!, CheckedBy = row.CheckedBy };
        // Two corrections of one row, by one person in two spellings: what was not asked once.
        var wrongs = new[] { 10.0, 11 }.Select(litres => old with { Id = Guid.CreateVersion7(), Amount = litres, Corrects = old.Id, CorrectionReason = "a nought too many" }).ToArray();
        foreach (var taken in wrongs.Prepend(old)) Assert.IsType<Outcome.Done>(await server.Host.SendAsync("hall", at => new StockMoved(at, taken), default));
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{old.Id}", row));
        foreach (var taken in wrongs)
        {
            var again = row with { Litres = taken.Amount, Corrects = old.Id, CorrectionReason = taken.CorrectionReason };
            Assert.Equal(taken.Id, (await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/deliveries/{taken.Id}", again))).Move.Id);
        }

        Assert.Equal(11, (await HypoAsync(server)).Store);
        Assert.Equal(3, (await server.GetAsync<List<StockMoveView>>("/api/v1/stock/moves")).Count);
    }

    [Fact]
    public async Task Bathers_of_a_day_are_said_and_corrected_by_a_newer_row()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var (id, day) = (Guid.CreateVersion7(), DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-1));
        var request = new BathersRequest("main", day, 310, "R. Castellan");
        await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{id}", request));
        await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{id}", request));
        Assert.Equal(HttpStatusCode.Conflict, (await server.PutAsync($"/api/v1/bathers/{id}", request with { Number = 5 })).StatusCode);
        await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{Guid.CreateVersion7()}", request with { Number = 301 }));
        Assert.Equal((301, "Main pool"), (await server.GetAsync<List<BathersView>>("/api/v1/bathers")) is [var only] ? (only.Number, only.Pool) : default);
        foreach (var (wrong, field) in new[] { (request with { Number = null }, "number"), (request with { Number = -1 }, "number"), (request with { PoolId = "x" }, "poolId"), (request with { Day = day.AddDays(30) }, "day"), (request with { By = "" }, "by") })
            Assert.Contains($"\"{field}\"", await (await server.PutAsync($"/api/v1/bathers/{Guid.CreateVersion7()}", wrong)).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_days_use_is_in_the_record_with_its_cost_and_comes_to_so_much_a_bather()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var day = DateOnly.FromDateTime(DateTime.UtcNow).AddDays(-2);
        foreach (var (pool, number) in new[] { ("main", 240), ("spa-pool", 10) })
            await WholeServer.ReadAsync<BathersView>(await server.PutAsync($"/api/v1/bathers/{Guid.CreateVersion7()}", new BathersRequest(pool, day, number, "R. Castellan")));
        await WholeServer.ReadAsync<GivenDoseView>(await server.PutAsync($"/api/v1/doses/{Guid.CreateVersion7()}", new GivenDoseRequest("main", "bicarb", 12, null, WholeServer.Now - TimeSpan.FromDays(2), "R. Castellan")));
        var bicarb = (await server.GetAsync<StockBookView>("/api/v1/stock?days=5")).Products.Single(p => p.Id == "bicarb");
        // 12 kg at 1.10 are 13.20; for 240 bathers 50 g and 5.5 hundredths each; over 400 m3 and the two days since then 15 g a cubic metre and day.
        Assert.Equal((12.0, 13.2, 240), (bicarb.Use.Amount, Math.Round(bicarb.Use.Cost!.Value, 6), bicarb.Use.Bathers));
        Assert.Equal(0.05, bicarb.Use.PerBather!.Value, 1e-9);
        Assert.Equal(0.055, bicarb.Use.CostPerBather!.Value, 1e-9);
        Assert.Equal(0.015, bicarb.Use.PerCubicMetreDay!.Value, 1e-9);
        Assert.Equal(day, Assert.Single(bicarb.Days).Day);
    }

    // Grams of available chlorine in 100 mL, as trade per cent counts them.
    private static async Task<double> GramsAsync(WholeServer server)
    {
        var product = (await server.GetAsync<DosesView>("/api/v1/pools/main/doses")).Products.Single(p => p.Id == "hypo");
        return product.StrengthPercent * product.Density!.Value;
    }

    private static async Task<StockView> HypoAsync(WholeServer server) => (await server.GetAsync<StockBookView>("/api/v1/stock")).Products.Single(p => p.Id == "hypo");

    private static async Task<StockMoveView> PutAsync(WholeServer server, string path, StockMoveRequest request) =>
        await WholeServer.ReadAsync<StockMoveView>(await server.PutAsync($"/api/v1/{path}/{Guid.CreateVersion7()}", request));
}
