using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>What is assumed of a kind of probe between two services. Common practice unless a source is named.</summary>
internal sealed record CorrectionModel(double WanderPerDay, double UByBuffers, double UByTests, double CorrectedFrom, double Pivot)
{
    /// <summary>The model of a measurand; null for what no service finds a gap of.</summary>
    public static CorrectionModel? Of(Measurand measurand) => measurand switch
    {
        // Wander: 44 deployments of a river probe show a median absolute drift of 0.10 pH a month; a random walk with that median has 0.10 / 0.6745 a month (Jones et al. 2022,
        // doi 10.1016/j.envsoft.2022.105364). What is worth correcting, 0.2 pH and 0.2 K: after USGS TM 1-D3, from memory.
        Measurand.Ph => new(0.148 * 0.148 / AMonth.Days, 0.02, 0.06, 0.2, 7),
        Measurand.Temperature => new(0.1 * 0.1 / AMonth.Days, 0.1, 0.2, 0.2, 0),
        Measurand.FreeChlorine => new(0.2 * 0.2 / AMonth.Days, 0.1, 0.1, 0.3, 0),
        Measurand.Orp => new(20.0 * 20.0 / AMonth.Days, 10, 15, 20, 0),
        Measurand.Conductivity => new(20.0 * 20.0 / AMonth.Days, 15, 30, 50, 0),
        _ => null,
    };
}
