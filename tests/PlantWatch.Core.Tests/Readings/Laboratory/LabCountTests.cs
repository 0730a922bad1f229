using PlantWatch.Core.Plans;
using PlantWatch.Core.Readings.Laboratory;

namespace PlantWatch.Core.Tests.Readings.Laboratory;

/// <summary>Counts as laboratories print them, and limits as codes state them: none in 100 mL, 100 in 1 mL, 1000 in a litre.</summary>
public sealed class LabCountTests
{
    [Theory]
    [InlineData(Organism.Legionella, 1000, 1000, 100)] // per L as the French order of 26 May 2021 states it, per 100 mL as DIN 19643-1 does
    [InlineData(Organism.PseudomonasAeruginosa, 5, 250, 2)]
    [InlineData(Organism.EscherichiaColi, 3, 100, 3)]
    [InlineData(Organism.ColonyCount, 120, 1, 120)]
    [InlineData(Organism.ColonyCount, 12000, 100, 120)]
    public void A_count_is_brought_to_the_volume_that_limits_speak_of(Organism organism, double count, double millilitres, double expected) =>
        Assert.Equal(expected, new LabCount(organism, count, CountSense.Counted, millilitres).PerBasis, 1e-12);

    [Theory]
    // None may be found in 100 mL: DIN 19643-1:2023-06 as tabulated on a hygiene laboratory's page.
    [InlineData(0, CountSense.NotDetected, 100, 0, LabVerdict.Inside)]
    [InlineData(0, CountSense.NotDetected, 250, 0, LabVerdict.Inside)]
    [InlineData(1, CountSense.Below, 100, 0, LabVerdict.Inside)]
    [InlineData(0, CountSense.Counted, 100, 0, LabVerdict.Inside)]
    [InlineData(1, CountSense.Counted, 100, 0, LabVerdict.Outside)]
    [InlineData(1, CountSense.Counted, 250, 0, LabVerdict.Outside)]
    [InlineData(0, CountSense.NotDetected, 10, 0, LabVerdict.NotProven)]
    [InlineData(10, CountSense.Below, 100, 0, LabVerdict.NotProven)]
    [InlineData(1, CountSense.Above, 100, 0, LabVerdict.Outside)]
    // 1000 a litre of the French order.
    [InlineData(1000, CountSense.Counted, 1000, 100, LabVerdict.Inside)]
    [InlineData(1010, CountSense.Counted, 1000, 100, LabVerdict.Outside)]
    [InlineData(500, CountSense.Above, 1000, 100, LabVerdict.NotProven)]
    [InlineData(1000, CountSense.Above, 1000, 100, LabVerdict.Outside)]
    [InlineData(2000, CountSense.Below, 1000, 100, LabVerdict.NotProven)]
    public void A_count_is_held_against_its_limit(double count, CountSense sense, double millilitres, double high, LabVerdict expected) =>
        Assert.Equal(expected, new LabCount(Organism.Legionella, count, sense, millilitres).Against(high));

    [Fact]
    public void What_no_report_can_say_is_no_count()
    {
        Assert.False(default(LabCount).IsPossible);
        Assert.False(new LabCount(Organism.Legionella, double.NaN, CountSense.Counted, 100).IsPossible);
        Assert.False(new LabCount(Organism.Legionella, -1, CountSense.Counted, 100).IsPossible);
        Assert.False(new LabCount(Organism.Legionella, 0, CountSense.Below, 100).IsPossible);
        Assert.False(new LabCount(Organism.Legionella, 4, CountSense.NotDetected, 100).IsPossible);
        Assert.True(new LabCount(Organism.Legionella, 4, CountSense.Below, 100).IsPossible);
    }
}
