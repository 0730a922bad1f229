using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Exceptions;

/// <summary>What the tests of the exceptions do over and over: a bench without duties, tests by hand, doses, words.</summary>
internal static class BreachBench
{
    public const string Chlorine = "main/free_chlorine";

    /// <summary>The hall's main pool and its limits: pH 7.2 to 7.6, free chlorine 1 to 3 mg/L, combined up to 1 mg/L, up to 30 degC.</summary>
    public static Bench New(Func<CircuitPlan, CircuitPlan>? change = null)
    {
        var plan = Hall.Plan.WithPool("main", p => p with { Duties = [] });
        return new(change is null ? plan : change(plan));
    }

    public static ExceptionLine? Open(this Bench bench, string key) => bench.State.Exceptions.SingleOrDefault(l => l.Key == key);

    public static ExceptionLine Closed(this Bench bench, string key) => bench.State.ClosedExceptions.Last(l => l.Key == key);

    /// <summary>A test of the main pool, sampled so long ago; its id.</summary>
    public static Guid Tests(this Bench bench, Measurand what, double value, double minutesAgo = 0, string who = "R. Example", Guid? corrects = null, string pool = "main", TestMethod method = TestMethod.Photometer)
    {
        var check = bench.CheckOf(Bench.Test(what, value, method)) with
        {
            PoolId = pool, SampledAt = bench.Now - TimeSpan.FromMinutes(minutesAgo), Who = who, Point = SamplePoint.Pool, Corrects = corrects, CorrectionReason = corrects is null ? null : "wrong line",
        };
        Assert.IsType<Outcome.CheckTaken>(bench.Check(check));
        return check.Id;
    }

    public static Guid TestsChlorine(this Bench bench, double value, double minutesAgo = 0, string who = "R. Example", Guid? corrects = null) => bench.Tests(Measurand.FreeChlorine, value, minutesAgo, who, corrects);

    public static Guid Doses(this Bench bench, ProductKind kind, double minutesAgo = 0, double mixedAfterMinutes = 30, string by = "M. Invented", Guid? corrects = null)
    {
        var id = TimeOrderedId.Derive(bench.Now, $"dose {bench.Events.Count}");
        Assert.IsType<Outcome.Done>(bench.Run(at => new DoseGiven(at, new GivenDose
        {
            Id = id, PoolId = "main", ProductId = "p", Product = kind.ToString(), Kind = kind, Kilograms = 2, GivenAt = at - TimeSpan.FromMinutes(minutesAgo), By = by, Corrects = corrects,
            MixedAt = at - TimeSpan.FromMinutes(minutesAgo) + TimeSpan.FromMinutes(mixedAfterMinutes), CorrectionReason = corrects is null ? null : "other drum",
        })));
        return id;
    }

    public static Outcome Says(this Bench bench, ExceptionLine line, string text, string by = "R. Example", double minutesAgo = 0, string note = "note") =>
        bench.Run(at => new ExceptionNoted(at, TimeOrderedId.Derive(Hall.Nine, note), line.Id, by, text, minutesAgo > 0 ? at - TimeSpan.FromMinutes(minutesAgo) : Instant.Never));

    public static void Minutes(this Bench bench, double minutes) => bench.Pass(TimeSpan.FromMinutes(minutes));
}
