using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Statistics;

/// <summary>How far two methods agree: the mean of their paired differences and the limits between which nearly all differences lie. Correlation is not agreement.</summary>
/// <param name="Bias">Mean difference, first less second.</param>
/// <param name="Sd">Standard deviation of the differences, n - 1 degrees of freedom.</param>
/// <param name="Width">Standard deviations from the bias to a limit.</param>
/// <param name="Count">Pairs.</param>
public sealed record Agreement(double Bias, double Sd, double Width, int Count)
{
    /// <summary>The width at which 95 % of normal differences lie within the limits.</summary>
    public const double Usual = 1.96;

    /// <summary>Compares in the way of Bland and Altman (Lancet i:307, 1986); three pairs at least, whose differences must differ.</summary>
    /// <param name="differences">First less second, pair by pair.</param>
    /// <param name="width">Standard deviations from the bias to a limit, above 0; the paper itself takes 2.</param>
    public static Finding<Agreement> Of(ReadOnlySpan<double> differences, double width = Usual)
    {
        if (!(width > 0 && double.IsFinite(width))) throw new ArgumentOutOfRangeException(nameof(width), width, "a width is above 0");
        if (differences.Length < 3) return new(Lack.TooFew);
        var mean = 0.0;
        foreach (var difference in differences)
        {
            if (!double.IsFinite(difference)) return new(Lack.NotFinite);
            mean += difference / differences.Length;
        }

        var squares = 0.0;
        foreach (var difference in differences) squares += (difference - mean) * (difference - mean);
        var sd = Math.Sqrt(squares / (differences.Length - 1));
        // What is left of equal numbers after rounding is no spread.
        return sd > 1e-12 * Math.Abs(mean) ? new(new Agreement(mean, sd, width, differences.Length)) : new(Lack.NoSpread);
    }

    /// <summary>Lower limit of agreement.</summary>
    public double Low => Bias - (Width * Sd);

    /// <summary>Upper limit of agreement.</summary>
    public double High => Bias + (Width * Sd);

    /// <summary>Standard error of the bias.</summary>
    public double BiasError => Sd / Math.Sqrt(Count);

    /// <summary>Standard error of a limit: s² (1 + width²/2) / n, which for a width of 2 is the paper's 3 s²/n.</summary>
    public double LimitError => Sd * Math.Sqrt((1 + (Width * Width / 2)) / Count);

    /// <summary>Where the bias lies, at a confidence.</summary>
    /// <param name="confidence">Between 0 and 1, such as 0.95.</param>
    public ValueRange BiasWithin(double confidence) => Around(Bias, BiasError, confidence);

    /// <summary>Where the lower limit lies, at a confidence.</summary>
    /// <param name="confidence">Between 0 and 1, such as 0.95.</param>
    public ValueRange LowWithin(double confidence) => Around(Low, LimitError, confidence);

    /// <summary>Where the upper limit lies, at a confidence.</summary>
    /// <param name="confidence">Between 0 and 1, such as 0.95.</param>
    public ValueRange HighWithin(double confidence) => Around(High, LimitError, confidence);

    private ValueRange Around(double value, double error, double confidence)
    {
        var half = StudentT.TwoSided(confidence, Count - 1) * error;
        return new(value - half, value + half);
    }
}
