using PlantWatch.Core.Statistics;
using PlantWatch.Server.Api;
using PlantWatch.Server.Charts;

namespace PlantWatch.Server.Live;

/// <summary>The figures of the picture of agreement, for whoever cannot see it.</summary>
internal static class AgreementViews
{
    public static AgreementView? Of(IEnumerable<ComparedPair> pairs)
    {
        double[] differences = [.. pairs.Where(p => !p.Doubted).Select(p => p.Difference)];
        return Agreement.Of(differences).OrNull is { } a ? new(a.Count, a.Bias, a.Low, a.High) : null;
    }
}
