using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Loop;
using PlantWatch.Server.WhatIf;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Api;

/// <summary>Reads changed limits out of a request, all of them at once: a person mends the fields in one go. What a plant file is held against, is asked after this.</summary>
internal static class WhatIfLimitRequests
{
    /// <summary>How many limits may be changed at once.</summary>
    public const int Most = 10;

    private const string OwnSource = "the plant's own";

    public static bool TryRead(IReadOnlyList<WhatIfLimit> asked, PlantHost host, Wording words, out IReadOnlyList<LimitChange> changes, out IReadOnlyList<FieldSaid> errors)
    {
        var (read, remarks) = (new List<LimitChange>(), new List<FieldRemark>());
        if (asked.Count == 0) remarks.Add(new("changes", Reason.Of("field.required")));
        for (var i = 0; i < asked.Count; i++) remarks.AddRange(One(asked[i], host, read).Select(r => r with { Field = $"changes[{i}].{r.Field}" }));
        (changes, errors) = (read, [.. remarks.Select(words.Say)]);
        return errors.Count == 0;
    }

    private static IEnumerable<FieldRemark> One(WhatIfLimit asked, PlantHost host, List<LimitChange> read)
    {
        if (asked.Pool is not { } id || host.WithPool(id) is not { } worker) return [new("pool", Reason.Of("pool.unknown", asked.Pool ?? ""))];
        if (asked.Measurand is not { } measurand) return [new("measurand", Reason.Of("field.required"))];
        if (read.Any(c => c.Pool == id && c.Measurand == measurand)) return [new("measurand", Reason.Of("what_if.limit_twice"))];
        var change = new LimitChange(id, Limit(asked, measurand, worker.State, id));
        read.Add(change);
        return Looser.Objections(change, worker.State);
    }

    // What is not asked for is as it stands: the document, and the electrode that mV are against.
    private static LimitPlan Limit(WhatIfLimit asked, Measurand measurand, CircuitState state, string pool)
    {
        var own = state.Plan.Pools.First(p => p.Id == pool).Limits.FirstOrDefault(l => l.Measurand == measurand);
        var electrode = measurand != Measurand.Orp ? null : own?.ReferenceElectrode ?? state.Plan.Probes.FirstOrDefault(p => p.Measurand == Measurand.Orp && p.PoolId == pool)?.ReferenceElectrode;
        return new(measurand, asked.Low, asked.High, Text(asked.Source) ?? own?.Source ?? OwnSource, electrode, Text(asked.LoosenedBy), Text(asked.LoosenedWhy))
        {
            Deadband = asked.Deadband, OnDelay = Seconds(asked.OnDelaySeconds), OffDelay = Seconds(asked.OffDelaySeconds),
        };
    }

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    private static TimeSpan? Seconds(double? seconds) => seconds is { } given ? TimeSpan.FromSeconds(Math.Clamp(given, -1e6, 1e6)) : null;
}
