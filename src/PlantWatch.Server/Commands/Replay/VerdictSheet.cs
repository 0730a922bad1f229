using System.Globalization;
using System.Text;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Commands.Replay;

/// <summary>Writes what the fold says of each probe that was asked about, when it says it, and which checks it would not believe.</summary>
internal sealed class VerdictSheet(IReadOnlySet<string> asked)
{
    private readonly Dictionary<string, Standing> _said = new(StringComparer.Ordinal);
    private readonly Dictionary<Guid, (Instant SampledAt, string Pool)> _checks = [];

    /// <summary>Rows of verdicts.csv.</summary>
    public StringBuilder Verdicts { get; } = new();

    /// <summary>Rows of doubted.csv.</summary>
    public StringBuilder Doubted { get; } = new();

    /// <summary>What a step said, and the state after it.</summary>
    public void Take(IEnumerable<RecordEntry> entries, CircuitState state)
    {
        foreach (var entry in entries)
        {
            switch (entry.Body)
            {
                case CheckEntry check: _checks[check.Check.Id] = (check.Check.SampledAt, check.Check.PoolId); break;
                case JudgementEntry { Judgement: var judgement }: Judged(entry.At, judgement, state); break;
                case StandingEntry standing: Row(entry.At, standing.ProbeId, state); break;
            }
        }
    }

    /// <summary>Something was done to a probe: what is thought of it may be another thing now.</summary>
    public void Look(Instant at, string probe, CircuitState state) => Row(at, probe, state);

    private void Judged(Instant at, Judgement judgement, CircuitState state)
    {
        Row(at, judgement.ProbeId, state, always: true);
        if (judgement.Verdict != Verdict.CheckSuspect || !_checks.TryGetValue(judgement.CheckId, out var check)) return;
        Doubted.Append(CultureInfo.InvariantCulture, $"{Time(check.SampledAt)},{check.Pool},{(judgement.Measurand == Measurand.Ph ? "ph" : judgement.Measurand == Measurand.Orp ? "free_chlorine" : judgement.Measurand.Key())}\n");
    }

    private void Row(Instant at, string id, CircuitState state, bool always = false)
    {
        if (!asked.Contains(id)) return;
        var probe = state.Probes.First(p => p.Id == id);
        // A cell without flow says nothing of the probe: what the tests called wrong stays so meanwhile.
        var standing = probe.Signal.Standing == Standing.CheckFunction && probe.Trust.Standing > Standing.Good ? probe.Trust.Standing : Standings.Worse(probe.Signal.Standing, probe.Trust.Standing);
        if (!always && _said.GetValueOrDefault(id) == standing) return;
        _said[id] = standing;
        var bias = probe.Trust.Bias;
        var word = Wording.Key(standing == Standing.Unknown ? Standing.Good : standing);
        Verdicts.Append(CultureInfo.InvariantCulture, $"{Time(at)},{id},{word},{(bias.IsKnown ? bias.Value : null):0.####},{(bias.IsKnown ? bias.StandardUncertainty : null):0.####}\n");
    }

    private static string Time(Instant at) => at.ToDateTimeOffset().UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
}
