using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>How the trend of a probe is followed, by what it measures and how much water it watches.</summary>
/// <param name="Block">Length of one block; the window is <see cref="ValueTrail.Length"/> of them.</param>
/// <param name="FastPerHour">Change an hour that neither dosing as usual nor bathers make, in the measurand's unit.</param>
/// <param name="Resolution">Standard deviation that the last digit alone brings in.</param>
public sealed record TrendSetting(TimeSpan Block, double FastPerHour, double Resolution)
{
    /// <summary>Water volume in m3 under which things happen in minutes: a spa with its bathers.</summary>
    public const double SmallCubicMetres = 10;

    /// <summary>Water volume in m3 from which a pool is slow.</summary>
    public const double LargeCubicMetres = 50;

    /// <summary>The setting for a probe; null for what has no trend worth an alarm.</summary>
    public static TrendSetting? Of(CircuitPlan circuit, ProbePlan probe)
    {
        var usual = Usual(probe.Measurand);
        if (double.IsNaN(usual)) return null;
        var volume = circuit.Pools.Where(p => probe.PoolId is null || p.Id == probe.PoolId).Sum(p => p.VolumeCubicMetres);
        // Not stated is not small: the larger window waits longer and raises less.
        var (seconds, factor) = volume is > 0 and < SmallCubicMetres ? (20, 3.0) : volume is > 0 and < LargeCubicMetres ? (40, 1.5) : (60, 1.0);
        // Two readings a block, so that one that comes late leaves no hole.
        var block = TimeSpan.FromSeconds(Math.Max(seconds, 2 * probe.Every.TotalSeconds));
        return new(block, usual * factor, Math.Pow(10, -probe.Measurand.Decimals()) / Math.Sqrt(12));
    }

    /// <summary>
    /// What a large pool does not do by itself in an hour: pH 0.6 (a stroke of acid adds 0.03), ORP 120 mV, temperature 2 degC (heaters of pools give a few tenths), free chlorine 2 mg/L (a busy
    /// session takes up to about one). Common practice, starting points to be tuned on the plant.
    /// </summary>
    private static double Usual(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.6,
        Measurand.Orp => 120,
        Measurand.Temperature => 2,
        Measurand.FreeChlorine => 2,
        _ => double.NaN,
    };
}
