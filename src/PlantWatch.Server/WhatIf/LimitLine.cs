using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using PlantWatch.Core.Plans;
using PlantWatch.Server.PlantFile;

namespace PlantWatch.Server.WhatIf;

/// <summary>A limit as one line of the plant file, to be copied by a person. PlantWatch never writes that file.</summary>
internal static class LimitLine
{
    private static readonly JsonSerializerOptions Quoting = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Of(LimitPlan limit)
    {
        var parts = new List<string> { $"measurand: {EnumWords<Core.Quantities.Measurand>.Word(limit.Measurand)}" };
        Number("low", limit.Low);
        Number("high", limit.High);
        Number("deadband", limit.Deadband);
        Number("on_delay_seconds", limit.OnDelay?.TotalSeconds);
        Number("off_delay_seconds", limit.OffDelay?.TotalSeconds);
        Words("reference_electrode", limit.ReferenceElectrode);
        Words("source", limit.Source);
        Words("loosened_by", limit.LoosenedBy);
        Words("loosened_why", limit.LoosenedWhy);
        return $"- {{ {string.Join(", ", parts)} }}";

        void Number(string key, double? value)
        {
            if (value is { } number) parts.Add($"{key}: {number.ToString("0.######", CultureInfo.InvariantCulture)}");
        }

        // What JSON quotes, YAML reads the same between double quotes.
        void Words(string key, string? text)
        {
            if (text is not null) parts.Add($"{key}: {JsonSerializer.Serialize(text, Quoting)}");
        }
    }
}
