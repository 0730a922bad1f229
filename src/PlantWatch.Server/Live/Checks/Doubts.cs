using PlantWatch.Core.Probes;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>Which checks are doubted as things stand now: what was doubted at first counts once its repeat has confirmed it.</summary>
internal sealed class Doubts
{
    private readonly Dictionary<Guid, PairedCheck> _kept;
    private readonly HashSet<Guid> _confirmed = [];

    /// <param name="trust">The trust: it knows of the newest checks how they stand.</param>
    /// <param name="newest">Judgements, newest first: of older checks they say what their repeat said.</param>
    public Doubts(ProbeTrust trust, IReadOnlyList<Judged> newest)
    {
        _kept = trust.Pairs.ToDictionary(p => p.CheckId);
        for (var i = 0; i + 1 < newest.Count; i++)
            if (newest[i].Judgement.Reasons.Any(r => r.Code == "trust.repeat_confirms")) _confirmed.Add(newest[i + 1].Judgement.CheckId);
    }

    /// <summary>True for a check that is set aside.</summary>
    public bool Of(Judged j) => _kept.TryGetValue(j.Judgement.CheckId, out var pair)
        ? pair.Doubted
        : j.Judgement.Verdict == Verdict.CheckSuspect && !_confirmed.Contains(j.Judgement.CheckId);
}
