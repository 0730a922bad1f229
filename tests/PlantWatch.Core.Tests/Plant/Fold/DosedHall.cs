using System.Globalization;
using System.Text;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Tests.Dosing.Supervision;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>The pool of <see cref="DosedPool"/> as a plant that speaks by messages, a minute at a time.</summary>
internal sealed class DosedHall
{
    // About 6.7 eq/L and 120 g/L.
    private static readonly ProductPlan Acid = new("acid", "acid", ProductKind.HydrochloricAcid, 22) { Means = StrengthMeaning.Weight };
    private static readonly ProductPlan Hypo = new("hypo", "hypo", ProductKind.SodiumHypochlorite, 12) { Means = StrengthMeaning.Trade };

    public static readonly CircuitPlan Plan = new()
    {
        Id = "hall", Name = "Hall", TimeZone = "UTC", TurnoverHours = 3,
        Pools = [new() { Id = "pool", Name = "Pool", Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 100 }],
        Probes =
        [
            new() { Id = "ph", Name = "pH", PoolId = "pool", Measurand = Measurand.Ph, Origin = SignalOrigin.PanelScaled, Topic = "ph", Range = new(0, 14), Every = TimeSpan.FromMinutes(1) },
            new() { Id = "orp", Name = "ORP", PoolId = "pool", Measurand = Measurand.Orp, Origin = SignalOrigin.PanelScaled, Topic = "orp", Range = new(0, 1200), ReferenceElectrode = "Ag/AgCl 3 M", Every = TimeSpan.FromMinutes(1) },
            new() { Id = "flow", Name = "Circulation", Measurand = Measurand.CirculationFlow, Topic = "flow", Range = new(0, 300), Every = TimeSpan.FromMinutes(1) },
        ],
        Pumps = [Pump("acid-pump", "Acid pump", Acid, 0.4), Pump("hypo-pump", "Hypochlorite pump", Hypo, 0.6)],
    };

    /// <summary>The same with pumps that only say whether they run.</summary>
    public static readonly CircuitPlan Running = Plan with { Pumps = [.. Plan.Pumps.Select(p => p with { StrokesTopic = null, MillilitresPerStroke = null, PulsesTold = true })] };

    private readonly List<PlantEvent> _batch = [];

    public DosedHall(int seed, CircuitPlan? plan = null)
    {
        Pool = new DosedPool(seed);
        Load(plan ?? Plan);
    }

    public DosedPool Pool { get; }
    public CircuitState State { get; private set; } = CircuitState.Of(new() { Id = "hall", Name = "Hall", TimeZone = "UTC" });
    public List<RecordEntry> Entries { get; } = [];
    public Action<IReadOnlyList<PlantEvent>>? Heard { get; set; }
    public Instant Now { get; private set; } = DosedPool.Start;

    public IEnumerable<AlarmEntry> Alarms => Entries.Select(e => e.Body).OfType<AlarmEntry>();

    public void Load(CircuitPlan plan) => Run([new PlanLoaded(Now, plan)]);

    /// <summary>The server stops and starts again from its snapshot.</summary>
    public void Restart() => State = PlantJson.ReadState(PlantJson.Write(State));

    /// <summary>A minute passes; what was heard in it is given back.</summary>
    public PlantMinute Minute(bool running = false)
    {
        var minute = Pool.Next();
        Now = minute.At;
        Say("ph", minute.Ph!.Value);
        Say("orp", minute.Orp!.Value);
        Say("flow", minute.Circulates == false ? 0 : 33);
        if (running) Pulse(minute);
        else
        {
            Say("acid-pump/strokes", minute.AcidStrokes!.Value);
            Say("hypo-pump/strokes", minute.ChlorineStrokes!.Value);
        }

        if (minute.AcidLitres is { } litres) Say("acid-pump/tank", litres);
        Now = minute.At + TimeSpan.FromSeconds(59);
        _batch.Add(new ClockTicked(Now));
        Run([.. _batch]);
        _batch.Clear();
        return minute;
    }

    /// <summary>The same while nobody listens.</summary>
    public void Deaf() => Pool.Next();

    public void Run(IReadOnlyList<PlantEvent> events)
    {
        Heard?.Invoke(events);
        var result = Step.Run(State, events);
        State = result.Next;
        Entries.AddRange(result.Entries);
    }

    // A controller of one-minute pulses: it runs for a share of each.
    private void Pulse(in PlantMinute minute)
    {
        foreach (var (pump, strokes) in (ReadOnlySpan<(string, double)>)[("acid-pump", minute.AcidStrokes!.Value), ("hypo-pump", minute.ChlorineStrokes!.Value)])
        {
            _batch.Add(new MessageArrived(minute.At, pump + "/state", Encoding.UTF8.GetBytes(strokes > 0 ? "running" : "stopped"), false, null));
            if (strokes is > 0 and < 30) _batch.Add(new MessageArrived(minute.At + TimeSpan.FromSeconds(strokes * 2), pump + "/state", "stopped"u8.ToArray(), false, null));
        }
    }

    private void Say(string topic, double value) => _batch.Add(new MessageArrived(Now, topic, Encoding.UTF8.GetBytes(value.ToString("R", CultureInfo.InvariantCulture)), false, null));

    private static PumpPlan Pump(string id, string name, ProductPlan product, double millilitres) => new()
    {
        Id = id, Name = name, PoolId = "pool", ProductId = product.Id, Doses = product.Kind, Product = product, StateTopic = id + "/state", TankTopic = id + "/tank", TankLitres = 100,
        StrokesTopic = id + "/strokes", StrokesAre = StrokeCount.LastMinute, MillilitresPerStroke = millilitres, LitresPerHour = millilitres * 1.8,
    };
}
