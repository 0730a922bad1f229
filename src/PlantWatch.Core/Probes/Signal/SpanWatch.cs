using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>Follows how far a signal wanders, a block of some hours at a time.</summary>
internal static class SpanWatch
{
    public static SignalSpan Next(SignalSpan span, Instant at, double raw)
    {
        if (!span.Since.IsSet) return span with { Since = at, Low = raw, High = raw };
        if (at - span.Since < SignalLimits.Block)
            return raw >= span.Low && raw <= span.High ? span : span with { Low = Math.Min(span.Low, raw), High = Math.Max(span.High, raw) };
        return Close(span) with { Since = at, Low = raw, High = raw };
    }

    private static SignalSpan Close(SignalSpan span)
    {
        var reach = span.High - span.Low;
        if (span.Blocks >= SignalLimits.BlocksNeeded && reach < SignalLimits.FlatShare * span.Usual) return span with { Flat = span.Flat + 1 };
        var weight = 1.0 / Math.Min(span.Blocks + 1, SignalLimits.BlocksNeeded);
        return span with
        {
            Flat = 0, Blocks = Math.Min(span.Blocks + 1, SignalLimits.BlocksNeeded), Usual = span.Usual + (weight * (reach - span.Usual)),
        };
    }
}
