using System.Collections.Immutable;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Gathers what is heard of each supervised water minute by minute, hands the minutes to its supervisor when they are over, and keeps what it says.</summary>
/// <remarks>
/// A minute closes on the watermark, a minute after it is over, so that what comes in packs is in; what comes later still is ignored. A minute in which nothing was heard is none: nobody listened.
/// Numbers are the probes' own: what a correction does to them all alike is nothing that strokes do, and a correction that comes into force would look like something that did happen.
/// </remarks>
internal static class SupervisionFold
{
    private static readonly TimeSpan Grace = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan StillLive = TimeSpan.FromHours(12);

    /// <summary>A probe read something.</summary>
    public static void Hear(Draft draft, int probe, Instant at, double raw, double value, Quality quality, bool stepped)
    {
        for (var w = 0; w < draft.Dosing.Length; w++)
        {
            var water = draft.Index.Waters[w];
            if (probe == water.Ph && quality.IsGood()) Put(draft, w, at, m => m with { Ph = m.Ph + raw, PhCount = m.PhCount + 1 });
            else if (probe == water.Orp && quality.IsGood()) Put(draft, w, at, m => m with { Orp = m.Orp + raw, OrpCount = m.OrpCount + 1 });
            else if (probe == draft.Index.Circulation) Flows(draft, w, at, value >= draft.Plan.CirculationLost);
            else if (probe == draft.Index.FlowSwitches[water.Ph]) Flows(draft, w, at, raw >= 0.5);
            if (stepped && probe == water.Ph && draft.Dosing[w].Supervisor is not null) draft.Supervisor(w).ReadsOtherwise();
        }
    }

    /// <summary>A pump said what it does.</summary>
    public static void Turns(Draft draft, int pump, PumpActivity activity, Instant at)
    {
        foreach (var (w, product) in Of(draft, pump))
        {
            Put(draft, w, at, m => m);
            // Where strokes are told they say more, and what is never asked would only be kept.
            if (draft.Plan.Pumps[pump].StrokesTopic is null) draft.Dosing[w] = With(draft.Dosing[w], product, draft.Dosing[w].Book(product).Turn(activity, at));
        }
    }

    /// <summary>A pump told its strokes.</summary>
    public static void Stroked(Draft draft, int pump, double count, Instant at)
    {
        foreach (var (w, product) in Of(draft, pump))
        {
            var ofMinute = draft.Plan.Pumps[pump].StrokesAre == StrokeCount.LastMinute;
            Put(draft, w, at, m => !ofMinute ? m
                : product == DosedProduct.Acid ? m with { AcidStrokes = m.AcidStrokes + count, AcidCount = m.AcidCount + 1 } : m with { ChlorineStrokes = m.ChlorineStrokes + count, ChlorineCount = m.ChlorineCount + 1 });
            if (!ofMinute) draft.Dosing[w] = With(draft.Dosing[w], product, draft.Dosing[w].Book(product).Counted(count, at));
        }
    }

    /// <summary>A tank holds so many litres.</summary>
    public static void Holds(Draft draft, int pump, double litres, Instant at)
    {
        foreach (var (w, product) in Of(draft, pump))
            Put(draft, w, at, m => product == DosedProduct.Acid ? m with { AcidLitres = litres } : m with { ChlorineLitres = litres });
    }

    /// <summary>Free chlorine was tested by hand.</summary>
    public static void Tested(Draft draft, int pool, ManualCheck check, Plausibility plausibility, Instant now)
    {
        if (check.Result(Measurand.FreeChlorine) is not { Censoring: Censoring.None } test || plausibility.IsSuspect(Measurand.FreeChlorine) || now - check.SampledAt > StillLive) return;
        for (var w = 0; w < draft.Dosing.Length; w++)
            if (IsOf(draft, w, pool)) draft.Dosing[w] = draft.Dosing[w] with { Tests = draft.Dosing[w].Tests.Add(new(check.SampledAt, test.Value)) };
    }

