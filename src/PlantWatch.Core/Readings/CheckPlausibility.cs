using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>What is wrong or odd about a check before any probe is asked.</summary>
/// <param name="Impossible">What cannot be; any of it refuses the check.</param>
/// <param name="Unlikely">What is odd; the check is kept with these remarks.</param>
/// <param name="Suspect">Measurands whose results are doubted for it. The unsafe reading of them stands until a repeat clears it.</param>
public sealed record Plausibility(ImmutableArray<FieldRemark> Impossible, ImmutableArray<FieldRemark> Unlikely, ImmutableArray<Measurand> Suspect)
{
    /// <summary>Those of the suspect that are doubted for what the check itself says, whatever came before it: only these may weigh on a probe, or the order of arrival would.</summary>
    public ImmutableArray<Measurand> InItself { get; init; } = [];

    /// <summary>True when the check must be refused.</summary>
    public bool Refuses => !Impossible.IsEmpty;

    /// <summary>True when the result of a measurand is doubted.</summary>
    public bool IsSuspect(Measurand measurand) => Suspect.Contains(measurand);
}

/// <summary>Looks a manual check over beside its fields: what is impossible refuses it, what is unlikely marks it.</summary>
public static class CheckPlausibility
{
    /// <summary>Looks the check over.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="pool">What is known of the pool; null when the circuit has no such pool.</param>
    /// <param name="check">The check.</param>
    /// <param name="now">Arrival.</param>
    /// <param name="liveOrp">The newest good ORP of the pool in mV at the sample time; null when there is none.</param>
    /// <param name="reagent">What the reagent of a result says against it; null when nothing is known of reagents.</param>
    public static Plausibility Of(CircuitPlan plan, PoolState? pool, ManualCheck check, Instant now, Millivolts? liveOrp, Func<TestResult, Reason?>? reagent = null)
    {
        var impossible = ImpossibleChecks.In(plan, check, now);
        if (!impossible.IsEmpty || pool is null) return new(impossible, [], []);
        var unlikely = new UnlikelyChecks(pool, check, now, liveOrp, reagent).Look();
        return new([], unlikely.Remarks, unlikely.Suspect) { InItself = unlikely.InItself };
    }
}
