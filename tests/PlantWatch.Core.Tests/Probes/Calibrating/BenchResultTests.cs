using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Tests.Chemistry;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>What follows from an electrode in buffers.</summary>
public sealed class BenchResultTests
{
    [Fact]
    public void A_made_electrode_is_found_again_from_its_millivolts_at_every_temperature_of_the_table()
    {
        // nernst_slope.csv: mV per pH. 95 % slope and +12 mV at pH 7, buffers of ph_buffers.csv at that temperature.
        foreach (var row in ReferenceRows.Of("Chemistry", "nernst_slope.csv"))
        {
            var (celsius, nernst) = (row.Number("T_C"), row.Number("slope_mV_per_pH"));
            BenchPoint Made(PhBuffer buffer) => new() { Buffer = buffer, Celsius = celsius, InMillivolts = true, Reading = 12 - (0.95 * nernst * (PhBuffers.Value(buffer, celsius).Value - 7)) };
            var sheet = Sheets.Of(Made(PhBuffer.Technical7), Made(PhBuffer.Technical4)).Result(Sheets.Ph).Sheet;
            Assert.Equal(0.95, sheet.SlopeShare!.Value, 4);
            Assert.Equal(12, sheet.OffsetMillivolts!.Value, 2);
        }
    }

    [Fact]
    public void Two_buffers_give_slope_and_offset_and_the_correction_puts_both_readings_right()
    {
        // Technical buffers at 20 degC: 7.02 and 4.00.
        var result = Sheets.Of(Sheets.At7(7.12, 20), Sheets.At4(4.25, 20)).Result(Sheets.Ph);
        Assert.Equal((CalibrationKind.TwoPoint, CalibrationStatus.Approved, CalibrationBasis.Buffers, BenchVerdict.Within), (result.Kind, result.Status, result.Basis, result.Sheet.Verdict));
        Assert.Equal(2.87 / 3.02, result.Sheet.SlopeShare!.Value, 9);
        Assert.Equal(7.02, (result.Slope * 7.12) + result.Offset, 9);
        Assert.Equal(4.00, (result.Slope * 4.25) + result.Offset, 9);
        Assert.Equal(0.25, result.Sheet.FoundError!.Value, 9);
        Assert.Equal(0, result.Sheet.LeftError!.Value, 9);
    }

    [Theory]
    [InlineData(7.00, 4.4501, "bench.slope_low")] // 85 % is 2.55 over 3 pH
    [InlineData(7.00, 3.84, "bench.slope_high")]
    [InlineData(7.52, 4.52, "bench.offset_beyond")] // 0.52 pH is 30.8 mV
    public void Beyond_the_limits_it_waits_for_another_person(double at7, double at4, string code)
    {
        var result = Sheets.Of(Sheets.At7(at7), Sheets.At4(at4)).Result(Sheets.Ph);
        Assert.Equal((BenchVerdict.Outside, CalibrationStatus.Proposed, code), (result.Sheet.Verdict, result.Status, result.Sheet.Why[0].Code));
    }

    [Fact]
    public void The_limits_are_those_of_the_plant_file()
    {
        var strict = Sheets.Ph with { Care = new CarePlan { SlopePercent = new(95, 102), OffsetMillivolts = 10 } };
        Assert.Equal(BenchVerdict.Within, Sheets.Of(Sheets.At7(7.1), Sheets.At4(4.3)).Result(Sheets.Ph).Sheet.Verdict);
        Assert.Equal(BenchVerdict.Outside, Sheets.Of(Sheets.At7(7.1), Sheets.At4(4.3)).Result(strict).Sheet.Verdict);
    }

    [Fact]
    public void A_sound_probe_that_nobody_touched_is_left_as_it_is()
    {
        var held = Sheets.Held(1.02, -0.15);
        var result = Sheets.Of(Sheets.At7(7.01), Sheets.At4(4.07)).Result(Sheets.Ph, ProbeWork.None, held);
        Assert.Equal((CalibrationKind.Verification, CalibrationStatus.Approved, 1.0, 0.0), (result.Kind, result.Status, result.Slope, result.Offset));
        Assert.InRange(result.Sheet.FoundError!.Value, -BenchResult.LeaveWithinPh, BenchResult.LeaveWithinPh);
        Assert.Equal(result.Sheet.FoundError, result.Sheet.LeftError);
        Assert.Equal(CalibrationKind.TwoPoint, Sheets.Of(Sheets.At7(7.01), Sheets.At4(4.07)).Result(Sheets.Ph, ProbeWork.Cleaned, held).Kind);
    }

