using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>A residual measured in the water at a time.</summary>
/// <param name="At">When the sample was taken.</param>
/// <param name="MilligramsPerLitre">Free chlorine, mg/L as Cl2.</param>
public readonly record struct Residual(Instant At, double MilligramsPerLitre);

/// <summary>Contact time: residual times minutes, in mg·min/L as Cl2, credited between tests that were made and nowhere else.</summary>
/// <remarks>
/// Between two tests a falling residual is taken to decay by first order, which gives their logarithmic mean: never more than the straight line between them and never
/// the start value. A rising one was dosed at a time that nobody noted, so the lower of the two is credited until the later test. Before the first test and after the
/// last there is no credit. Common practice asks to integrate and not to average; the choice of the lower bound is ours.
/// </remarks>
public static class ContactTime
{
    /// <summary>Residuals the sum is given for, mg/L as Cl2.</summary>
    public static ValueRange ValidResidual { get; } = new(0, 200);

    /// <summary>What a list of tests supports, in mg·min/L.</summary>
    /// <param name="tests">Tests in the order of their times.</param>
    public static Figure Supported(ImmutableArray<Residual> tests) => Sum(tests, Between);

    /// <summary>What straight lines between the tests enclose, in mg·min/L: the trapezoid of the handbooks, never less than <see cref="Supported"/>.</summary>
    /// <param name="tests">Tests in the order of their times.</param>
    public static Figure StraightLine(ImmutableArray<Residual> tests) =>
        Sum(tests, (a, b) => (b.At - a.At).TotalMinutes * (a.MilligramsPerLitre + b.MilligramsPerLitre) / 2);

    /// <summary>What two tests support between them, in mg·min/L; 0 when they are not in order.</summary>
    internal static double Between(Residual first, Residual second) =>
        second.At <= first.At ? 0 : (second.At - first.At).TotalMinutes * MeanSupported(first.MilligramsPerLitre, second.MilligramsPerLitre);

    // Near equality the quotient is 0/0: the lower of the two is then off by less than a thousandth, and to the safe side.
    private static double MeanSupported(double first, double second) =>
        second >= first || second <= 0 || first - second < 0.001 * first ? Math.Max(0, Math.Min(first, second)) : (first - second) / Math.Log(first / second);

    private static Figure Sum(ImmutableArray<Residual> tests, Func<Residual, Residual, double> between)
    {
        var inputs = new InputCheck();
        var sum = 0.0;
        for (var i = 0; i < tests.Length; i++)
        {
            inputs = inputs.Within("residual", tests[i].MilligramsPerLitre, ValidResidual, "mg/L");
            if (i == 0) continue;
            inputs = inputs.And(tests[i - 1].At <= tests[i].At, () => Reason.Of("contact.tests_out_of_order"));
            sum += between(tests[i - 1], tests[i]);
        }

        return inputs.Then(() => sum);
    }
}
