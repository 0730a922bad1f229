using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>How strong a product is today, and how that is known.</summary>
/// <param name="Fraction">Strength today as a fraction by weight, of the substance or of available chlorine.</param>
/// <param name="Fresh">The same on the day it was labelled or assayed.</param>
/// <param name="RelativeUncertainty">Standard uncertainty as a part of the strength.</param>
/// <param name="Density">Density in kg/L; null for what is not liquid and has none stated.</param>
/// <param name="AgeDays">Days since the label or assay; null when the day is not known.</param>
/// <param name="Says">What has to be said of it.</param>
public sealed record ProductStrength(double Fraction, double Fresh, double RelativeUncertainty, double? Density, int? AgeDays, ImmutableArray<Reason> Says)
{
    // Labels and scales: 3 % (common practice). Without a label the usual grade is a guess.
    private const double OfLabel = 0.03, OfAssay = 0.02, OfUsualGrade = 0.10, OfUnstatedMeaning = 0.10;

    /// <summary>Works it out. Where the meaning of a hypochlorite's per cent is not stated the strongest reading is taken, so that the dose is the smaller one.</summary>
    /// <param name="plan">The product as the plant file has it.</param>
    /// <param name="facts">Facts of its kind.</param>
    /// <param name="today">Today on the site's calendar.</param>
    public static ProductStrength Of(ProductPlan plan, ProductFacts facts, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(facts);
        var says = ImmutableArray.CreateBuilder<Reason>();
        var (percent, on, relative) = (plan.Assay ?? plan.Strength, plan.Assay is null ? plan.StrengthOn : plan.AssayedOn, plan.Assay is null ? OfLabel : OfAssay);
        if (percent is null)
        {
            relative = OfUsualGrade;
            says.Add(Reason.Of("product.grade_usual", 100 * facts.DefaultGrade));
        }

        var (fresh, density) = ByWeight(plan, facts, percent);
        if (percent is not null && plan.Means == StrengthMeaning.Unknown && facts.Kind == ProductKind.SodiumHypochlorite)
        {
            relative = OfUnstatedMeaning;
            says.Add(Reason.Of("product.meaning_unstated"));
        }

        if (plan.FromBatch is { } batch && on is { } delivered) says.Add(Reason.Of("product.as_delivered", percent ?? 0, batch, delivered.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        int? age = on is { } day ? Math.Max(0, today.DayNumber - day.DayNumber) : null;
        if (facts.Kind != ProductKind.SodiumHypochlorite) return new(fresh, fresh, relative, density, age, says.ToImmutable());
        var left = Left(plan, fresh, density, age, says);
        return new(left * fresh, fresh, Combine(relative, HypochloriteDecay.UncertaintyOfLoss * (1 - left) / left), density, age, says.ToImmutable());
    }

    private static double Left(ProductPlan plan, double fresh, double? density, int? age, ImmutableArray<Reason>.Builder says)
    {
        if (age is not { } days)
        {
            says.Add(Reason.Of("product.age_unknown"));
            return 1;
        }

        var oldest = (int)HypochloriteDecay.ValidDays.High;
        var left = HypochloriteDecay.Left(1000 * fresh * (density ?? 1), Math.Min(days, oldest), plan.StoredAt ?? HypochloriteDecay.UsualStore);
        if (days > oldest) says.Add(Reason.Of("product.too_old", days, oldest));
        if (!left.IsKnown) says.Add(left.Why!);
        else if (left.Value < 0.995) says.Add(Reason.Of("product.strength_lost", 100 * (1 - left.Value), days, plan.StoredAt ?? HypochloriteDecay.UsualStore));
        return left.OrNull ?? 1;
    }

    private static (double Fraction, double? Density) ByWeight(ProductPlan plan, ProductFacts facts, double? percent)
    {
        if (percent is { } trade && plan.Means == StrengthMeaning.Trade)
        {
            var density = plan.Density ?? SolutionDensity.OfTradePercent(trade);
            return (trade / 100 / density, density);
        }

        var fraction = percent is not { } p ? facts.DefaultGrade
            : plan.Means == StrengthMeaning.SodiumHypochlorite ? p / 100 * ProductFacts.Of(ProductKind.SodiumHypochlorite).AvailableChlorineOfPure : p / 100;
        return (fraction, plan.Density ?? SolutionDensity.Of(facts.Kind, fraction));
    }

    private static double Combine(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