    [Fact]
    public void One_buffer_moves_the_offset_and_keeps_the_slope_of_the_same_electrode()
    {
        var held = Sheets.Held(1.05, 0);
        var same = Sheets.Of(Sheets.At7(7.2)).Result(Sheets.Ph, ProbeWork.Cleaned, held);
        Assert.Equal((CalibrationKind.TwoPoint, 1.05), (same.Kind, Math.Round(same.Slope, 9)));
        Assert.Equal(7.00, (same.Slope * 7.2) + same.Offset, 9);
        var other = Sheets.Of(Sheets.At7(7.2)).Result(Sheets.Ph, ProbeWork.ElectrodeReplaced, held);
        Assert.Equal((CalibrationKind.Offset, 1.0, -0.2), (other.Kind, other.Slope, Math.Round(other.Offset, 9)));
        Assert.Null(other.Sheet.SlopeShare);
    }

    [Fact]
    public void What_was_found_is_judged_under_the_correction_that_held_then()
    {
        var sheet = Sheets.Of(Sheets.At7(7.0), Sheets.At4(4.0)) with { AsFound = [Sheets.At7(7.4)] };
        Assert.Equal(0.25, sheet.Result(Sheets.Ph, ProbeWork.Cleaned, Sheets.Held(1, -0.15)).Sheet.FoundError!.Value, 9);
    }

    [Fact]
    public void Millivolts_judge_the_electrode_and_correct_nothing()
    {
        var point = Sheets.At7(0) with { InMillivolts = true };
        var result = Sheets.Of(point, point with { Buffer = PhBuffer.Technical4, Reading = 130 }).Result(Sheets.Ph);
        Assert.Equal((CalibrationKind.Verification, BenchVerdict.Outside), (result.Kind, result.Sheet.Verdict));
        Assert.Equal(130 / (3 * 59.1593), result.Sheet.SlopeShare!.Value, 4);
        Assert.Contains(result.Sheet.Why, w => w.Code == "bench.millivolts_only");
    }

    [Fact]
    public void A_panel_is_turned_there_and_corrected_nowhere_else()
    {
        var panel = Sheets.Ph with { Origin = SignalOrigin.PanelScaled };
        var turned = (Sheets.Of(Sheets.At7(7.0), Sheets.At4(4.0)) with { AsFound = [Sheets.At7(7.3), Sheets.At4(4.3)] }).Result(panel, ProbeWork.Cleaned);
        Assert.Equal((CalibrationKind.PanelAdjustment, CalibrationStatus.Adjusted, 1.0, -0.3), (turned.Kind, turned.Status, turned.Slope, Math.Round(turned.Offset, 9)));
        Assert.Equal(CalibrationKind.Verification, Sheets.Of(Sheets.At7(7.0), Sheets.At4(4.0)).Result(panel).Kind);
    }

    [Theory]
    [InlineData(262.5 + 15, BenchVerdict.Within, CalibrationKind.Verification, CalibrationStatus.Approved)]
    [InlineData(262.5 - 15.1, BenchVerdict.Outside, CalibrationKind.Offset, CalibrationStatus.Proposed)]
    public void An_orp_electrode_is_good_within_15_mV_of_its_solution_and_has_no_slope(double reading, BenchVerdict verdict, CalibrationKind kind, CalibrationStatus status)
    {
        // Quinhydrone in phthalate at 20 degC: 262.5 mV against Ag/AgCl 3.33 M, +-15 mV (published, a laboratory meter's manual).
        var result = Sheets.Of(new BenchPoint { Quinhydrone = QuinhydroneBuffer.Phthalate, Celsius = 20, Reading = reading }).Result(Sheets.Orp);
        Assert.Equal((verdict, kind, status, CalibrationBasis.CheckSolution), (result.Sheet.Verdict, result.Kind, result.Status, result.Basis));
        Assert.Equal(1, result.Slope);
        if (kind == CalibrationKind.Offset) Assert.Equal(262.5, reading + result.Offset, 9);
    }

