namespace PlantWatch.Server.Api;

/// <summary>An amount for people: the SI figure, and what the plant's own units say.</summary>
/// <param name="Value">The figure in SI.</param>
/// <param name="Unit">Its unit: kg, L, m3, degC, mg/L, m3/h or m/h.</param>
/// <param name="Text">In the units of the plant, rounded to what can be measured out: "1.25 kg", "2 lb 12 oz", "28 US fl oz".</param>
/// <param name="InSi">The same in SI, to stand beside it; equal to <paramref name="Text"/> in a metric plant.</param>
public sealed record Amount(double Value, string Unit, string Text, string InSi)
{
    /// <summary>Both, for a sentence: "2 lb 12 oz (1.25 kg)".</summary>
    public override string ToString() => Text == InSi ? Text : $"{Text} ({InSi})";
}
