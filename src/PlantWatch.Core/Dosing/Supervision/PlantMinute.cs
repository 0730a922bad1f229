using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>What was heard of a pool and its two pumps within one sample time; null is what was not heard.</summary>
/// <param name="At">The time of the samples.</param>
/// <param name="Ph">pH as the controller shows it.</param>
/// <param name="Orp">Redox potential in mV.</param>
/// <param name="AcidStrokes">Strokes of the acid pump in that minute.</param>
/// <param name="ChlorineStrokes">Strokes of the chlorine pump in that minute.</param>
/// <param name="Circulates">Water flows.</param>
/// <param name="AcidLitres">Content of the acid tank in litres.</param>
/// <param name="ChlorineLitres">Content of the chlorine tank in litres.</param>
public readonly record struct PlantMinute(
    Instant At, double? Ph, double? Orp, double? AcidStrokes, double? ChlorineStrokes, bool? Circulates, double? AcidLitres, double? ChlorineLitres)
{
    /// <summary>Strokes of a pump.</summary>
    public double? Strokes(DosedProduct pump) => pump == DosedProduct.Acid ? AcidStrokes : ChlorineStrokes;

    /// <summary>Content of its tank.</summary>
    public double? Litres(DosedProduct pump) => pump == DosedProduct.Acid ? AcidLitres : ChlorineLitres;
}
