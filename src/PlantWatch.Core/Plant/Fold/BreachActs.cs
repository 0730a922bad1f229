using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What was done about breaches, told from what is recorded anyway: nobody is asked twice.</summary>
internal static class BreachActs
{
    public static readonly string[] OfFilters = [BreachKeys.Bottom, Measurand.CombinedChlorine.Key(), "combined_per_free", "combined_per_total", .. Organisms.All.Select(o => o.Key())];
    private static readonly string[] OfChlorine = [Measurand.Bromine.Key(), Measurand.FreeChlorine.Key(), Measurand.TotalChlorine.Key(), Measurand.CombinedChlorine.Key(), Measurand.Orp.Key(), "combined_per_free", "combined_per_total", "cyanurate_per_free", BreachKeys.Bottom, .. Organisms.All.Select(o => o.Key())];
    private static readonly string[] OfAcid = [Measurand.Ph.Key(), Measurand.TotalAlkalinity.Key(), Measurand.Orp.Key()];

    /// <summary>A dose was given: it belongs to every line of its pool whose quantity it moves, also to one that was closed before the dose was typed in.</summary>
    public static void Given(Draft draft, GivenDose dose, Instant at)
    {
        if (dose.Corrects is { } wrong)
            foreach (var line in draft.Exceptions.All)
                if (line.Steps.Any(s => s.Kind == StepKind.Dose && s.Id == wrong)) draft.Exceptions.Keep(line.Without(wrong), ExceptionChange.Corrected, at);
        foreach (var line in draft.Exceptions.All)
            if (IsOf(draft, line, dose.PoolId) && IsWithin(line, dose.GivenAt) && Moves(dose, line.Quantity)) draft.Exceptions.Keep(line.With(StepOf(dose, at)), ExceptionChange.Acted, at);
    }

    /// <summary>Bathers were kept out, or the pool was filled anew.</summary>
    public static void Operated(Draft draft, string pool, PoolStateEntry said, Instant at)
    {
        if (said.Operation.MayBatheIn) BreachRaised.Over(draft, line => line.PoolId == pool || line.PoolId == draft.Plan.Id, said.Operation.ActId, said.Operation.By, at);
        var closes = said.Before is OperatingState.NotStated or OperatingState.Open && !said.Operation.MayBatheIn;
        if (!closes && !said.Refilled) return;
        var step = new ExceptionStep(said.Refilled ? StepKind.NewWater : StepKind.PoolClosed, said.Operation.ActId, at, at, said.Operation.By) { Text = said.Operation.Why };
        foreach (var line in draft.Exceptions.Open)
            if (line.PoolId == pool) draft.Exceptions.Keep(line.With(step), ExceptionChange.Acted, at);
    }

    /// <summary>A filter was washed: it takes out what clouds the water and feeds germs and chloramines, and moves no pH.</summary>
    public static void Washed(Draft draft, FilterEntry wash, Instant at)
    {
        foreach (var line in draft.Exceptions.Open)
            if (OfFilters.Contains(line.Quantity)) draft.Exceptions.Keep(line.With(new(StepKind.FilterWashed, wash.WashId, at, at, wash.By)), ExceptionChange.Acted, at);
    }

    /// <summary>What was done before the reading came in: whoever tests without signal doses first and types later.</summary>
    public static ExceptionLine LookBack(Draft draft, ExceptionLine line, Instant at)
    {
        foreach (var dose in draft.Doses)
            if (IsOf(draft, line, dose.PoolId) && dose.GivenAt >= line.Reading.At && Moves(dose, line.Quantity) && !line.RestsOn(dose.Id)) line = draft.Exceptions.Keep(line.With(StepOf(dose, at)), ExceptionChange.Acted, at);
        if (draft.Index.Pool(line.PoolId) is not (>= 0 and var pool) || draft.Pools[pool].Operation is not { MayBatheIn: false } run || run.Since < line.Reading.At || line.Steps.Any(s => s.Id == run.ActId)) return line;
        return draft.Exceptions.Keep(line.With(new(StepKind.PoolClosed, run.ActId, run.Since, at, run.By) { Text = run.Why }), ExceptionChange.Acted, at);
    }

    /// <summary>What a product is for moves the quantity.</summary>
    public static bool Moves(ProductKind kind, string quantity) => DosingAims.Of(kind) switch
    {
        DosingAim.AddsChlorine => OfChlorine.Contains(quantity),
        DosingAim.LowersPh or DosingAim.RaisesPh => OfAcid.Contains(quantity),
        _ => false,
    };

    private static ExceptionStep StepOf(GivenDose dose, Instant at) => new(StepKind.Dose, dose.Id, dose.GivenAt, at, dose.By) { What = ActFigures.Given(dose), Text = dose.Note, ReadyAt = dose.MixedAt };

    private static bool IsOf(Draft draft, ExceptionLine line, string pool) => line.PoolId == pool || line.PoolId == draft.Plan.Id;

    private static bool IsWithin(ExceptionLine line, Instant at) => at >= line.Reading.At && (line.IsOpen || at <= line.ClosedAt);

    // By what it was predicted to do; where nothing could be predicted, by what it is. Of a product of which nothing is known the person who gave it is believed.
    private static bool Moves(GivenDose dose, string quantity) =>
        dose.Predicted.Any(p => p.Measurand.Key() == quantity)
        || DosingAims.Of(dose.Kind) switch
        {
            DosingAim.AddsChlorine or DosingAim.LowersPh or DosingAim.RaisesPh => Moves(dose.Kind, quantity),
            _ => dose.Predicted.IsDefaultOrEmpty || (OfChlorine.Contains(quantity) && dose.Predicted.Any(p => p.Measurand == Measurand.FreeChlorine)),
        };
}
