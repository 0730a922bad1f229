using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Fuzz;

/// <summary>An invented circuit with a topic for each decoder. What was mutated goes through its fold, and its sums must close after every batch.</summary>
internal sealed class FuzzPlant
{
    public const string Ph = "hall/ph";
    public const string Json = "hall/json";
    public const string Cbor = "hall/cbor";
    public const string AcidState = "hall/acid/state";

    private readonly List<PlantEvent> _batch = [];
    private CircuitState _state;
    private Instant _now = Target.Arrival;

    public FuzzPlant() => _state = Step.Run(CircuitState.Of(Plan with { Pools = [], Probes = [], Pumps = [] }), [new PlanLoaded(_now, Plan)]).Next;

    public Ledger Ledger => _state.Ledger;

    /// <summary>A message of no known packet, as QoS 0 brings it.</summary>
    public void Says(string topic, byte[] payload)
    {
        _now += TimeSpan.FromMicroseconds(1);
        _batch.Add(new MessageArrived(_now, topic, payload, Retained: false, Packet: null));
    }

    /// <summary>Folds what was said and a second that passes. Gives what does not add up; null when all does.</summary>
    public string? Fold()
    {
        _now += TimeSpan.FromSeconds(1);
        var (before, messages) = (_state.Ledger, _batch.Count);
        _batch.Add(new ClockTicked(_now));
        var result = Step.Run(_state, _batch);
        _batch.Clear();
        _state = result.Next;
        var sums = _state.Ledger;
        if (sums.Messages - before.Messages != messages) return $"{messages} messages went in, {sums.Messages - before.Messages} were counted";
        if (sums.Received != sums.Stored + sums.Duplicates + sums.Refused) return $"{sums.Received} received are not {sums.Stored} stored, {sums.Duplicates} duplicates and {sums.Refused} refused";
        if (sums.Refused - before.Refused != result.Refusals.Length) return $"{sums.Refused - before.Refused} refused, {result.Refusals.Length} kept";
        return null;
    }

    private static CircuitPlan Plan { get; } = new()
    {
        Id = "hall",
        Name = "Hall",
        TimeZone = "Europe/London",
        Pools = [new() { Id = "main", Name = "Main pool", Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 400 }],
        Probes =
        [
            Probe("ph", Measurand.Ph, Ph, PayloadFormat.Number, null), Probe("json-ph", Measurand.Ph, Json, PayloadFormat.SenmlJson, "hall:ph"),
            Probe("json-temperature", Measurand.Temperature, Json, PayloadFormat.SenmlJson, "hall:temperature"), Probe("cbor-ph", Measurand.Ph, Cbor, PayloadFormat.SenmlCbor, "hall:ph"),
            Probe("cbor-temperature", Measurand.Temperature, Cbor, PayloadFormat.SenmlCbor, "hall:temperature"),
        ],
        Pumps = [new() { Id = "acid-pump", Name = "Acid pump", PoolId = "main", ProductId = "acid", StateTopic = AcidState }],
    };

    private static ProbePlan Probe(string id, Measurand measurand, string topic, PayloadFormat format, string? record) => new()
    {
        Id = id, Name = id, PoolId = "main", Measurand = measurand, Topic = topic, Format = format, RecordName = record, Range = measurand == Measurand.Ph ? new(0, 14) : new(0, 60),
    };
}
