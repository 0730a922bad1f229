using PlantWatch.Simulator.People;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Plant;

/// <summary>What happened while time was moved on.</summary>
/// <param name="Messages">MQTT messages in the order of their time.</param>
/// <param name="Checks">Checks whose time to be typed in has come.</param>
/// <param name="Notes">Things worth printing.</param>
internal sealed record Happenings(List<Outgoing> Messages, List<CheckSheet> Checks, List<string> Notes)
{
    /// <summary>What is told of the filters.</summary>
    public List<WashWord> Washes { get; } = [];

    /// <summary>What is written into the books of the plant.</summary>
    public List<BookWord> Books { get; } = [];
}

/// <summary>The whole plant of a scenario. It reads no clock: time moves when it is told to, and the same scenario gives the same plant.</summary>
internal sealed class SimulatedPlant
{
    private readonly Scenario _scenario;
    private readonly TimeZoneInfo _zone;
    private readonly Speech[] _speech;
    private readonly PriorityQueue<PanelTurn, TimeSpan> _turns = new();
    private readonly HashSet<FaultSetup> _announced = [];
    private readonly Washes _washes;
    private readonly StoreRoom _store;
    private readonly DoorCount _door;
    private DateOnly _deliveryDay;

    /// <summary>A plant that starts at <paramref name="start"/>; times in the scenario count from there.</summary>
    public SimulatedPlant(Scenario scenario, DateTimeOffset start)
    {
        _scenario = scenario;
        _zone = TimeZoneInfo.FindSystemTimeZoneById(scenario.TimeZone);
        Start = Now = start.ToUniversalTime();
        Circuits = [.. scenario.Circuits.Select(c => new SimulatedCircuit(c, scenario))];
        _speech = [.. Circuits.Select(c => new Speech(c))];
        Operators = new Operators(scenario, _zone, Start);
        _washes = new Washes(scenario);
        _store = new StoreRoom(scenario);
        _door = new DoorCount(scenario);
        foreach (var turn in scenario.PanelTurns) _turns.Enqueue(turn, Span.Read(turn.After));
        _deliveryDay = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Now, _zone).DateTime).AddDays(-1);
    }

    /// <summary>Where the scenario began.</summary>
    public DateTimeOffset Start { get; }

    /// <summary>Simulated time.</summary>
    public DateTimeOffset Now { get; private set; }

    /// <summary>How often it speaks.</summary>
    public Cadence Cadence { get; set; } = Cadence.Live;

    /// <summary>The circuits.</summary>
    public IReadOnlyList<SimulatedCircuit> Circuits { get; }

    /// <summary>The people.</summary>
    public Operators Operators { get; }

    /// <summary>The circuit of a pool.</summary>
    public SimulatedCircuit CircuitOf(string pool) => Circuits.First(c => c.Setup.Pools.Any(p => p.Id == pool));

    /// <summary>Moves time on, in steps no longer than the scenario's.</summary>
    public Happenings AdvanceTo(DateTimeOffset until)
    {
        Happenings happened = new([], [], []);
        while (Now < until)
        {
            var step = Math.Min(_scenario.StepSeconds, (until - Now).TotalSeconds);
            Pass(step, happened);
        }
        return happened;
    }

    /// <summary>Sends what is still waiting in packs.</summary>
    public List<Outgoing> Flush()
    {
        List<Outgoing> messages = [];
        foreach (var circuit in _speech) circuit.Flush(Now, messages);
        return messages;
    }

    private void Pass(double step, Happenings happened)
    {
        var seconds = (Now - Start).TotalSeconds;
        var local = TimeZoneInfo.ConvertTime(Now, _zone).DateTime;
        foreach (var circuit in Circuits) circuit.Pass(seconds, step, local, _washes.IsWashing(circuit.Setup.Id, seconds / 3600));
        Now = Now.AddSeconds(step);
        var hours = (Now - Start).TotalHours;
        foreach (var circuit in _speech) circuit.Say(Now, hours, Cadence, happened.Messages);
        Wash(seconds / 3600, hours, happened);
        People(happened);
        Count(step / 3600, local, happened.Books);
        Events(hours, local, happened);
    }

    private void Wash(double before, double hours, Happenings happened)
    {
        foreach (var circuit in Circuits)
            foreach (var filter in _washes.Washed(circuit.Setup.Id, before, hours)) circuit.Treatment.Bed(filter)!.Wash();
        happened.Washes.AddRange(_washes.Said(hours, Now));
    }

    private void People(Happenings happened)
    {
        foreach (var sheet in Operators.Sample(Now, pool => CircuitOf(pool).Scene(pool)))
            if (sheet.Result("total_alkalinity") is { } found && found < _scenario.People.BicarbonateBelow)
            {
                CircuitOf(sheet.PoolId).AddBicarbonate(sheet.PoolId, 20);
                happened.Notes.Add($"{sheet.Who} adds bicarbonate to {sheet.PoolId}: alkalinity tested {found:0}");
            }
        happened.Checks.AddRange(Operators.Typed(Now));
    }

    private void Count(double hours, DateTime local, List<BookWord> books)
    {
        foreach (var circuit in Circuits)
            foreach (var pool in circuit.Setup.Pools) _door.Pass(pool.Id, circuit.Bathers(pool.Id), hours);
        books.AddRange(_store.Written(Now, local));
        books.AddRange(_door.Written(Now, local));
    }

    private void Events(double hours, DateTime local, Happenings happened)
    {
        var notes = happened.Notes;
        while (_turns.TryPeek(out var turn, out var after) && after.TotalHours <= hours)
        {
            _turns.Dequeue();
            Circuits.SelectMany(c => c.Probes).First(p => p.Setup.Id == turn.Probe).PanelOffset += turn.Add;
            notes.Add($"panel of {turn.Probe} turned by {turn.Add:+0.00;-0.00}");
        }
        foreach (var fault in _scenario.Faults.Where(f => Span.Read(f.After).TotalHours <= hours && _announced.Add(f)))
            notes.Add($"fault: {fault.Kind} on {fault.On}, size {fault.Size}{(fault.For.Length > 0 ? ", for " + fault.For : "")}");
        if (local.Hour != 10 || DateOnly.FromDateTime(local) <= _deliveryDay) return;
        _deliveryDay = DateOnly.FromDateTime(local);
        foreach (var pump in Circuits.SelectMany(c => c.Pumps))
        {
            if (pump.Refill() is not (> 0 and var litres)) continue;
            notes.Add($"tank of {pump.Setup.Id} filled");
            happened.Books.Add(_store.Refilled(pump, litres, Now));
        }
    }
}
