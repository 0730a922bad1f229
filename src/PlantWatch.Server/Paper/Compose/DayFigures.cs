using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Live;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>The results of one quantity on one day: least, mean and most. A bound is least or most with its sign, and no part of a mean.</summary>
/// <param name="Results">Numbers and bounds.</param>
/// <param name="Unit">Their unit.</param>
internal sealed record DayFigures(IReadOnlyList<(double Value, Censoring Bound)> Results, string Unit)
{
    /// <summary>Of a measurand among tests; of combined chlorine what total and free give where it was not tested by itself.</summary>
    public static DayFigures Of(IEnumerable<StandingTest> tests, Measurand measurand, Wording words) => new(
        [.. tests.Select(t => Result(t.Check, measurand, words)).OfType<(double, Censoring)>()], measurand.Unit());

    /// <summary>Least, mean and most as cells; blank without any.</summary>
    public IEnumerable<Cell> Cells((double? Low, double? High) ends)
    {
        if (Results.Count == 0) return [Blank.Cell, Blank.Cell, Blank.Cell];
        var numbers = Results.Where(r => r.Bound == Censoring.None).Select(r => r.Value).ToArray();
        return [End(Results.MinBy(r => r.Value), ends), numbers.Length == 0 ? Dash.Cell : new Number(numbers.Average(), Unit), End(Results.MaxBy(r => r.Value), ends)];
    }

    private Number End((double Value, Censoring Bound) result, (double? Low, double? High) ends) =>
        new(result.Value, Unit) { Bound = result.Bound, Beyond = Figure.Side(result.Value, result.Bound, ends) };

    private static (double, Censoring)? Result(ManualCheck check, Measurand measurand, Wording words)
    {
        if (check.Result(measurand) is { } tested) return (tested.Value, tested.Censoring);
        return measurand == Measurand.CombinedChlorine && CombinedViews.Of(check, words) is { Value: { } combined } ? (combined, Censoring.None) : null;
    }
}
