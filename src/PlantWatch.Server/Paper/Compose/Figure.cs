using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>Results of tests as cells.</summary>
internal static class Figure
{
    /// <summary>A quantity of a test, with what stood there before it was corrected; blank where it never was tested.</summary>
    public static Cell Of(StandingTest test, Measurand measurand, LimitsInForce limits, Wording words)
    {
        Cell cell = Blank.Cell;
        foreach (var entry in test.Before.Reverse().Append(test.Entry)) cell = After(cell, Of(entry.Check.Result(measurand), limits, words));
        return cell;
    }

    /// <summary>What stands after a correction. What did not change is not struck, and what is gone leaves a dash.</summary>
    public static Cell After(Cell before, Cell now) =>
        Same(before, now) ? before : before is Blank ? now : now is Blank ? new Dash { Was = before } : now with { Was = before };

    /// <summary>A result with its method and uncertainty.</summary>
    public static Cell Of(TestResult? result, LimitsInForce limits, Wording words) => result is null ? Blank.Cell : new Number(result.Value, result.Measurand.Unit())
    {
        Bound = result.Censoring,
        U = MethodUncertainty.Of(result) is { IsKnown: true } known ? known.Expanded : null,
        Beyond = Side(result.Value, result.Censoring, limits.Ends(result.Measurand)),
        Note = Method(result, words),
    };

    /// <summary>Outside for certain: a bound counts only where all that it leaves open is outside.</summary>
    public static Beyond Side(double value, Censoring bound, (double? Low, double? High) ends) =>
        bound != Censoring.Above && (bound == Censoring.Below ? value <= ends.Low : value < ends.Low) ? Beyond.Below
        : bound != Censoring.Below && (bound == Censoring.Above ? value >= ends.High : value > ends.High) ? Beyond.Above : Beyond.None;

    private static string Method(TestResult result, Wording words) => PaperWords.And(
        words.PaperWord("method", result.Method), result.Dilution > 1 ? words.Paper("diluted", result.Dilution) : null, result.Look == CellLook.None ? null : words.PaperWord("look", result.Look));

    private static bool Same(Cell a, Cell b) => (a, b) switch
    {
        (Number x, Number y) => x.Value.Equals(y.Value) && x.Bound == y.Bound && x.Note == y.Note,
        (Text x, Text y) => x.Says == y.Says,
        (When x, When y) => x.At == y.At,
        (Blank or Dash, Blank or Dash) => true,
        _ => false,
    };
}
