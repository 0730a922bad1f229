namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>
/// What redox potential shows of chlorine: only how it changes, in the logarithm, at a level of this pool's own that wanders. Never milligrams.
/// Need falls as chlorine rises, by as much as a stroke moves both.
/// </summary>
/// <param name="chlorinePerStroke">By how much a stroke raises free chlorine, mg/L.</param>
internal sealed class RedoxSense(double chlorinePerStroke)
{
    // mV a decade of chlorine that platinum shows near 1 mg/L (common practice: 50 to 90; theory gives half).
    private const double Decade = 65;

    // Morris 1966 gives 7.5 at 28 degC.
    private const double HypochlorousAcid = 7.5;
    private const double LeastChlorine = 0.05;

    /// <summary>Free chlorine by the tests of late, mg/L; 1.5 before the first.</summary>
    public double UsualChlorine { get; set; } = 1.5;

    /// <summary>The need at which it usually stands, in strokes a minute.</summary>
    public double UsualNeed { get; set; }

    /// <summary>How much the probe's level wanders, in mV over the root of a minute.</summary>
    public double Drift { get; set; } = 0.25;

    /// <summary>Free chlorine at a need, mg/L.</summary>
    public double Chlorine(double need, double fall) => Math.Max(LeastChlorine, UsualChlorine - ((need - UsualNeed) * chlorinePerStroke / fall));

    /// <summary>Chlorine against the usual; a factor of ten at most either way.</summary>
    public double Share(double need, double fall) => Math.Clamp(Chlorine(need, fall) / UsualChlorine, 0.1, 10);

    /// <summary>Redox potential as it would be were all chlorine hypochlorous acid, mV.</summary>
    public static double WithoutPh(double orp, double ph) => orp + (Decade * Math.Log10(1 + Math.Pow(10, ph - HypochlorousAcid)));

    public void Keep(Tape tape) => (UsualChlorine, UsualNeed, Drift) = (tape.Next(UsualChlorine), tape.Next(UsualNeed), tape.Next(Drift));

    /// <summary>Takes a sample in; returns its log likelihood.</summary>
    public double See(ref LoopBelief belief, double fall, double orp, double variance)
    {
        var chlorine = Chlorine(belief.V, fall);
        var slope = chlorine <= LeastChlorine ? 0 : -Decade / Math.Log(10) / chlorine * chlorinePerStroke / fall;
        return belief.See(orp - belief.W - (Decade * Math.Log10(chlorine)), slope, 1, variance);
    }
}
