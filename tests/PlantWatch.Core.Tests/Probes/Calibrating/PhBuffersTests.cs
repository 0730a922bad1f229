using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Tests.Chemistry;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>Buffers at their temperature, against ph_buffers.csv: JIS Z 8802:2011 and the technical table of a process analyser's manual, both published.</summary>
public sealed class PhBuffersTests
{
    private static readonly Dictionary<string, PhBuffer> Named = new()
    {
        ["phthalate"] = PhBuffer.Phthalate, ["phosphate"] = PhBuffer.Phosphate, ["borax"] = PhBuffer.Borax, ["carbonate"] = PhBuffer.Carbonate,
        ["tech 4.00"] = PhBuffer.Technical4, ["tech 7.00"] = PhBuffer.Technical7, ["tech 10.01"] = PhBuffer.Technical10,
    };

    [Fact]
    public void Every_row_of_the_tables_is_met()
    {
        var rows = ReferenceRows.Of("Chemistry", "ph_buffers.csv");
        Assert.Equal(75, rows.Count);
        foreach (var row in rows) Assert.Equal(row.Number("pH"), PhBuffers.Value(Named[row["buffer"]], row.Number("T_C")).Value);
    }

    [Fact]
    public void The_buffer_of_7_00_is_not_the_buffer_of_6_86()
    {
        // Rows tech 7.00 and phosphate at 20 degC: 7.02 and 6.88.
        Assert.Equal(0.14, PhBuffers.Value(PhBuffer.Technical7, 20).Value - PhBuffers.Value(PhBuffer.Phosphate, 20).Value, 9);
        Assert.NotEqual(PhBuffers.FamilyOf(PhBuffer.Technical7), PhBuffers.FamilyOf(PhBuffer.Phosphate));
    }

    [Fact]
    public void Between_two_rows_a_straight_line_is_drawn() => Assert.Equal(6.87, PhBuffers.Value(PhBuffer.Phosphate, 22.5).Value, 9);

    [Theory]
    [InlineData(PhBuffer.Phosphate, -1)]
    [InlineData(PhBuffer.Carbonate, 39)]
    [InlineData(PhBuffer.Technical7, double.NaN)]
    public void Outside_its_table_a_buffer_has_no_value(PhBuffer buffer, double celsius) =>
        Assert.Equal("input.outside_range", PhBuffers.Value(buffer, celsius).Why!.Code);

    [Fact]
    public void A_buffer_that_nobody_named_has_no_value() => Assert.Equal("buffer.unknown", PhBuffers.Value(PhBuffer.Unknown, 25).Why!.Code);
}
