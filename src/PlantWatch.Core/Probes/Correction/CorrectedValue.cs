using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>A value of the record with what was added to it. The default was corrected by nothing and is 0.</summary>
/// <param name="Value">The corrected value.</param>
/// <param name="Added">What was added to the value under the calibration in force.</param>
/// <param name="U">Standard uncertainty that the correction brings in; 0 where none was made.</param>
/// <param name="By">The correction; null where none holds.</param>
public readonly record struct CorrectedValue(double Value, double Added, double U, RecordCorrection? By);

/// <summary>Applies the corrections of the record. One pure method: the whole layer.</summary>
public static class CorrectionLayer
{
    /// <summary>The correction that holds for a probe at a time; null when none does. Two never overlap: the fold refuses it.</summary>
    public static RecordCorrection? At(ImmutableArray<RecordCorrection> corrections, string probeId, Instant at)
    {
        foreach (var correction in corrections)
            if (correction.ProbeId == probeId && correction.IsInForce && correction.Covers(at)) return correction;
        return null;
    }

    /// <summary>Corrects a value.</summary>
    /// <param name="corrections">The corrections of the circuit.</param>
    /// <param name="probeId">The probe.</param>
    /// <param name="at">When it was read.</param>
    /// <param name="value">The value under the calibration that was in force then.</param>
    public static CorrectedValue Apply(ImmutableArray<RecordCorrection> corrections, string probeId, Instant at, double value) =>
        At(corrections, probeId, at) is { } held ? Apply(held, at, value) : new(value, 0, 0, null);

    /// <summary>Corrects a value by one correction.</summary>
    public static CorrectedValue Apply(RecordCorrection correction, Instant at, double value)
    {
        ArgumentNullException.ThrowIfNull(correction);
        var added = correction.ShareAt(at) * correction.GapAt(value);
        return new(value + added, added, correction.UncertaintyAt(at), correction);
    }
}
