using System.Diagnostics;
using PlantWatch.Core.Readings;

namespace PlantWatch.Fuzz;

/// <summary>What a hunt found.</summary>
/// <param name="Target">The decoder.</param>
internal sealed record Catch(Target Target)
{
    /// <summary>Payloads that were made and decoded.</summary>
    public long Mutations { get; set; }

    /// <summary>Of those, longer than 32 KiB.</summary>
    public long Large { get; set; }

    public long Readings { get; set; }

    /// <summary>Refused items, a reason at a time.</summary>
    public Dictionary<RefusalReason, long> Refused { get; } = [];

    /// <summary>The most memory that one payload cost, and how long it was.</summary>
    public (long Allocated, int Length) Dearest { get; set; }

    /// <summary>The largest share of what its length allows that one payload cost.</summary>
    public double MostOfAllowed { get; set; }

    /// <summary>The sums of the fold.</summary>
    public Ledger Ledger { get; set; } = new();

    public TimeSpan Took { get; set; }

    /// <summary>Every payload that went wrong, counted; the first ten with their bytes.</summary>
    public long Broken { get; set; }

    public List<string> Samples { get; } = [];
}

/// <summary>Mutates the seeds of a decoder again and again, and holds what comes of it against what may. What behaves as nothing before is mutated further.</summary>
internal sealed class Hunt(Target target, int seed)
{
    // A little over the largest payload that is decoded: the door hands over no more than that anyway.
    private const int Longest = (64 * 1024) + 512;
    private const int MostKept = 512;
    private const int LongestKept = 2048;
    private const int Batch = 64;

    private readonly Mutator _mutator = new(seed, target.Dictionary, Longest);
    private readonly Examination _examination = new();
    private readonly FuzzPlant _plant = new();
    private readonly List<byte[]> _kept = [.. target.Seeds];
    private readonly HashSet<ulong> _seen = [];
    private readonly Catch _catch = new(target);

    /// <summary>Runs so many mutations.</summary>
    /// <param name="mutations">How many.</param>
    /// <param name="told">Told now and then how many are done.</param>
    public Catch Run(long mutations, Action<long>? told = null)
    {
        // What a type allocates when it is used for the first time is no property of a payload.
        foreach (var payload in target.Seeds) Attempt(() => target.Decode(payload, []));
        var watch = Stopwatch.StartNew();
        foreach (var payload in target.Seeds) One(payload);
        for (var i = 1L; i <= mutations; i++)
        {
            One(_mutator.Mutate(Any(), Any()).ToArray());
            if (i % Batch == 0 || i == mutations) Fold();
            if (i % 100_000 == 0) told?.Invoke(i);
        }

        (_catch.Mutations, _catch.Ledger, _catch.Took) = (mutations, _plant.Ledger, watch.Elapsed);
        return _catch;
    }

    // Half of the time from what is known to be good for something.
    private byte[] Any() => _mutator.Below(2) == 0 ? target.Seeds[_mutator.Below(target.Seeds.Count)] : _kept[_mutator.Below(_kept.Count)];

    private void One(byte[] payload)
    {
        var fault = _examination.Fault(target, payload);
        if (fault is null && _mutator.Below(64) == 0) fault = _examination.Differs(target, payload);
        if (fault is not null) Break(fault, payload);
        Count(payload);
        Keep(payload);
        _plant.Says(target.Topic, payload);
    }

    private void Count(byte[] payload)
    {
        if (payload.Length > 32 * 1024) _catch.Large++;
        foreach (var item in _examination.Items)
        {
            if (item.IsSample) _catch.Readings++;
            else _catch.Refused[item.Refusal] = _catch.Refused.GetValueOrDefault(item.Refusal) + 1;
        }

        if (_examination.Allocated > _catch.Dearest.Allocated) _catch.Dearest = (_examination.Allocated, payload.Length);
        _catch.MostOfAllowed = Math.Max(_catch.MostOfAllowed, (double)_examination.Allocated / Examination.Allowed(payload.Length));
    }

    // Payloads that are answered alike are of one kind; one of each is enough to go on from.
    private void Keep(byte[] payload)
    {
        if (payload.Length > LongestKept) return;
        // What is refused as a whole says little, and there is no end of it.
        if (_examination.Items is [{ IsSample: false }] && _mutator.Below(64) != 0) return;
        var kind = (ulong)_examination.Items.Count;
        foreach (var item in _examination.Items.Take(6))
            kind = (((kind * 31) + (ulong)item.Refusal) * 127 + (ulong)item.Detail.Length) * 2 + (item.Sample.DeviceTime.IsSet ? 1UL : 0);
        if (!_seen.Add(kind)) return;
        if (_kept.Count < MostKept) _kept.Add(payload);
        else _kept[target.Seeds.Count + _mutator.Below(MostKept - target.Seeds.Count)] = payload;
    }

    private void Fold()
    {
        string? fault = null;
        if (Attempt(() => fault = _plant.Fold()) is { } threw) fault = $"the fold threw {threw}";
        if (fault is not null) Break(fault, []);
    }

    private static string? Attempt(Action what)
    {
        try
        {
            what();
            return null;
        }
        catch (Exception e)
        {
            return $"{e.GetType().Name}: {e.Message}";
        }
    }

    private void Break(string fault, byte[] payload)
    {
        _catch.Broken++;
        if (_catch.Samples.Count < 10) _catch.Samples.Add($"{target.Name}, seed {seed}: {fault}; {payload.Length} bytes {Convert.ToHexString(payload.AsSpan(0, Math.Min(payload.Length, 400)))}");
    }
}
