using CsCheck;
using PlantWatch.Core.Readings.Sparkplug;
using static PlantWatch.Core.Tests.Readings.Spark;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>Values by their data types: Sparkplug 3.0.0, section 6.4.16.</summary>
public class SparkplugNumberTests
{
    private static (NumberFault Fault, double Number) Of(SparkplugType type, byte[] value) => (SparkplugNumber.Read(type, Metric(value), out var number), number);

    [Theory]
    [InlineData(SparkplugType.Int8, 0xffffffff, -1)]
    [InlineData(SparkplugType.Int8, 0xffffff80, -128)]
    [InlineData(SparkplugType.Int8, 0xff, -1)] // an encoder that keeps to the width
    [InlineData(SparkplugType.Int8, 127, 127)]
    [InlineData(SparkplugType.Int16, 0xffff8000, -32768)]
    [InlineData(SparkplugType.Int16, 0x8000, -32768)]
    [InlineData(SparkplugType.Int16, 700, 700)]
    [InlineData(SparkplugType.Int32, 0x80000000, -2147483648)]
    [InlineData(SparkplugType.Int32, 0xffffffff, -1)]
    [InlineData(SparkplugType.Int32, 0xffffffffffffffff, -1)] // ten bytes, of which a uint32 is the lower half
    [InlineData(SparkplugType.Int64, 5, 5)]
    [InlineData(SparkplugType.UInt8, 255, 255)]
    [InlineData(SparkplugType.UInt16, 65535, 65535)]
    [InlineData(SparkplugType.UInt32, 0xffffffff, 4294967295)]
    [InlineData(SparkplugType.UInt64, 0xffffffff, 4294967295)]
    public void An_integer_of_32_bits_is_its_types(SparkplugType type, ulong bits, double number) => Assert.Equal((NumberFault.None, number), Of(type, I32(bits)));

    [Theory]
    [InlineData(SparkplugType.Int64, 0xffffffffffffffff, -1)]
    [InlineData(SparkplugType.Int64, 0x8000000000000000, -9223372036854775808.0)]
    [InlineData(SparkplugType.UInt64, 0xffffffffffffffff, 18446744073709551615.0)]
    [InlineData(SparkplugType.UInt32, 4000000000, 4000000000)] // where the wild puts it
    [InlineData(SparkplugType.Int32, 0xffffffffffffffff, -1)]
    [InlineData(SparkplugType.Int8, 0xffffffffffffff80, -128)]
    public void An_integer_of_64_bits_is_its_types(SparkplugType type, ulong bits, double number) => Assert.Equal((NumberFault.None, number), Of(type, I64(bits)));

    [Fact]
    public void Floats_and_switches_are_what_they_say()
    {
        Assert.Equal((NumberFault.None, 28.5), Of(SparkplugType.Float, F32(28.5f)));
        Assert.Equal((NumberFault.None, 7.21), Of(SparkplugType.Double, F64(7.21)));
        Assert.Equal((NumberFault.None, 1), Of(SparkplugType.Boolean, Flag(true)));
        Assert.Equal((NumberFault.None, 0), Of(SparkplugType.Boolean, Flag(false)));
        Assert.Equal(0L, BitConverter.DoubleToInt64Bits(Of(SparkplugType.Double, F64(-0.0)).Number));
    }

    private static readonly (NumberFault Fault, SparkplugType Type, byte[] Value)[] Wrong =
    [
        (NumberFault.NotANumber, SparkplugType.String, Text(15, "7.2")), (NumberFault.NotANumber, SparkplugType.DateTime, I64(1)), (NumberFault.NotANumber, SparkplugType.DataSet, Bytes(17, [])),
        (NumberFault.NotANumber, SparkplugType.Template, Bytes(18, [])), (NumberFault.NotANumber, SparkplugType.Bytes, Bytes(16, [1])), (NumberFault.NotANumber, SparkplugType.FirstArray, Bytes(16, [1])),
        (NumberFault.WrongField, SparkplugType.Int32, F64(7)), (NumberFault.WrongField, SparkplugType.Double, I32(7)), (NumberFault.WrongField, SparkplugType.Float, Text(15, "7")),
        (NumberFault.WrongField, SparkplugType.Boolean, I32(1)), (NumberFault.WrongField, SparkplugType.UInt8, Flag(true)), (NumberFault.WrongField, SparkplugType.Double, Bytes(19, [])),
        (NumberFault.OutsideType, SparkplugType.Int8, I32(256)), (NumberFault.OutsideType, SparkplugType.Int8, I32(0xffffff7f)), (NumberFault.OutsideType, SparkplugType.Int16, I32(65536)),
        (NumberFault.OutsideType, SparkplugType.Int32, I64(1UL << 32)), (NumberFault.OutsideType, SparkplugType.UInt8, I32(256)), (NumberFault.OutsideType, SparkplugType.UInt16, I32(65536)),
        (NumberFault.OutsideType, SparkplugType.UInt32, I64(1UL << 32)), (NumberFault.OutsideType, SparkplugType.Int64, I32(0xffffffff)),
        (NumberFault.NotFinite, SparkplugType.Double, F64(double.NaN)), (NumberFault.NotFinite, SparkplugType.Double, F64(double.NegativeInfinity)), (NumberFault.NotFinite, SparkplugType.Float, F32(float.NaN)),
        (NumberFault.NotFinite, SparkplugType.Float, F32(float.PositiveInfinity)),
    ];

    [Fact]
    public void What_is_no_number_of_its_type_is_refused_by_name()
    {
        foreach (var (fault, type, value) in Wrong) Assert.Equal((type, fault), (type, Of(type, value).Fault));
        Assert.Equal(Enum.GetValues<NumberFault>().Except([NumberFault.None]), Wrong.Select(w => w.Fault).Distinct().Order());
    }

    [Fact]
    public void Any_integer_of_a_type_round_trips_as_twos_complement() => Gen.Long.Sample(
        value =>
        {
            Assert.Equal((NumberFault.None, (double)value), Of(SparkplugType.Int64, I64((ulong)value)));
            Assert.Equal((NumberFault.None, (double)(int)value), Of(SparkplugType.Int32, I32((uint)(int)value)));
            Assert.Equal((NumberFault.None, (double)(short)value), Of(SparkplugType.Int16, I32((uint)(short)value)));
            Assert.Equal((NumberFault.None, (double)(sbyte)value), Of(SparkplugType.Int8, I32((uint)(sbyte)value)));
        },
        iter: 20_000);
}
