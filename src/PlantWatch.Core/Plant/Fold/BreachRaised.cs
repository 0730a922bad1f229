using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Chlorine that an incident's plan asks for lies over the limits of a pool on purpose, while nobody bathes. Such a line is bound to the incident and owes nothing by a clock of its own until that is over.</summary>
internal static class BreachRaised
{
    // Dosed by hand into a large body of water it overshoots before it is mixed (common practice).
    private const double Overshoot = 1.5;

    private static readonly string[] OfChlorine = [Measurand.FreeChlorine.Key(), Measurand.TotalChlorine.Key(), Measurand.Orp.Key()];
    private static readonly string[] High = ["limit.above", "limit.above_closure", "limit.above_stop", "test.above_limit", "test.above_closure", "test.above_stop", "test.at_high_limit"];

    /// <summary>The incident for which it was raised; null when it was for none, or bathers may be in the water.</summary>
    public static Incident? For(Draft draft, string place, string quantity, BreachReading reading)
    {
        if (draft.Incidents.IsEmpty || !OfChlorine.Contains(quantity) || !High.Contains(reading.Cause.Code) || MayBeBathedIn(draft, place)) return null;
        return draft.Incidents.Values.Where(i => i.ClosesThePool && i.HappenedAt <= reading.At && Asks(draft, i, place, quantity, reading)).OrderBy(i => i.DeclaredAt).ThenBy(i => i.Id).FirstOrDefault();
    }

    /// <summary>A newer reading shows the breach: the line is bound to the incident that asks for what is read now, and to none where it is more or less than that.</summary>
    public static ExceptionLine AskedAgain(Draft draft, ExceptionLine line, string quantity, BreachReading reading)
    {
        var incident = For(draft, line.PoolId, quantity, reading);
        if (incident?.Id == line.IncidentId) return line;
        if (incident is null) return (line with { IncidentId = null }).With(new(StepKind.IncidentOver, reading.Id, reading.KnownAt, reading.KnownAt, reading.By));
        var step = StepOf(incident, reading.KnownAt);
        return (line with { IncidentId = incident.Id, Steps = line.Steps.RemoveAll(s => s.Kind == step.Kind && s.Id == step.Id) }).With(step);
    }

    /// <summary>An incident is over, or bathers come back: what is still outside is owed as any other.</summary>
    public static void Over(Draft draft, Func<ExceptionLine, bool> which, Guid act, string? by, Instant at)
    {
        foreach (var line in draft.Exceptions.Open)
            if (line.IncidentId is not null && which(line)) draft.Exceptions.Keep((line with { IncidentId = null }).With(new(StepKind.IncidentOver, act, at, at, by)), ExceptionChange.Acted, at);
    }

    /// <summary>How it is said.</summary>
    public static ExceptionStep StepOf(Incident incident, Instant at) =>
        new(StepKind.Incident, incident.Id, at, at, incident.DeclaredBy) { What = Reason.Of("exception.raised_for", System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(incident.Kind.ToString())) };

    private static bool MayBeBathedIn(Draft draft, string place)
    {
        if (draft.Index.Pool(place) is >= 0 and var pool) return draft.Pools[pool].Operation.MayBatheIn;
        foreach (var one in draft.Pools)
            if (one.Operation.MayBatheIn) return true;
        return false;
    }

    // More than the limits allow, and no more than is asked for.
    private static bool Asks(Draft draft, Incident incident, string place, string quantity, BreachReading reading)
    {
        var asked = IncidentTables.Of(incident.Authority, incident.Kind).SelectMany(row => row.Levels.IsDefaultOrEmpty ? [row.StartAt] : row.Levels.Select(l => l.MilligramsPerLitre)).DefaultIfEmpty().Max();
        if (asked <= Allowed(draft, draft.Index.Pool(place) is >= 0 and var own ? own : draft.Index.Pool(incident.PoolId))) return false;
        if (quantity == Measurand.Orp.Key()) return true;
        foreach (var fact in reading.Cause.Facts)
            if (fact.Number is { } value) return value <= Overshoot * asked;
        return false;
    }

    private static double Allowed(Draft draft, int pool)
    {
        var most = Stops.TryOf(draft.Plan, Measurand.FreeChlorine, out var stop, out _) ? stop.High : double.MaxValue;
        foreach (var bound in draft.Pools[pool].Limits.Bounds)
            if (bound.Quantity == Measurand.FreeChlorine.Limiting() && bound.High is { } high) most = Math.Min(most, high);
        return most;
    }
}
