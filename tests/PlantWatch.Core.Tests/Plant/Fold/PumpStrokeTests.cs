using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Plant.Fold;

public sealed class PumpStrokeTests
{
    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        Pumps = [Hall.Plan.Pumps[0] with { StrokesTopic = "hall/acid/strokes", MillilitresPerStroke = 0.4 }, Hall.Plan.Pumps[1]],
    };

    [Fact]
    public void Strokes_are_kept_as_a_series_and_counted_as_stored()
    {
        var result = Said(184223);

        Assert.Equal(("acid-pump/strokes", 184223), (Assert.Single(result.Readings).Series, result.Readings[0].Raw));
        Assert.Equal((184223, Quality.Received), (result.Next.Pumps[0].Strokes.Value, result.Next.Pumps[0].Strokes.Quality));
        Assert.Equal(result.Next.Ledger.Received, result.Next.Ledger.Stored);
    }

    [Fact]
    public void Less_than_no_stroke_is_refused_and_kept()
    {
        var result = Said(-1);

        Assert.Equal(RefusalReason.OutsideRange, Assert.Single(result.Refusals).Reason);
        Assert.Equal(Quality.NotReceived, result.Next.Pumps[0].Strokes.Quality);
    }

    private static StepResult Said(double strokes) => Step.Run(CircuitState.Of(Plan),
    [
        new PlanLoaded(Hall.Nine, Plan),
        new MessageArrived(Hall.Nine, "hall/acid/strokes", Encoding.UTF8.GetBytes(strokes.ToString(CultureInfo.InvariantCulture)), false, null),
    ]);
}
