using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Dosing;

/// <summary>Holds a retest against a prediction. Agreement is a difference within its expanded uncertainty, k = 2 (GUM).</summary>
public static class ResponseJudge
{
    /// <summary>How long after mixing a check still tells of the dose (common practice): later on, bathers and pumps have changed the water.</summary>
    public static TimeSpan StillTells { get; } = TimeSpan.FromHours(24);

    /// <summary>The answer for one figure; null when the retest is only a bound.</summary>
    /// <param name="predicted">What was predicted.</param>
    /// <param name="retest">The result of the retest.</param>
    public static FigureResponse? Of(in PredictedChange predicted, TestResult retest)
    {
        var test = MethodUncertainty.Of(retest);
        if (!test.IsKnown) return null;
        var u = Math.Sqrt((test.StandardUncertainty * test.StandardUncertainty) + (predicted.BeforeUncertainty * predicted.BeforeUncertainty) + (predicted.ChangeUncertainty * predicted.ChangeUncertainty));
        return new(predicted.Measurand, predicted.After, test.Value, u, predicted.Disturbed ? ResponseWord.NotComparable : Word(predicted, test.Value, u));
    }

    private static ResponseWord Word(in PredictedChange predicted, double measured, double u)
    {
        if (Math.Abs(measured - predicted.After) <= 2 * u) return ResponseWord.AsPredicted;
        var (moved, wanted) = (measured - predicted.Before, predicted.Change);
        if (moved * wanted < 0 && Math.Abs(moved) > 2 * u) return ResponseWord.OtherWay;
        return moved * Math.Sign(wanted) > Math.Abs(wanted) ? ResponseWord.More : ResponseWord.Less;
    }
}