    [Fact]
    public void Buffers_of_two_families_are_told_apart() =>
        Assert.Contains(Sheets.Of(Sheets.At4(4.1), Sheets.At7(6.9) with { Buffer = PhBuffer.Phosphate }).Result(Sheets.Ph).Sheet.Why, w => w.Code == "bench.mixed_families");

    [Fact]
    public void A_label_goes_before_a_table() =>
        Assert.Equal(0.1, Sheets.Of(Sheets.At7(9.1) with { Label = 9.0 }).Result(Sheets.Ph).Sheet.FoundError!.Value, 9);

    [Fact]
    public void Wrong_sheets_are_refused_by_name()
    {
        Assert.Equal("points bench.nothing_done", new BenchSheet().Refused(Sheets.Ph));
        Assert.Equal("points bench.swapped", Sheets.Of(Sheets.At7(4.05), Sheets.At4(7.02)).Refused(Sheets.Ph));
        Assert.Equal("points bench.reads_the_same", Sheets.Of(Sheets.At7(7.0), Sheets.At4(6.98)).Refused(Sheets.Ph));
        Assert.Equal("points bench.no_electrode", Sheets.Of(Sheets.At7(7.0), Sheets.At4(6.2)).Refused(Sheets.Ph));
        Assert.Equal("points bench.buffers_too_close", Sheets.Of(Sheets.At7(7.0), Sheets.At7(6.86) with { Buffer = PhBuffer.Phosphate }).Refused(Sheets.Ph));
        Assert.Equal("points bench.mixed_units", Sheets.Of(Sheets.At7(7.0), Sheets.At4(170) with { InMillivolts = true }).Refused(Sheets.Ph));
        Assert.Equal("points[0].reading bench.reading_range", Sheets.Of(Sheets.At7(70)).Refused(Sheets.Ph));
        Assert.Equal("points[0].celsius bench.temperature", Sheets.Of(Sheets.At7(7, 77)).Refused(Sheets.Ph));
        Assert.Equal("asFound[0].reading bench.reading_range", (Sheets.Of(Sheets.At7(7)) with { AsFound = [Sheets.At7(double.NaN)] }).Refused(Sheets.Ph));
        Assert.Equal("points[0].solution buffer.unknown", Sheets.Of(new BenchPoint { Celsius = 25, Reading = 7 }).Refused(Sheets.Ph));
        Assert.Equal("points[0].solution orp.check_solution_unknown", Sheets.Of(new BenchPoint { Celsius = 25, Reading = 470 }).Refused(Sheets.Orp));
        Assert.Equal("work bench.work_unknown", Sheets.Of(Sheets.At7(7)).Refused(Sheets.Ph, (ProbeWork)64));
    }

    [Fact]
    public void Work_alone_is_a_sheet_that_corrects_nothing()
    {
        var chlorine = Sheets.Ph with { Measurand = Measurand.FreeChlorine, Range = new(0, 10) };
        var result = new BenchSheet().Result(chlorine, ProbeWork.MembraneReplaced | ProbeWork.ElectrolyteRefilled);
        Assert.Equal((CalibrationKind.Verification, BenchVerdict.Unknown, "bench.only_work"), (result.Kind, result.Sheet.Verdict, result.Sheet.Why[0].Code));
    }

    [Fact]
    public void Whatever_is_read_in_two_buffers_either_a_field_is_named_or_both_readings_come_right() =>
        Gen.Select(Gen.Double[-1, 15], Gen.Double[-1, 15], Gen.Double[-5, 55], Gen.Enum<PhBuffer>(), Gen.Enum<PhBuffer>()).Sample((one, two, celsius, a, b) =>
        {
            var sheet = Sheets.Of(Sheets.At7(one, celsius) with { Buffer = a }, Sheets.At7(two, celsius) with { Buffer = b });
            if (!BenchResult.TryOf(Sheets.Ph, ProbeWork.Cleaned, sheet, null, out var result, out var remark)) Assert.NotEmpty(remark!.Field);
            else
            {
                Assert.InRange(result!.Slope, 0.5, 2);
                Assert.Equal(PhBuffers.Value(a, celsius).Value, (result.Slope * one) + result.Offset, 9);
                Assert.Equal(PhBuffers.Value(b, celsius).Value, (result.Slope * two) + result.Offset, 9);
            }
        });
}
