using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;

namespace PlantWatch.Core.Dosing.Supervision.Live;

/// <summary>One time in a pump's past: what was read.</summary>
/// <param name="At">When.</param>
/// <param name="Value">The number: a code of its state, or strokes.</param>
public readonly record struct PumpSaying(Instant At, double Value);

/// <summary>The past of a pump in spans of five minutes by the clock, for people to see: what it was driven to, and what pH should have done by that.</summary>
public static class PumpCourse
{
    /// <summary>Length of a span.</summary>
    public static TimeSpan Span { get; } = FiveMinutes.Span;

    // From where pH was seen the expected one goes on for so long; then it begins anew from what is seen, or the pool's daily whims would add up.
    private const int Anchored = 8 * 12;

    // What was said so long ago no longer tells what a pump does.
    private static readonly TimeSpan LongestSilence = TimeSpan.FromHours(1);

    /// <summary>The first span that begins at or before an instant.</summary>
    public static Instant First(Instant at) => FiveMinutes.Floor(at);

    /// <summary>Strokes in each span; null where nothing is known.</summary>
    /// <param name="pump">The pump.</param>
    /// <param name="said">Its strokes where it tells them, else its states, oldest first, from a while before.</param>
    /// <param name="from">Start of the first span.</param>
    /// <param name="count">How many spans.</param>
    /// <param name="now">Nothing is known beyond.</param>
    public static double?[] Strokes(PumpPlan pump, IReadOnlyList<PumpSaying> said, Instant from, int count, Instant now)
    {
        ArgumentNullException.ThrowIfNull(pump);
        ArgumentNullException.ThrowIfNull(said);
        var (strokes, known) = (new double[count], new double[count]);
        for (var i = 0; i < said.Count; i++)
        {
            var next = i + 1 < said.Count ? said[i + 1] : new PumpSaying(now, said[i].Value);
            var until = Instant.Earlier(next.At, said[i].At + LongestSilence);
            if (pump.StrokesTopic is null) Spread(said[i].At, until, Rate(said[i].Value), from, strokes, known);
            else if (pump.StrokesAre == StrokeCount.LastMinute) Spread(said[i].At - TimeSpan.FromMinutes(1), said[i].At, said[i].Value, from, strokes, known);
            else if (i + 1 < said.Count && next.At - said[i].At <= LongestSilence) Spread(said[i].At, next.At, Risen(said[i].Value, next.Value) / (next.At - said[i].At).TotalMinutes, from, strokes, known);
        }

        // What is not known of a span is taken to be as the rest of it.
        return [.. strokes.Zip(known, (s, k) => k >= 1 ? s / k * Span.TotalMinutes : (double?)null)];
    }

    /// <summary>What pH should be by the strokes, in each span; null where it is not known.</summary>
    /// <param name="supervisor">What was learned of the pool.</param>
    /// <param name="from">Start of the first span.</param>
    /// <param name="acid">Strokes of acid in each span.</param>
    /// <param name="chlorine">Strokes of chlorine in each span: hypochlorite is caustic.</param>
    /// <param name="seen">pH as it was seen.</param>
    public static double?[] ExpectedPh(PoolSupervisor supervisor, Instant from, double?[] acid, double?[] chlorine, double?[] seen)
    {
        ArgumentNullException.ThrowIfNull(supervisor);
        ArgumentNullException.ThrowIfNull(acid);
        ArgumentNullException.ThrowIfNull(chlorine);
        ArgumentNullException.ThrowIfNull(seen);
        var insight = supervisor.Insight(DosedProduct.Acid);
        var expected = new double?[acid.Length];
        if (!insight.IsJudged) return expected;
        var (lag, since) = ((int)Math.Round(insight.LagMinutes / Span.TotalMinutes), -1);
        for (var i = lag; i < acid.Length; i++)
        {
            var at = from + (i * Span);
            var begins = since < 0 || at.UnixMicroseconds / 60_000_000 % (Anchored * 5) == 0;
            if (begins) since = seen[i] is null ? -1 : i;
            if (since < 0) continue;
            if (since == i || acid[i - lag] is not { } strokes) (expected[i], since) = (seen[i], seen[i] is null ? -1 : since);
            else
            {
                var demand = insight.Usual[(int)(at.UnixMicroseconds / 3_600_000_000 % 24)] * Span.TotalMinutes;
                expected[i] = expected[i - 1] + (insight.MovesPerStroke * (demand + ((chlorine[i - lag] ?? 0) * supervisor.Pool.AcidPerChlorineStroke) - strokes));
            }
        }

        return expected;
    }

    private static double? Rate(double code) => PumpStateWords.ActivityOf(code) switch
    {
        PumpActivity.Running => DosedBy.StrokesPerMinute,
        PumpActivity.Stopped => 0,
        _ => null,
    };

    private static double Risen(double before, double after) => after >= before ? after - before : after;

    private static void Spread(Instant begins, Instant ends, double? rate, Instant from, double[] strokes, double[] known)
    {
        if (rate is not { } strokesPerMinute || ends <= begins) return;
        var first = Math.Max(0, (int)Math.Floor((begins - from) / Span));
        for (var i = first; i < strokes.Length && from + (i * Span) < ends; i++)
        {
            var minutes = (Instant.Earlier(ends, from + ((i + 1) * Span)) - Instant.Later(begins, from + (i * Span))).TotalMinutes;
            if (minutes <= 0) continue;
            strokes[i] += strokesPerMinute * minutes;
            known[i] += minutes;
        }
    }
}
