using System.Globalization;

namespace PlantWatch.Server.Words;

/// <summary>Figures as people write them in a unit: pH with two decimals and no unit, temperature with one and a degree sign, a true minus; no digit that no instrument shows.</summary>
internal static class Figures
{
    /// <summary>The figure alone.</summary>
    public static string Of(double value, string unit) => Minus(value, Math.Abs(value).ToString(FormatOf(value, unit), CultureInfo.InvariantCulture));

    /// <summary>The figure beside those that a sentence holds it against: with a decimal more, or two, where it would read like one of them.</summary>
    public static string Beside(double value, IEnumerable<double> others, string unit)
    {
        var text = Of(value, unit);
        // Nil is nil, however little the other one is.
        var same = value == 0 ? [] : others.Where(o => Of(o, unit) == text).ToArray();
        var decimals = text.Contains('.', StringComparison.Ordinal) ? text.Length - 1 - text.IndexOf('.', StringComparison.Ordinal) : 0;
        for (var more = 1; more <= 2 && same.Length > 0; more++)
        {
            text = WithDecimals(value, decimals + more);
            same = [.. same.Where(o => WithDecimals(o, decimals + more) == text)];
        }

        return same.Length == 0 ? text : Of(value, unit);
    }

    /// <summary>The figure with its sign, for differences.</summary>
    public static string Signed(double value, string unit)
    {
        var text = Of(value, unit);
        return value > 0 && text.Any(c => c is >= '1' and <= '9') ? '+' + text : text;
    }

    /// <summary>The unit as it stands after a figure, with a space that does not break; nothing for pH, which has none.</summary>
    public static string After(string unit) => unit switch
    {
        "" or "pH" => "",
        "degC" => "\u00a0\u00b0C",
        "degF" => "\u00a0\u00b0F",
        "uS/cm" => "\u00a0\u00b5S/cm",
        "m3" or "m2" or "m3/h" or "m3/d" => "\u00a0" + unit.Replace("m3", "m\u00b3", StringComparison.Ordinal).Replace("m2", "m\u00b2", StringComparison.Ordinal),
        _ => "\u00a0" + unit,
    };

    private static string WithDecimals(double value, int decimals) => Minus(value, Math.Abs(value).ToString("F" + decimals, CultureInfo.InvariantCulture));

    private static string Minus(double value, string text) => value < 0 && text.Any(c => c is >= '1' and <= '9') ? '\u2212' + text : text;

    // Chlorine is written in hundredths and alkalinity in whole numbers, both in mg/L: the size of the number tells them apart.
    private static string FormatOf(double value, string unit) => unit switch
    {
        "pH" => "0.00",
        "degC" or "degF" => "0.0",
        "mg/L" => Math.Abs(value) < 10 ? "0.00" : Math.Abs(value) < 100 ? "0.#" : "0",
        "mV" or "uS/cm" or "kPa" => "0",
        "m3/h" => Math.Abs(value) < 100 ? "0.#" : "0",
        _ => "0.##",
    };
}
