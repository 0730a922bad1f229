using System.Net;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>Reagents through the public interface: a lot that is opened, and what a test made with an old one is worth.</summary>
public sealed class ReagentTests
{
    // Two circuits share the kit.
    private static readonly string Plant = WholeServer.Plant.Replace("products:\n", """
        reagents:
          - { id: dpd-1, name: DPD 1, tests: [free_chlorine, total_chlorine], method: photometer, days_after_opening: 180 }
          - { id: red, name: Phenol red, tests: [ph] }
        products:

        """, StringComparison.Ordinal) + """

          - id: spa
            name: Spa
            pools:
              - { id: spa-pool, name: Spa, kind: spa, setting: indoor, disinfectant: chlorine, volume_m3: 5 }

        """;

    private static DateOnly Today => DateOnly.FromDateTime(DateTime.UtcNow);

    [Fact]
    public async Task A_lot_is_noted_once_for_the_whole_plant_and_one_circuit_tells_when_it_is_out_of_date()
    {
        var server = await WholeServer.StartAsync(plant: Plant);
        Assert.All(await server.GetAsync<List<ReagentView>>("/api/v1/reagents"), r => Assert.Equal(ReagentWord.NotNoted, r.Word));
        var old = new LotRequest(Guid.CreateVersion7(), "26-41", Today.AddDays(-2), WholeServer.Now - TimeSpan.FromDays(20), "R. Castellan");
        var view = await NoteAsync(server, old);
        Assert.Equal((ReagentWord.OutOfDate, "26-41", "reagent.out_of_date"), (view.Word, view.Lot, view.Why?.Code));
        await NoteAsync(server, old);
        Assert.Equal(HttpStatusCode.Conflict, (await server.PostAsync("/api/v1/reagents/dpd-1/opened", old with { Lot = "26-42" })).StatusCode);

        server = await server.RestartAsync();
        await using (server)
        {
            Assert.True(await IsToldAsync(server, "hall"));
            Assert.False(await IsToldAsync(server, "spa"));
            var taken = await TestAsync(server, "main", 1.4);
            Assert.Contains(taken.Remarks, r => r is { Field: "results[0].value", Code: "reagent.out_of_date" });
            Assert.Contains((await TestAsync(server, "spa-pool", 1.4)).Remarks, r => r.Code == "reagent.out_of_date");

            var fresh = await NoteAsync(server, old with { Id = Guid.CreateVersion7(), Lot = "27-03", LastDay = Today.AddYears(1), OpenedAt = WholeServer.Now });
            Assert.Equal((ReagentWord.InDate, true), (fresh.Word, fresh.GoodUntil < WholeServer.Now + TimeSpan.FromDays(181)));
            Assert.False(await IsToldAsync(server, "hall"));
            Assert.DoesNotContain((await TestAsync(server, "main", 1.4)).Remarks, r => r.Code == "reagent.out_of_date");
        }
    }

    [Fact]
    public async Task Two_weeks_before_its_end_another_is_to_be_ordered()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var lot = new LotRequest(Guid.CreateVersion7(), "26-41", Today.AddDays(20), WholeServer.Now - TimeSpan.FromDays(3), "R. Castellan");
        Assert.Equal(ReagentWord.InDate, (await NoteAsync(server, lot)).Word);
        Assert.Equal(ReagentWord.Order, (await NoteAsync(server, lot with { Id = Guid.CreateVersion7(), LastDay = Today.AddDays(10) })).Word);
    }

    [Fact]
    public async Task What_is_wrong_is_said_beside_its_field()
    {
        await using var server = await WholeServer.StartAsync(plant: Plant);
        var lot = new LotRequest(Guid.CreateVersion7(), "26-41", Today.AddDays(20), WholeServer.Now, "R. Castellan");
        foreach (var (wrong, field) in new[]
        {
            (lot with { Lot = " " }, "lot"), (lot with { By = null }, "by"), (lot with { LastDay = default }, "lastDay"), (lot with { OpenedAt = WholeServer.Now + TimeSpan.FromDays(1) }, "openedAt"), (lot with { Id = Guid.NewGuid() }, "id"),
        })
        {
            var answer = await server.PostAsync("/api/v1/reagents/dpd-1/opened", wrong);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.Contains($"\"{field}\"", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await server.PostAsync("/api/v1/reagents/none/opened", lot)).StatusCode);
    }

    private static async Task<ReagentView> NoteAsync(WholeServer server, LotRequest lot) => await WholeServer.ReadAsync<ReagentView>(await server.PostAsync("/api/v1/reagents/dpd-1/opened", lot));

    private static async Task<CheckAnswer> TestAsync(WholeServer server, string pool, double chlorine) => await WholeServer.ReadAsync<CheckAnswer>(await server.PutAsync(
        $"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.FreeChlorine, chlorine, TestMethod.Photometer)) with { PoolId = pool }));

    private static async Task<bool> IsToldAsync(WholeServer server, string circuit) => (await server.GetAsync<CircuitView>($"/api/v1/circuits/{circuit}")).Alarms.Any(a => a is { Rule: "R-042", Active: true });
}
