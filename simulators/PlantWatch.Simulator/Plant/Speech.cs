using System.Globalization;
using System.Text;
using PlantWatch.Simulator.Probes;
using PlantWatch.Simulator.Pumps;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Simulator.Plant;

/// <summary>Turns one circuit's probes and pumps into messages at the cadence in force.</summary>
internal sealed class Speech(SimulatedCircuit circuit)
{
    private readonly Dictionary<string, (string Topic, string Gateway, SenmlPack Pack)> _packs = [];
    private readonly Dictionary<string, (string Word, DateTimeOffset At)> _said = [];
    private DateTimeOffset _packedNext;
    private DateTimeOffset _plainNext;
    private DateTimeOffset _pumpsNext;
    private DateTimeOffset _countsNext;
    private bool _ran = true;

    /// <summary>What is said at this moment.</summary>
    public void Say(DateTimeOffset now, double hours, Cadence cadence, List<Outgoing> messages)
    {
        if (Due(ref _packedNext, now, cadence.PackedEvery)) Sample(now, hours, messages);
        if (Due(ref _plainNext, now, cadence.PlainEvery)) Plain(now, hours, messages);
        // However seldom pumps are looked at: that the interlock stops them is said at once, or they would seem to dose into standing water.
        if (Due(ref _pumpsNext, now, cadence.PumpLook) | (_ran != circuit.Treatment.Runs)) Pumps(now, cadence.PumpRepeat, messages);
        if (Due(ref _countsNext, now, cadence.CountEvery)) Counts(now, messages);
        _ran = circuit.Treatment.Runs;
        foreach (var (topic, gateway, pack) in _packs.Values)
            if (pack.Count > 0 && now - pack.First + cadence.PackedEvery >= cadence.PackSpan) Send(now, gateway, topic, pack, messages);
    }

    /// <summary>What is still in a pack leaves now.</summary>
    public void Flush(DateTimeOffset now, List<Outgoing> messages)
    {
        foreach (var (topic, gateway, pack) in _packs.Values)
            if (pack.Count > 0) Send(now, gateway, topic, pack, messages);
    }

    private static void Send(DateTimeOffset now, string gateway, string topic, SenmlPack pack, List<Outgoing> messages)
    {
        var count = pack.Count;
        messages.Add(new(now, gateway, topic, pack.Take(), count));
    }

    private void Sample(DateTimeOffset now, double hours, List<Outgoing> messages)
    {
        var deviceTime = now.AddSeconds(circuit.ClockError(hours));
        foreach (var probe in circuit.Probes.Where(p => p.Setup.Record.Length > 0 && !p.IsSilent(hours)))
        {
            if (probe.SendsNaN(hours))
                messages.Add(new(now, Gateway(probe.Setup), probe.Setup.Topic, SenmlPack.NotANumber(circuit.Setup.BaseName, probe.Setup.Record, deviceTime, circuit.Setup.Packs), 1));
            else
                PackFor(probe).Add(probe.Setup.Record, Unit(probe.Setup.Measures), deviceTime, Rounded(probe));
        }
    }

    private void Plain(DateTimeOffset now, double hours, List<Outgoing> messages)
    {
        foreach (var probe in circuit.Probes.Where(p => p.Setup.Record.Length == 0 && !p.IsSilent(hours)))
            messages.Add(new(now, Gateway(probe.Setup), probe.Setup.Topic, Text(probe.SendsNaN(hours) ? double.NaN : Rounded(probe)), 1));
    }

    private void Pumps(DateTimeOffset now, TimeSpan repeat, List<Outgoing> messages)
    {
        foreach (var pump in circuit.Pumps)
        {
            Word(pump, pump.Setup.StateTopic, pump.State, now, repeat, messages);
            Word(pump, pump.Setup.TankTopic, Math.Round(pump.TankPercent, 1).ToString(CultureInfo.InvariantCulture), now, repeat, messages);
        }
    }

    private void Counts(DateTimeOffset now, List<Outgoing> messages)
    {
        foreach (var pump in circuit.Pumps.Where(p => p.Setup.StrokesTopic.Length > 0))
            messages.Add(new(now, Gateway(pump.Setup), pump.Setup.StrokesTopic, Text(Math.Floor(pump.Strokes)), 1));
    }

    private void Word(Pump pump, string topic, string word, DateTimeOffset now, TimeSpan repeat, List<Outgoing> messages)
    {
        if (topic.Length == 0) return;
        var isTank = topic == pump.Setup.TankTopic;
        // A tank falls all the time a little: only its repeat is sent, a change of state at once.
        if (_said.TryGetValue(topic, out var last) && now - last.At < repeat && (isTank || last.Word == word)) return;
        _said[topic] = (word, now);
        messages.Add(new(now, Gateway(pump.Setup), topic, Encoding.UTF8.GetBytes(word), 1));
    }

    private SenmlPack PackFor(Probe probe)
    {
        if (!_packs.TryGetValue(probe.Setup.Topic, out var found))
            _packs[probe.Setup.Topic] = found = (probe.Setup.Topic, Gateway(probe.Setup), new SenmlPack(circuit.Setup.BaseName, circuit.Setup.Packs));
        return found.Pack;
    }

    private string Gateway(PumpSetup pump) => pump.Gateway.Length > 0 ? pump.Gateway : circuit.Setup.Id;

    private string Gateway(ProbeSetup probe) => probe.Gateway.Length > 0 ? probe.Gateway : circuit.Setup.Id;

    private static bool Due(ref DateTimeOffset next, DateTimeOffset now, TimeSpan every)
    {
        // On whole multiples, so that every circuit samples at the same round times whatever the step.
        // The second condition: a cadence that became denser holds at once.
        if (next == default || next - now > every) next = new DateTimeOffset(now.Ticks + every.Ticks - 1 - ((now.Ticks + every.Ticks - 1) % every.Ticks), TimeSpan.Zero);
        if (now < next) return false;
        next = new DateTimeOffset(now.Ticks - (now.Ticks % every.Ticks) + every.Ticks, TimeSpan.Zero);
        return true;
    }

    private static byte[] Text(double value) => Encoding.UTF8.GetBytes(value.ToString(CultureInfo.InvariantCulture));

    private static double Rounded(Probe probe) => Math.Round(probe.Published, probe.Setup.Measures switch
    {
        Measures.Ph or Measures.FreeChlorine => 3,
        Measures.Temperature => 2,
        Measures.Orp or Measures.CirculationFlow or Measures.FilterPressure => 1,
        _ => 0,
    });

    private static string Unit(Measures measures) => measures switch
    {
        Measures.Ph => "pH",
        Measures.Orp => "mV",
        Measures.Temperature => "Cel",
        Measures.FreeChlorine => "mg/L",
        Measures.Conductivity => "uS/cm",
        Measures.CirculationFlow => "m3/h",
        Measures.FilterPressure => "kPa",
        _ => "/",
    };
}
