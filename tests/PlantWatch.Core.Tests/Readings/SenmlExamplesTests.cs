using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using static PlantWatch.Core.Tests.Readings.Senml;

namespace PlantWatch.Core.Tests.Readings;

/// <summary>The worked examples of RFC 8428 (July 2018), section 5.1, as test vectors: names, numbers and resolved times are the RFC's.</summary>
public class SenmlExamplesTests
{
    private const string Device = "urn:dev:ow:10e2073a01080063";

    [Fact]
    public void Section_5_1_1_a_single_data_point_without_time()
    {
        var sample = Sample($$"""[{"n":"{{Device}}","u":"Cel","v":23.1}]""");

        Assert.Equal(new RawSample(Device, Instant.Never, 23.1, "Cel"), sample);
    }

    [Fact]
    public void Section_5_1_2_two_data_points_under_one_base_name()
    {
        var samples = Samples($$"""[{"bn":"{{Device}}:","n":"voltage","u":"V","v":120.1},{"n":"current","u":"A","v":1.2}]""");

        Assert.Equal([new(Device + ":voltage", Instant.Never, 120.1, "V"), new(Device + ":current", Instant.Never, 1.2, "A")], samples);
    }

    [Fact]
    public void Section_5_1_2_the_last_five_seconds_of_a_current_resolve_to_absolute_times()
    {
        const string name = "urn:dev:ow:10e2073a0108006:";
        var samples = Samples($$"""
            [
              {"bn":"{{name}}","bt":1.276020076001e+09,"bu":"A","bver":5,"n":"voltage","u":"V","v":120.1},
              {"n":"current","t":-5,"v":1.2}, {"n":"current","t":-4,"v":1.3}, {"n":"current","t":-3,"v":0.14e1},
              {"n":"current","t":-2,"v":1.5}, {"n":"current","t":-1,"v":1.6}, {"n":"current","v":1.7}
            ]
            """);

        Assert.Equal(new RawSample(name + "voltage", Unix(1276020076.001), 120.1, "V"), samples[0]);
        Assert.All(samples.Skip(1), sample => Assert.Equal((name + "current", "A"), (sample.Name, sample.Unit)));
        Assert.Equal([1.2, 1.3, 1.4, 1.5, 1.6, 1.7], samples.Skip(1).Select(sample => sample.Value));
        Assert.Equal(
            [1276020071_001, 1276020072_001, 1276020073_001, 1276020074_001, 1276020075_001, 1276020076_001],
            samples.Skip(1).Select(sample => sample.DeviceTime.UnixMicroseconds / 1000));
        Assert.Equal("2010-06-08T18:01:16.001Z", samples[^1].DeviceTime.ToString());
    }

    [Fact]
    public void Section_5_1_2_a_stream_of_humidity_takes_name_unit_and_time_from_the_first_record()
    {
        double[] values = [21.2, 21.3, 21.4, 21.4, 21.5, 21.5, 21.5, 21.6, 21.7];
        var records = values.Skip(1).Select((value, index) => FormattableString.Invariant($$"""{"t":{{(index + 1) * 10}},"v":{{value}}}"""));
        var samples = Samples($$"""[{"bn":"{{Device}}","bt":1.320067464e+09,"bu":"%RH","v":21.2},{{string.Join(',', records)}}]""");

        Assert.Equal(values.Select((value, index) => new RawSample(Device, Unix(1320067464 + (10 * index)), value, "%RH")), samples);
    }

    [Fact]
    public void Sections_5_1_3_and_5_1_4_the_pack_and_its_resolved_form_give_the_same_samples()
    {
        const string packed = $$"""
            [
              {"bn":"{{Device}}","bt":1.320067464e+09,"bu":"%RH","v":20}, {"u":"lon","v":24.30621}, {"u":"lat","v":60.07965},
              {"t":60,"v":20.3}, {"u":"lon","t":60,"v":24.30622}, {"u":"lat","t":60,"v":60.07965},
              {"t":120,"v":20.7}, {"u":"lon","t":120,"v":24.30623}, {"u":"lat","t":120,"v":60.07966}, {"u":"%EL","t":150,"v":98},
              {"t":180,"v":21.2}, {"u":"lon","t":180,"v":24.30628}, {"u":"lat","t":180,"v":60.07967}
            ]
            """;
        RawSample[] resolved =
        [
            At(64, "%RH", 20), At(64, "lon", 24.30621), At(64, "lat", 60.07965),
            At(124, "%RH", 20.3), At(124, "lon", 24.30622), At(124, "lat", 60.07965),
            At(184, "%RH", 20.7), At(184, "lon", 24.30623), At(184, "lat", 60.07966), At(214, "%EL", 98),
            At(244, "%RH", 21.2), At(244, "lon", 24.30628), At(244, "lat", 60.07967),
        ];
        var written = resolved.Select(s => FormattableString.Invariant(
            $$"""{"n":"{{s.Name}}","u":"{{s.Unit}}","t":{{s.DeviceTime.UnixMicroseconds / 1_000_000}},"v":{{s.Value}}}"""));

        Assert.Equal(resolved, Samples(packed));
        Assert.Equal(resolved, Samples($"[{string.Join(',', written)}]"));

        static RawSample At(int second, string unit, double value) => new(Device, Unix(1320067400 + second), value, unit);
    }

