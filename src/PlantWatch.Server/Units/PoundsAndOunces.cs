namespace PlantWatch.Server.Units;

/// <summary>A mass as a kitchen or store scale in pounds shows it: "9.35 oz", "2 lb 12 oz", "124 lb".</summary>
internal static class PoundsAndOunces
{
    private const double HalfOuncesBelowPounds = 10;
    private const double OuncesBelowPounds = 50;
    private const double LeastOunces = 0.01;

    public static string Say(double kilograms)
    {
        var ounces = kilograms / ExactUnits.KilogramsPerOunce;
        if (ounces == 0) return "0\u00a0lb";
        if (Rounding.Significant(ounces, 3) < ExactUnits.OuncesPerPound) return Ounces(Rounding.Significant(ounces, 3));
        var pounds = kilograms / ExactUnits.KilogramsPerPound;
        return pounds < OuncesBelowPounds
            ? Both(Rounding.ToStep(ounces, pounds < HalfOuncesBelowPounds ? 0.5 : 1))
            : Pounds(Rounding.Significant(pounds, 3));
    }

    private static string Both(double ounces)
    {
        var pounds = Math.Floor(ounces / ExactUnits.OuncesPerPound);
        var rest = ounces - (pounds * ExactUnits.OuncesPerPound);
        return rest == 0 ? Pounds(pounds) : Pounds(pounds) + '\u00a0' + Ounces(rest);
    }

    private static string Ounces(double ounces) => ounces < LeastOunces ? $"under {Rounding.Written(LeastOunces)}\u00a0oz" : Rounding.Written(ounces) + "\u00a0oz";

    private static string Pounds(double pounds) => Rounding.Written(pounds) + "\u00a0lb";
}
