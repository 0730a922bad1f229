using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.Tests.PlantFile;

/// <summary>Stops as the plant file edits them.</summary>
public sealed class StopKeyTests
{
    [Fact]
    public void What_the_file_says_of_a_stop_is_in_the_plan_of_every_circuit() =>
        Assert.Equal(
            [new StopPlan(Measurand.FreeChlorine, 0.5, null, "the licence"), new StopPlan(Measurand.Temperature, null, 42, "a bath by licence", "A. Reeve")],
            Read("{ measurand: free_chlorine, low: 0.5, why: the licence }", "{ measurand: temperature, high: 42, why: a bath by licence, by: A. Reeve }").Plan!.Circuits[0].Stops.AsEnumerable());

    [Fact]
    public void Without_the_key_the_stops_are_the_usual_ones() =>
        Assert.True(Stops.TryOf(Read().Plan!.Circuits[0], Measurand.Ph, out var ph, out _) && ph == Stops.Ph);

    [Theory]
    [InlineData("{ measurand: ph, low: 6.8 }", "why")]
    [InlineData("{ measurand: ph, why: so }", "never removed")]
    [InlineData("{ measurand: ph, high: 8.4, why: so }", "needs 'by'")]
    [InlineData("{ measurand: ph, high: 8.4, why: so, by: E. Tarn }", "an administrator among people, found 'E. Tarn'")]
    [InlineData("{ measurand: ph, high: 12, why: so, by: A. Reeve }", "ph can be set from 6 to 9")]
    [InlineData("{ measurand: free_chlorine, low: 0, why: so, by: A. Reeve }", "can be set from 0.1 to 20 mg/L")]
    [InlineData("{ measurand: free_chlorine, low: 10, why: so }", "found nothing between 10 and 10")]
    [InlineData("{ measurand: temperature, low: 4, why: so }", "no lower stop")]
    [InlineData("{ measurand: orp, low: 4, why: so }", "one of ph, free_chlorine, temperature")]
    [InlineData("{ measurand: ph, off: true, why: so }", "off")]
    public void What_cannot_be_is_said_with_its_line(string stop, string says) =>
        Assert.Contains(Read(stop).Errors, e => e.ToString()!.Contains(says, StringComparison.Ordinal) && e.ToString()!.StartsWith("line 6", StringComparison.Ordinal));

    [Fact]
    public void A_stop_is_edited_once() =>
        Assert.Contains(Read("{ measurand: ph, low: 6.8, why: so }", "{ measurand: ph, low: 6.9, why: so }").Errors, e => e.ToString()!.Contains("edited twice; the first is on line 6", StringComparison.Ordinal));

    private static PlantFileResult Read(params string[] stops) => PlantFileReader.Read($$"""
        site: { name: North Quay Pool, time_zone: Europe/London }
        people:
          - { id: a, name: A. Reeve, role: administrator }
          - { id: e, name: E. Tarn, role: engineer }
        stops: {{(stops.Length == 0 ? "[]" : "")}}
        {{string.Join("\n", stops.Select(s => $"  - {s}"))}}
        circuits:
          - id: main
            name: Main circuit
            pools:
              - { id: main-pool, name: Main pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 425 }
        """);
}