    [Fact]
    public void Section_5_1_5_only_the_number_and_the_switch_become_samples()
    {
        var items = Decode($$"""
            [{"bn":"{{Device}}:","n":"temp","u":"Cel","v":23.1},{"n":"label","vs":"Machine Room"},{"n":"open","vb":false},{"n":"nfv-reader","vd":"aGkgCg"}]
            """);

        Assert.Equal([RefusalReason.None, RefusalReason.SenmlWithoutNumber, RefusalReason.None, RefusalReason.SenmlWithoutNumber], items.Select(item => item.Refusal));
        Assert.Equal(23.1, items[0].Sample.Value);
        // Section 12.1: a switch is 0 or 1 of the unit "/".
        Assert.Equal(new RawSample(Device + ":open", Instant.Never, 0, "/"), items[2].Sample);
        Assert.Equal(["#2 vs", "#4 vd"], [items[1].Detail, items[3].Detail]);
    }

    [Fact]
    public void Section_5_1_6_a_replaced_base_name_leaves_the_base_time_in_force()
    {
        var samples = Samples("""
            [
              {"bn":"2001:db8::2/","bt":1.320078429e+09,"n":"temperature","u":"Cel","v":25.2}, {"n":"humidity","u":"%RH","v":30},
              {"bn":"2001:db8::1/","n":"temperature","u":"Cel","v":12.3}, {"n":"humidity","u":"%RH","v":67}
            ]
            """);

        Assert.Equal(["2001:db8::2/temperature", "2001:db8::2/humidity", "2001:db8::1/temperature", "2001:db8::1/humidity"], samples.Select(s => s.Name));
        Assert.Equal([25.2, 30, 12.3, 67], samples.Select(s => s.Value));
        Assert.All(samples, sample => Assert.Equal(Unix(1320078429), sample.DeviceTime));
    }

    [Fact]
    public void Section_5_1_7_a_record_of_base_fields_alone_is_no_item()
    {
        var samples = Samples($$"""[{"bn":"{{Device}}:"},{"n":"temp","u":"Cel","v":23.1},{"n":"heat","u":"/","v":1},{"n":"fan","u":"/","v":0}]""");

        Assert.Equal([Device + ":temp", Device + ":heat", Device + ":fan"], samples.Select(s => s.Name));
        Assert.Equal([23.1, 1, 0], samples.Select(s => s.Value));
    }

    [Fact]
    public void Section_5_1_7_a_tenth_of_a_second_is_kept()
    {
        var samples = Samples("""
            [{"bt":1.320078429e+09,"bu":"/","n":"2001:db8::3","v":0.5},{"n":"2001:db8::4","v":0.5},{"n":"2001:db8::3","t":0.1,"v":0},{"n":"2001:db8::4","t":0.1,"v":0}]
            """);

        Assert.Equal([429_000, 429_000, 429_100, 429_100], samples.Select(s => (s.DeviceTime.UnixMicroseconds / 1000) - 1320078000_000));
    }

    [Fact]
    public void Section_4_4_a_field_that_is_not_known_is_passed_over()
    {
        var samples = Samples("""
            [{"bn":"a:","bt":1320078429,"l":"[{\"href\":\"humidity\"}]","deep":[{"x":[1,[2]]}],"n":"temperature","v":27.2,"u":"Cel"},{"n":"humidity","v":80,"u":"%RH"}]
            """);

        Assert.Equal([27.2, 80], samples.Select(s => s.Value));
    }
}
