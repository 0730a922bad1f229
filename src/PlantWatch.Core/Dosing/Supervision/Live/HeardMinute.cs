using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Dosing.Supervision.Live;

/// <summary>What was heard of a dosed water in a minute that is not over yet, or only just: sums, so that it does not matter in which order it came.</summary>
/// <param name="From">When it began.</param>
public sealed record HeardMinute(Instant From)
{
    /// <summary>How long it lasts.</summary>
    public static TimeSpan Span { get; } = TimeSpan.FromMinutes(1);

    /// <summary>Sum of pH.</summary>
    public double Ph { get; init; }

    /// <summary>How many of them.</summary>
    public int PhCount { get; init; }

    /// <summary>Sum of ORP in mV.</summary>
    public double Orp { get; init; }

    /// <summary>How many of them.</summary>
    public int OrpCount { get; init; }

    /// <summary>Strokes of the acid pump by what it said of its last minute.</summary>
    public double AcidStrokes { get; init; }

    /// <summary>How often it said so.</summary>
    public int AcidCount { get; init; }

    /// <summary>Strokes of the chlorine pump, likewise.</summary>
    public double ChlorineStrokes { get; init; }

    /// <summary>How often it said so.</summary>
    public int ChlorineCount { get; init; }

    /// <summary>Water flowed all the time that it was heard; null when it was not.</summary>
    public bool? Circulated { get; init; }

    /// <summary>Content of the acid tank in L, as last heard.</summary>
    public double? AcidLitres { get; init; }

    /// <summary>Content of the chlorine tank in L, as last heard.</summary>
    public double? ChlorineLitres { get; init; }

    /// <summary>The minute of an instant.</summary>
    public static Instant Of(Instant at) => Instant.FromUnixMicroseconds(at.UnixMicroseconds - (((at.UnixMicroseconds % 60_000_000) + 60_000_000) % 60_000_000));

    /// <summary>Strokes as said; null when nothing was.</summary>
    public double? Said(DosedProduct pump) => pump == DosedProduct.Acid ? (AcidCount == 0 ? null : AcidStrokes / AcidCount) : ChlorineCount == 0 ? null : ChlorineStrokes / ChlorineCount;

    /// <summary>The minute as the supervisor takes it.</summary>
    public PlantMinute Closed(double? acid, double? chlorine, bool? circulates) => new(
        From, PhCount == 0 ? null : Ph / PhCount, OrpCount == 0 ? null : Orp / OrpCount, acid, chlorine, circulates, AcidLitres, ChlorineLitres);
}
