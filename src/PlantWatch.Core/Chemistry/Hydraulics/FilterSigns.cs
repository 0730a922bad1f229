namespace PlantWatch.Core.Chemistry;

/// <summary>What the pressure across a filter or strainer speaks for while less water goes round than designed.</summary>
public enum FilterSign
{
    /// <summary>Nothing: no pressure, no clean pressure, or no flow is known.</summary>
    Unknown = 0,
    /// <summary>It holds back more than clean: the water that is missing is lost here.</summary>
    Loaded,
    /// <summary>Somewhat more than clean would at this flow; it explains a part at most.</summary>
    InPart,
    /// <summary>No more than clean would at this flow: what throttles lies elsewhere.</summary>
    AsClean,
    /// <summary>Next to none: it is shut off or bypassed, or its gauge is dead.</summary>
    TakesNone,
}

/// <summary>Tells a loaded filter from what throttles elsewhere, by the pressure across it against what it showed clean.</summary>
/// <remarks>
/// The pressure across a bed is in proportion to the flow while that is slow (Darcy's law), across pipes, laterals and baskets to its square (Darcy-Weisbach): an unchanged filter shows
/// at q times its flow between q² and q times its pressure. What adds resistance inside a filter raises its pressure while the flow falls; what adds it elsewhere lowers both.
/// </remarks>
public static class FilterSigns
{
    // Gauges and meters of a plant room together (common practice).
    private const double Gauges = 0.1;

    // Below this part of what clean would show nothing goes through it: a gauge about nil shows no more than that (our choice, as large as what gauges are out by).
    private const double NextToNone = 0.1;

    /// <summary>What it speaks for.</summary>
    /// <param name="kilopascals">Pressure across it now, kPa.</param>
    /// <param name="clean">The same when clean, kPa.</param>
    /// <param name="flow">Circulation now, m3/h.</param>
    /// <param name="cleanFlow">Circulation when the clean pressure was read, m3/h.</param>
    public static FilterSign Of(double kilopascals, double clean, double flow, double cleanFlow)
    {
        if (!(clean > 0) || !(flow > 0) || !(cleanFlow > 0) || !double.IsFinite(kilopascals)) return FilterSign.Unknown;
        var q = Math.Min(1, flow / cleanFlow);
        if (kilopascals < NextToNone * clean * q * q) return FilterSign.TakesNone;
        if (kilopascals >= clean * (1 + Gauges)) return FilterSign.Loaded;
        return kilopascals <= clean * q * (1 + Gauges) ? FilterSign.AsClean : FilterSign.InPart;
    }
}
