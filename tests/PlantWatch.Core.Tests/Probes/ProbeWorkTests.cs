using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes;

/// <summary>What was done to a probe is a fact of its own, apart from what is corrected.</summary>
public sealed class ProbeWorkTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 3, 1, 12);

    private static readonly Calibration Cleaned = new()
    {
        Id = TimeOrderedId.Derive(Noon, "c"), ProbeId = "ph", ProposedBy = "R. Example", Kind = CalibrationKind.Verification, Status = CalibrationStatus.Approved,
        HoldsFrom = Noon, Basis = CalibrationBasis.Buffers, Work = ProbeWork.Cleaned | ProbeWork.ElectrodeReplaced,
    };

    [Fact]
    public void A_probe_looked_at_and_left_as_it_was_is_not_corrected_by_it() =>
        Assert.Null(CalibrationsInForce.At([Cleaned], "ph", Noon));

    [Fact]
    public void Work_on_a_probe_is_a_change_even_when_its_numbers_are_turned_down_later()
    {
        Assert.Single(CalibrationsInForce.Changes([Cleaned with { Status = CalibrationStatus.Rejected }], "ph", Noon));
        Assert.Empty(CalibrationsInForce.Changes([Cleaned with { Work = ProbeWork.None }], "ph", Noon));
    }

    [Fact]
    public void Basis_and_work_survive_being_written_down()
    {
        var read = JsonSerializer.Deserialize<Calibration>(JsonSerializer.Serialize(Cleaned, PlantJson.Options), PlantJson.Options)!;
        Assert.Equal((Cleaned.Basis, Cleaned.Work, true, false), (read.Basis, read.Work, read.ByBuffers, read.ByCheckSolution));
    }
}
