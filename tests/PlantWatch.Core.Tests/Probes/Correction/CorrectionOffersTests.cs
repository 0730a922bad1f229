using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Probes.Correction;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Correction;

public sealed class CorrectionOffersTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 8);
    private static readonly ProbePlan Probe = new() { Id = "ph", Name = "pH", Measurand = Measurand.Ph, Topic = "t", Range = new(0, 14) };

    [Fact]
    public void Two_calibrations_in_buffers_offer_what_the_second_makes_of_a_value_of_the_first()
    {
        var offer = Assert.Single(Offers(Service(0, 1, 0.10), Service(30, 1, 0.24)));
        Assert.Equal((Start, Start + TimeSpan.FromDays(30)), (offer.From, offer.To));
        Assert.Equal(0.14, offer.Gap.Value, 1e-9);
        Assert.Equal(0, offer.Slope, 1e-12);
        Assert.Equal("correction.gap_found", offer.Why[0].Code);
        Assert.Contains(offer.Why, r => r.Code == "correction.small");
    }

    [Fact]
    public void A_slope_that_was_found_is_offered_as_one_and_the_end_meets_the_new_calibration_exactly()
    {
        var (first, second) = (Service(0, 1.02, -0.10), Service(30, 1.10, -0.60));
        var offer = Assert.Single(Offers(first, second));
        var made = new RecordCorrection
        {
            Id = Guid.Empty, ProbeId = "ph", From = offer.From, To = offer.To, Drift = offer.Gap.Value, DriftSlope = offer.Slope, Pivot = offer.Pivot, GapU = 0.02, MadeBy = "x", Why = "y",
        };
        foreach (var raw in (double[])[6.5, 7.2, 8.4])
            Assert.Equal(second.Apply(raw), CorrectionLayer.Apply(made, offer.To - TimeSpan.FromMilliseconds(1), first.Apply(raw)).Value, 1e-6);
    }

    [Theory]
    [InlineData(ProbeWork.ElectrodeReplaced)]
    [InlineData(ProbeWork.MembraneReplaced)]
    [InlineData(ProbeWork.Polished)]
    [InlineData(ProbeWork.Polished | ProbeWork.Cleaned)]
    public void A_renewed_part_says_nothing_of_what_the_old_one_read(ProbeWork work)
    {
        var offer = Assert.Single(Offers(Service(0, 1, 0.1), Service(30, 1, 0.3) with { Work = work }));
        Assert.False(offer.Gap.IsKnown);
        Assert.Equal("correction.another_electrode", Assert.Single(offer.Why).Code);
    }

    [Fact]
    public void A_cleaning_is_remarked_since_its_part_is_not_in_the_gap()
    {
        var offer = Assert.Single(Offers(Service(0, 1, 0), Service(30, 1, 0.25) with { Work = ProbeWork.Cleaned }));
        Assert.Contains(offer.Why, r => r.Code == "correction.fouling_not_told");
    }

    [Fact]
    public void Read_in_a_buffer_before_and_after_cleaning_deposits_and_drift_are_told_apart_and_the_stretch_ends_when_the_probe_left_its_cell()
    {
        var left = Start + TimeSpan.FromDays(30) - TimeSpan.FromHours(1);
        var sheet = new BenchSheet { StartedAt = left, AsFound = [In7(6.80)], Points = [In7(6.92)] };
        var offer = Assert.Single(Offers(Service(0, 1, 0), Service(30, 1, 0.08) with { Work = ProbeWork.Cleaned, Sheet = sheet }));
        var known = In7(0).Known(Measurand.Ph).Value;
        Assert.Equal(known - 6.92, offer.Gap.Value, 1e-9);
        Assert.Equal(0.12, offer.Fouling, 1e-9);
        Assert.Equal(left, offer.To);
        Assert.Contains(offer.Why, r => r.Code == "correction.fouling_found");
        Assert.DoesNotContain(offer.Why, r => r.Code == "correction.fouling_not_told");
    }

    [Fact]
    public void An_electrode_that_was_measured_before_it_was_renewed_tells_its_gap()
    {
        var sheet = new BenchSheet { AsFound = [In7(6.80)], Points = [In7(7.01)] };
        var offer = Assert.Single(Offers(Service(0, 1, 0), Service(30, 1, 0) with { Work = ProbeWork.ElectrodeReplaced, Sheet = sheet }));
        Assert.Equal(In7(0).Known(Measurand.Ph).Value - 6.80, offer.Gap.Value, 1e-9);
        Assert.Equal(0, offer.Fouling);
    }

    [Fact]
    public void A_gap_within_what_buffers_can_tell_is_said_to_need_no_correction() =>
        Assert.Contains(Assert.Single(Offers(Service(0, 1, 0), Service(30, 1, 0.03))).Why, r => r.Code == "correction.within_uncertainty");

    [Fact]
    public void What_is_corrected_already_is_not_offered_again_until_that_is_withdrawn()
    {
        var made = new RecordCorrection { Id = Guid.Empty, ProbeId = "ph", From = Start, To = Start + TimeSpan.FromDays(30), Drift = 0.1, GapU = 0.02, MadeBy = "x", Why = "y" };
        ImmutableArray<Calibration> services = [Service(0, 1, 0), Service(30, 1, 0.1)];
        var now = Start + TimeSpan.FromDays(40);
        Assert.Empty(CorrectionOffers.For(Probe, services, [made], now));
        Assert.Single(CorrectionOffers.For(Probe, services, [made with { WithdrawnAt = now }], now));
    }

    [Fact]
    public void One_service_alone_offers_nothing() => Assert.Empty(Offers(Service(0, 1, 0.1)));

    private static ImmutableArray<CorrectionOffer> Offers(params Calibration[] services) => CorrectionOffers.For(Probe, [.. services], [], Start + TimeSpan.FromDays(90));

    private static Calibration Service(int day, double slope, double offset) => new()
    {
        Id = TimeOrderedId.Derive(Start, $"service {day}"), ProbeId = "ph", Kind = slope == 1 ? CalibrationKind.Offset : CalibrationKind.TwoPoint, Status = CalibrationStatus.Approved,
        Slope = slope, Offset = offset, Basis = CalibrationBasis.Buffers, ProposedBy = "R. Example", HoldsFrom = Start + TimeSpan.FromDays(day),
    };

    private static BenchPoint In7(double reading) => new() { Label = 7.00, Celsius = 25, Reading = reading };
}
