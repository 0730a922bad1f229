using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>How a probe is looked after, as the plant file says it.</summary>
public sealed class CareTests
{
    [Fact]
    public void Interval_limits_and_second_person_are_those_of_the_file() =>
        Assert.Equal(
            new CarePlan { Every = TimeSpan.FromDays(14), SlopePercent = new ValueRange(90, 103), OffsetMillivolts = 20, OrpMillivolts = 10, SecondPerson = false },
            Read("{ every_days: 14, slope_percent: [90, 103], offset_mv: 20, orp_mv: 10, second_person: false }").Plan!.Circuits[0].Probes[0].Care);

    [Fact]
    public void What_is_left_out_is_common_practice()
    {
        Assert.Equal(CarePlan.Usual with { OrpMillivolts = 10 }, Read("{ orp_mv: 10 }").Plan!.Circuits[0].Probes[0].Care);
        Assert.Equal((30.0, 85.0, 105.0, 30.0, 15.0, true), (CarePlan.Usual.Every.TotalDays, CarePlan.Usual.SlopePercent.Low, CarePlan.Usual.SlopePercent.High, CarePlan.Usual.OffsetMillivolts, CarePlan.Usual.OrpMillivolts, CarePlan.Usual.SecondPerson));
    }

    [Theory]
    [InlineData("{ slope_percent: [105, 85] }", "expected the lower end first")]
    [InlineData("{ every_days: 0 }", "every_days")]
    [InlineData("{ second_person: perhaps }", "true or false")]
    [InlineData("{ every_day: 3 }", "every_days")]
    public void What_cannot_be_is_said_with_its_key(string care, string says) =>
        Assert.Contains(Read(care).Errors, e => e.ToString()!.Contains(says, StringComparison.Ordinal));

    private static PlantFileResult Read(string care) => PlantFileReader.Read($$"""
        site: { name: North Quay Pool, time_zone: Europe/London }
        circuits:
          - id: main
            name: Main circuit
            pools:
              - { id: main-pool, name: Main pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 425 }
            probes:
              - { id: main-ph, name: pH, pool: main-pool, measurand: ph, origin: raw, topic: quay/ph, format: number, range: [0, 14], calibration: {{care}} }
        """);
}