    /// <summary>The water of a pool is not what it was: nothing learned or tested of it holds. What stands against its pumps does.</summary>
    public static void BeginAnew(Draft draft, int pool)
    {
        for (var w = 0; w < draft.Dosing.Length; w++)
        {
            if (IsOf(draft, w, pool)) draft.Dosing[w] = draft.Dosing[w].LearningAnew(PumpKept.Strokes, PumpKept.Strokes) with { Tests = [] };
        }
    }

    public static void Tick(Draft draft, Instant now)
    {
        for (var w = 0; w < draft.Dosing.Length; w++)
        {
            if (draft.Dosing[w].Supervisor is null) Begin(draft, w, now);
            var closed = false;
            while (draft.Dosing[w].Minutes is [var oldest, ..] && oldest.From + HeardMinute.Span + Grace <= now)
            {
                Close(draft, w, oldest);
                closed = true;
            }

            if (closed) PumpTroubleAlarms.Look(draft, w, now);
        }
    }

    private static void Begin(Draft draft, int w, Instant now)
    {
        var (water, watch) = (draft.Index.Waters[w], draft.Dosing[w]);
        var today = SiteClock.TryOf(draft.Plan.TimeZone, out var clock) ? clock.DayOf(now) : DateOnly.FromDateTime(now.ToDateTimeOffset().UtcDateTime);
        var pool = water.On(today, Alkalinity(draft, w));
        watch = watch with { Since = now, Supervisor = watch.Former?.Anew(pool, PumpKept.Strokes, PumpKept.Strokes) ?? new PoolSupervisor(pool), Former = null };
        foreach (var product in Both)
            if (watch.Book(product).Turns.IsEmpty && draft.Pumps[water.Pump(product).Index] is { HeardAt.IsSet: true } pump) watch = With(watch, product, watch.Book(product).Turn(pump.Activity, now));
        draft.Dosing[w] = watch;
    }

    private static double? Alkalinity(Draft draft, int w)
    {
        for (var i = 0; i < draft.Pools.Length; i++)
            if (IsOf(draft, w, i) && draft.Pools[i].Manual.TryGetValue(Measurand.TotalAlkalinity, out var test) && !test.Suspect && test.Result.Value > 0) return test.Result.Value;
        return null;
    }

    private static void Close(Draft draft, int w, HeardMinute minute)
    {
        var supervisor = draft.Supervisor(w);
        var watch = draft.Dosing[w];
        var circulates = minute.Circulated ?? watch.Circulates;
        var (acidBook, acid) = Strokes(draft, w, DosedProduct.Acid, minute);
        var (chlorineBook, chlorine) = Strokes(draft, w, DosedProduct.Chlorine, minute);
        foreach (var test in watch.Tests.Where(t => t.At <= minute.From)) supervisor.Test(test.MilligramsPerLitre);
        var said = supervisor.Take(minute.Closed(acid, chlorine, circulates));
        // What an earlier supervisor said stands until this one has learned enough to say it too, and does not.
        var standing = After(watch.Standing, said).RemoveAll(v => v.At < watch.Since && supervisor.CanJudge(v.Pump, v.Trouble));
        foreach (var over in said)
            if (!over.Raised && over.Trouble is PumpTrouble.LostPrime or PumpTrouble.Siphon or PumpTrouble.WeakProduct && !standing.Any(v => v.Pump == over.Pump)) supervisor.Mended(over.Pump);
        draft.Dosing[w] = watch with
        {
            Minutes = watch.Minutes.RemoveAt(0),
            ClosedTo = minute.From + HeardMinute.Span,
            Circulates = circulates,
            Acid = acidBook,
            Chlorine = chlorineBook,
            Tests = watch.Tests.RemoveAll(t => t.At <= minute.From),
            Standing = standing,
            AcidFlatOut = Flat(draft, w, standing, DosedProduct.Acid, acid, minute.PhCount == 0 ? null : minute.Ph / minute.PhCount, minute.From),
            ChlorineFlatOut = Flat(draft, w, standing, DosedProduct.Chlorine, chlorine, minute.OrpCount == 0 ? null : minute.Orp / minute.OrpCount, minute.From),
        };
    }

