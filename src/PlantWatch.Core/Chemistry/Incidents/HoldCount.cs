using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Counts a hold, a test at a time, in the order of sampling.</summary>
internal sealed class HoldCount(HoldFigure figure)
{
    /// <summary>Widely spaced places, the lowest point one of them, before the residual counts as measured through the pool (CDC, MMWR 50(20), 2001: three or more; published).</summary>
    public const int Places = 3;

    /// <summary>Within this time the tests of one round belong together (common practice).</summary>
    public static readonly TimeSpan Round = TimeSpan.FromMinutes(30);

    // Sums of products carry binary dust: 20 mg/L for 765 minutes is 15,300 to the letter.
    private const double Dust = 1e-6;

    private readonly ImmutableArray<JudgedTest>.Builder _judged = ImmutableArray.CreateBuilder<JudgedTest>();
    private readonly List<HoldTest> _round = [];
    private readonly List<Broken> _broken = [];
    private HoldTest? _last;
    private Instant _startedAt;
    private Instant _reachedAt;
    private double _credited;

    public void Take(HoldTest test)
    {
        var breaks = HoldBounds.Outside(figure, test);
        // What was out of range at a place stands until the same is measured there again and is in it, or a whole round through the pool is.
        _broken.RemoveAll(b => b.Where == test.Where && HoldBounds.Measures(test, b.What));
        _broken.AddRange(breaks.Select(b => new Broken(test.Where, b.What, b.Reason)));
        LookRound(test, breaks.IsEmpty);
        if (_broken.Count > 0) _last = null;
        var counts = _broken.Count == 0 && test is { LowestPoint: true, Residual: not null, Ph: not null, Celsius: not null };
        var why = _broken.Select(b => b.Why).Concat(test.WhyNot).Distinct().ToList();
        var gained = counts ? Credit(test, why) : 0;
        if (counts) _last = test;
        _judged.Add(new(test, counts, gained, [.. why]));
    }

    public HoldClock At(Instant now)
    {
        var clock = new HoldClock
        {
            Figure = figure, Credited = Math.Min(_credited, figure.Required), StartedAt = _startedAt, ReachedAt = _reachedAt,
            LastCountedAt = _last?.At ?? Instant.Never, LastResidual = _last?.Residual ?? 0, Tests = _judged.ToImmutable(),
        };
        if (_reachedAt.IsSet) return clock with { Word = HoldWord.Reached, Why = [Reason.Of("incident.reached")] };
        Reason[] broken = [.. _broken.Select(b => b.Why).Distinct()];
        if (!_startedAt.IsSet)
            return clock with { Word = HoldWord.NotStarted, Why = [.. broken, Reason.Of("incident.start_through_the_pool", figure.StartAt, Places, PlacesHeld(), Round.TotalMinutes)] };
        if (broken.Length > 0) return clock with { Word = HoldWord.Paused, Why = [.. broken] };
        if (_last is not { } last) return clock with { Word = HoldWord.Paused, Why = [Reason.Of("incident.test_at_lowest_point")] };
        // To the next whole second: a test at that time must prove it, not miss it by a rounding.
        var seconds = Math.Ceiling((60 * (figure.Required - _credited) / figure.WorthOfMinute(last.Residual!.Value)) - Dust);
        var end = last.At + TimeSpan.FromSeconds(seconds);
        var by = Instant.Earlier(end, last.At + figure.LongestGap);
        return now - last.At > figure.LongestGap
            ? clock with { Word = HoldWord.TestMissing, Why = [Reason.Of("incident.test_missing", (now - last.At).TotalMinutes, figure.LongestGap.TotalMinutes)] }
            : clock with { Word = HoldWord.Running, EarliestEnd = end, NextTestBy = by };
    }

    private void LookRound(HoldTest test, bool isInside)
    {
        if (!isInside) _round.Clear();
        else if (test.Residual is { } residual && residual >= figure.StartAt) _round.Add(test);
        _round.RemoveAll(t => test.At - t.At > Round);
        if (PlacesHeld() < Places || !_round.Exists(t => t.LowestPoint)) return;
        _broken.Clear();
        if (!_startedAt.IsSet) _startedAt = test.At;
    }

    private int PlacesHeld() => _round.Select(t => t.Where).Distinct(StringComparer.Ordinal).Count();

    private double Credit(HoldTest test, List<Reason> why)
    {
        if (_reachedAt.IsSet || _last is not { } last || !_startedAt.IsSet || test.At <= _startedAt) return 0;
        if (test.At - last.At > figure.LongestGap)
        {
            why.Add(Reason.Of("incident.gap_not_counted", (test.At - last.At).TotalMinutes, figure.LongestGap.TotalMinutes));
            return 0;
        }

        var gained = Worth(From(last, test), new(test.At, test.Residual!.Value));
        _credited += gained;
        if (_credited >= figure.Required - Dust) _reachedAt = test.At;
        return gained;
    }

    // The clock may have started between the two, by a test elsewhere: the lower of the two residuals from there on.
    private Residual From(HoldTest last, HoldTest test) => _startedAt > last.At
        ? new(_startedAt, Math.Min(last.Residual!.Value, test.Residual!.Value))
        : new(last.At, last.Residual!.Value);

    // A time at a residual is asked of the lower of the two: what was held throughout.
    private double Worth(Residual first, Residual second) => figure.Basis == HoldBasis.ContactTime
        ? ContactTime.Between(first, second)
        : (second.At - first.At).TotalMinutes * figure.WorthOfMinute(Math.Min(first.MilligramsPerLitre, second.MilligramsPerLitre));

    private sealed record Broken(string Where, string What, Reason Why);
}
