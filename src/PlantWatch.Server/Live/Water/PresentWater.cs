using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>What is known of a pool's water now: a live probe where one may be believed, the newest test otherwise, each with its age and its doubt.</summary>
internal static class PresentWater
{
    /// <summary>The present figure of a measurand; null when there is none that is a number.</summary>
    public static BalanceInput? Of(CircuitState state, PoolPlan plan, PoolState pool, Measurand measurand) =>
        Live(state, plan, measurand) ?? Test(pool, measurand);

    /// <summary>The figure of a live probe; null without one.</summary>
    public static BalanceInput? Live(CircuitState state, PoolPlan plan, Measurand measurand) =>
        Source(state, plan, measurand) is { } probe
            ? new BalanceInput(measurand, Supported(probe, measurand), probe.Last.MeasuredAt, true, probe.Trust.Bias.IsKnown ? probe.Trust.Bias.Expanded : null, IsDoubted(probe), probe.Id)
            : null;

    /// <summary>The probe that speaks for the pool: its own before one in the mixed return, one in good standing before one in doubt.</summary>
    /// <remarks>What a silent probe said last is not live, and a corrected number may be one that no water can have.</remarks>
    public static ProbeState? Source(CircuitState state, PoolPlan plan, Measurand measurand)
    {
        ProbeState? best = null;
        var rank = int.MaxValue;
        for (var i = 0; i < state.Probes.Length; i++)
        {
            var (probe, wiring) = (state.Probes[i], state.Plan.Probes[i]);
            if (!Speaks(state, plan, measurand, probe, wiring) || Rank(probe, wiring) >= rank) continue;
            (best, rank) = (probe, Rank(probe, wiring));
        }

        return best;
    }

    private static bool Speaks(CircuitState state, PoolPlan plan, Measurand measurand, ProbeState probe, ProbePlan wiring) =>
        wiring.Measurand == measurand && (wiring.PoolId is null || wiring.PoolId == plan.Id) && probe.Last.Quality.IsGood()
        && !ProbeViews.IsSilent(state, wiring) && measurand.Possible().Contains(probe.Last.Value);

    // An own probe that the tests correct still knows more of this pool than one that sees the water of all.
    private static int Rank(ProbeState probe, ProbePlan wiring) => (Own: wiring.PoolId is not null, Doubted: IsDoubted(probe)) switch
    {
        (true, false) => 0,
        (true, true) when IsFlagged(probe) => 1,
        (false, false) => 2,
        (true, true) => 3,
        _ => 4,
    };

    /// <summary>What the tests support of a probe's number.</summary>
    /// <remarks>A probe that the tests call wrong would carry its error into every index; what the tests support is used, and said.</remarks>
    public static double Supported(ProbeState probe, Measurand measurand)
    {
        var possible = measurand.Possible();
        return IsFlagged(probe) ? Math.Clamp(probe.Last.Value - probe.Trust.Bias.Value, possible.Low, possible.High) : probe.Last.Value;
    }

    /// <summary>True when the tests call the probe wrong and say by how much.</summary>
    public static bool IsFlagged(ProbeState probe) =>
        probe.Trust is { Standing: Standing.MaintenanceRequired or Standing.OutOfSpecification, Bias.IsKnown: true };

    /// <summary>True when signal or tests speak against the probe.</summary>
    public static bool IsDoubted(ProbeState probe) => Standings.IsWorse(Standings.Worse(probe.Signal.Standing, probe.Trust.Standing), Standing.Good);

    private static BalanceInput? Test(PoolState pool, Measurand measurand) =>
        pool.Manual.TryGetValue(measurand, out var value) && value.Result.Censoring == Censoring.None
            ? new BalanceInput(measurand, value.Result.Value, value.SampledAt, false, MethodUncertainty.Of(value.Result).OrNull()?.U, value.Suspect, null)
            : null;
}