    private static (StrokeBook Book, double? Strokes) Strokes(Draft draft, int w, DosedProduct product, HeardMinute minute)
    {
        var (book, plan) = (draft.Dosing[w].Book(product), draft.Plan.Pumps[draft.Index.Waters[w].Pump(product).Index]);
        if (plan.StrokesTopic is null) return book.ByRunning(minute.From);
        return plan.StrokesAre == StrokeCount.LastMinute ? (book, minute.Said(product)) : book.ByCount();
    }

    private static FlatOut Flat(Draft draft, int w, ImmutableArray<PumpVerdict> standing, DosedProduct product, double? strokes, double? value, Instant at)
    {
        // Where its rate is known, flat out is three quarters of it and more: a controller may keep a part of each cycle (our choice, because what is asked for at three quarters for hours has as little left).
        const double most = 0.75;
        var before = draft.Dosing[w].Flat(product);
        // Whatever else is wrong with the pump explains it, and so do the hours that mend it.
        if (standing.Any(v => v.Pump == product)) return default;
        if (strokes is not { } s) return before;
        var (pump, supervisor) = (draft.Index.Waters[w].Pump(product), draft.Dosing[w].Supervisor!);
        var rated = draft.Plan.Pumps[pump.Index].LitresPerHour * 1000 / 60 / pump.MillilitresPerStroke;
        if (s < supervisor.Full(product) - 0.5 || s < most * rated) return default;
        return before.Since.IsSet ? before with { Then = before.Then ?? value, Now = value ?? before.Now } : new(at, value, value);
    }

    private static ImmutableArray<PumpVerdict> After(ImmutableArray<PumpVerdict> standing, IReadOnlyList<PumpVerdict> said)
    {
        foreach (var verdict in said)
        {
            standing = standing.RemoveAll(v => v.Pump == verdict.Pump && v.Trouble == verdict.Trouble);
            if (verdict.Raised) standing = standing.Add(verdict);
        }

        return standing;
    }

    private static void Flows(Draft draft, int w, Instant at, bool flows) => Put(draft, w, at, m => m with { Circulated = m.Circulated != false && flows });

    private static void Put(Draft draft, int w, Instant at, Func<HeardMinute, HeardMinute> put)
    {
        var (watch, from) = (draft.Dosing[w], HeardMinute.Of(at));
        if (from < watch.ClosedTo) return;
        var i = 0;
        while (i < watch.Minutes.Length && watch.Minutes[i].From < from) i++;
        draft.Dosing[w] = watch with
        {
            Minutes = i < watch.Minutes.Length && watch.Minutes[i].From == from ? watch.Minutes.SetItem(i, put(watch.Minutes[i])) : watch.Minutes.Insert(i, put(new(from))),
        };
    }

    private static bool IsOf(Draft draft, int w, int pool) => draft.Index.Waters[w].PoolId is not { } id || draft.Plan.Pools[pool].Id == id;

    private static DosingWatch With(DosingWatch watch, DosedProduct product, StrokeBook book) => product == DosedProduct.Acid ? watch with { Acid = book } : watch with { Chlorine = book };

    private static readonly DosedProduct[] Both = [DosedProduct.Acid, DosedProduct.Chlorine];

    private static List<(int Water, DosedProduct Product)> Of(Draft draft, int pump)
    {
        var found = new List<(int, DosedProduct)>();
        for (var w = 0; w < draft.Dosing.Length; w++)
            foreach (var product in Both)
                if (draft.Index.Waters[w].Pump(product).Index == pump) found.Add((w, product));
        return found;
    }
}
