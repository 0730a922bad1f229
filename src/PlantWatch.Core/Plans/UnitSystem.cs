namespace PlantWatch.Core.Plans;

/// <summary>The units in which the people of a site measure out water and products. Everything inside stays in SI: this is for words at the edge alone. The default is metric.</summary>
public enum UnitSystem
{
    /// <summary>m3, L, kg, degC, mg/L.</summary>
    Metric = 0,
    /// <summary>US gallons and fluid ounces, pounds, degF, ppm.</summary>
    Us,
    /// <summary>Imperial gallons and fluid ounces, pounds, degF, ppm. An imperial gallon is a fifth larger than a US one.</summary>
    Imperial,
}
