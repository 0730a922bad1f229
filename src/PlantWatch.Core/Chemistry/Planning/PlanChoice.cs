using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a search found, with the means it had.</summary>
internal sealed record Searched(PlanFind? Find, Means[] Means, bool ByMass);

/// <summary>The plan that is taken, cut into goes.</summary>
internal sealed record Chosen(Searched Found, IReadOnlyList<CutStep>? Cut, ImmutableArray<Reason> Says, int Calls);

/// <summary>Takes the cheapest plan, or one that is a little dearer and spares many goes: every go costs somebody a turnover and a test.</summary>
/// <remarks>Soda ash with carbon dioxide is cheaper than bicarbonate by the kg, and takes a dozen goes of each within the limits of pH.</remarks>
internal sealed class PlanChoice(Speciation from, ImmutableArray<Aim> aims, PlanQuestion question)
{
    // A go more is worth as much as this part of the cheapest plan (common sense of the trade, not a figure of anybody's).
    private const double WorthOfAGo = 0.1;
    private const int FewGoes = 5;

    // A page is waited for: after so many questions to the equilibrium the best so far is taken.
    private const int EnoughCalls = 500;

    private readonly WaterModel _model = new(from);

    public Chosen Among(Searched cheapest)
    {
        var (best, bestCut) = (cheapest, Cut(cheapest));
        var (price, goes) = (Math.Max(cheapest.Find!.Price, 1e-9), bestCut?.Count);
        if (question.Wish == PlanWish.LeastCost) return new(best, bestCut, [], _model.Calls);
        for (var depth = 0; depth < 2 && (bestCut is null || bestCut.Count > FewGoes); depth++)
        {
            var before = best;
            for (var j = 0; j < before.Means.Length; j++)
            {
                if (_model.Calls > EnoughCalls || before.Means[j].Kind != MeansKind.Dose || before.Means[j].Turn is not (1 or 2) || before.Find!.Units[j] <= 1e-6) continue;
                if (Without(before, j) is not { } other || Cut(other) is not { } cut) continue;
                if (bestCut is null || Score(other, cut, price) < Score(best, bestCut, price)) (best, bestCut) = (other, cut);
            }

            if (ReferenceEquals(before, best)) break;
        }

        return new(best, bestCut, ReferenceEquals(best, cheapest) ? [] : [Dearer(best, bestCut!, price, goes)], _model.Calls);
    }

    private static Reason Dearer(Searched best, IReadOnlyList<CutStep> cut, double price, int? goes) => goes is { } many
        ? Reason.Of("plan.dearer_for_fewer_goes", 100 * ((best.Find!.Price / price) - 1), cut.Count, many)
        : Reason.Of("plan.dearer_for_safe_order", 100 * ((best.Find!.Price / price) - 1));

    private static double Score(Searched found, IReadOnlyList<CutStep> cut, double price) => (found.Find!.Price / price) + (WorthOfAGo * cut.Count);

    private Searched? Without(Searched found, int index)
    {
        Means[] means = [.. found.Means.Where((_, j) => j != index)];
        var find = new PlanSearch(_model, from.Composition, means, aims).Find();
        return find is { Missed.Count: 0 } && find.Shortfall <= found.Find!.Shortfall + 0.01 ? new(find, means, found.ByMass) : null;
    }

    private IReadOnlyList<CutStep>? Cut(Searched found) => new StepCutter(_model, new StepLimits(from, aims, question.Caps), question.CubicMetres / (question.PoolCubicMetres ?? question.CubicMetres)).Cut(from, found.Means, found.Find!.Units);
}
