using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>An event on which fold, journal or record fails is a defect; it must cost itself and nobody else.</summary>
public sealed class HalfMadeEventTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Fact]
    public async Task What_neither_fold_nor_journal_can_take_is_set_aside_and_the_circuit_goes_on()
    {
        await using var server = await WholeServer.StartAsync();
        var halfMade = Check() with { Panel = [new PanelReading(null!, 7)] };
        var no = Assert.IsType<Outcome.TurnedDown>(await server.Host.SendAsync("hall", at => new CheckEntered(at, halfMade, []), default).WaitAsync(Patience));
        Assert.Equal("defect", no.Remarks[0].Reason.Code);
        await StillTakesChecksAsync(server);
        Assert.Single(await server.Record.RefusalsAsync(new PartitionKey("hall"), 10, default), r => r.Reason == RefusalReason.Defect);
    }

    [Fact]
    public async Task A_batch_that_can_never_be_written_is_not_tried_for_ever_and_stops_nobody_else()
    {
        await using var server = await WholeServer.StartAsync();
        await using var committer = new Committer(server.Record, TimeProvider.System, NullLogger<Committer>.Instance);
        committer.Start();
        var reading = new Reading("ph", WholeServer.Now, WholeServer.Now, double.NaN, Quality.Received, Order.Newest);
        var state = CircuitState.Of(new CircuitPlan { Id = "annex", Name = "Annex", TimeZone = "UTC" });
        Commit Batch(params Reading[] readings) =>
            new(new PartitionKey("annex"), 1, WholeServer.Now, JournalCodec.Write([]), new StepResult(state, [.. readings], [], [], [], []));
        await Assert.ThrowsAsync<ArgumentException>(() => committer.CommitAsync(Batch(reading), default).WaitAsync(Patience));
        Assert.Equal(1, (await committer.CommitAsync(Batch(reading with { Raw = 7.2 }), default).WaitAsync(Patience)).Seq);
        Assert.Null(committer.Trouble);
    }

    private static async Task StillTakesChecksAsync(WholeServer server) =>
        Assert.IsType<Outcome.CheckTaken>(await server.Host.SendAsync("hall", at => new CheckEntered(at, Check(), []), default).WaitAsync(Patience));

    private static ManualCheck Check() => new()
    {
        Id = Guid.CreateVersion7(), PoolId = "main", SampledAt = WholeServer.Now, EnteredAt = WholeServer.Now, Who = "R. Castellan",
        Results = [new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)],
    };
}
