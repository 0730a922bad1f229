using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.People;

/// <summary>What an operator sees at a pool.</summary>
/// <param name="Water">The truth that the test kit meets.</param>
/// <param name="Panel">What the panel shows.</param>
/// <param name="Bathers">Heads counted.</param>
internal sealed record Scene(WaterView Water, IReadOnlyList<SheetPanel> Panel, int Bathers);

/// <summary>The people: they make their rounds about in time, test with their kits, write down what they found, mostly, and type it in, mostly soon.</summary>
internal sealed class Operators
{
    private readonly PeopleSetup _people;
    private readonly Chance _chance;
    private readonly Rota _rota;
    private readonly PriorityQueue<Errand, DateTimeOffset> _errands = new();
    private readonly PriorityQueue<CheckSheet, DateTimeOffset> _written = new();

    /// <summary>The people of a scenario that starts at <paramref name="start"/>.</summary>
    public Operators(Scenario scenario, TimeZoneInfo zone, DateTimeOffset start)
    {
        _people = scenario.People;
        _chance = new Chance(scenario.Seed, "people");
        _rota = new Rota(_people, zone, new Chance(scenario.Seed, "rota"));
        foreach (var extra in _people.Extra)
            Add(new Errand(start + Span.Read(extra.After), extra.Pool, extra.Tests, extra.Note.Length > 0 ? extra.Note : null));
    }

    /// <summary>Somebody is asked to test a pool again.</summary>
    public void AskRepeat(string pool, IReadOnlyList<string> tests, DateTimeOffset now) =>
        Add(new Errand(now.AddMinutes(_chance.Between(6, 14)), pool, tests, "Repeat"));

    /// <summary>Takes the samples that are due, looking at the plant through <paramref name="look"/>.</summary>
    public IReadOnlyList<CheckSheet> Sample(DateTimeOffset now, Func<string, Scene> look)
    {
        foreach (var errand in _rota.Due(now)) Add(errand);
        List<CheckSheet> sheets = [];
        while (_errands.TryPeek(out var errand, out var at) && at <= now)
        {
            _errands.Dequeue();
            var sheet = Write(errand, now, look(errand.Pool));
            sheets.Add(sheet);
            _written.Enqueue(sheet, sheet.EnteredAt);
        }
        return sheets;
    }

    /// <summary>Sheets whose time to be typed in has come.</summary>
    public IEnumerable<CheckSheet> Typed(DateTimeOffset now)
    {
        while (_written.TryPeek(out _, out var at) && at <= now) yield return _written.Dequeue();
    }

    private void Add(Errand errand) => _errands.Enqueue(errand, errand.At);

    private CheckSheet Write(Errand errand, DateTimeOffset now, Scene scene)
    {
        var entered = now.AddMinutes(_chance.Between(2, 7));
        if (errand.Note is null && _chance.Happens(_people.LateShare)) entered = now.AddHours(_chance.Between(1.5, 6));
        var sheet = new CheckSheet
        {
            Id = _chance.TimeOrderedId(now),
            PoolId = errand.Pool,
            SampledAt = now,
            EnteredAt = entered,
            Who = _people.Names[(int)(_chance.Even() * _people.Names.Count)],
            Results = [.. errand.Tests.Select(t => TestBench.Test(t, scene.Water, _chance))],
            Panel = scene.Panel,
            BottomVisible = true,
            Bathers = scene.Bathers,
            Note = errand.Note,
        };
        sheet = Orderly(sheet);
        return errand.Note is null && _chance.Happens(_people.SlipShare) ? Slip.Of(sheet, _chance) : sheet;
    }

    // With little combined chlorine the two readings may come out in the wrong order; people repeat that on the spot.
    private static CheckSheet Orderly(CheckSheet sheet)
    {
        if (sheet.Result("free_chlorine") is not { } free || sheet.Result("total_chlorine") is not { } total || total >= free) return sheet;
        return sheet with { Results = [.. sheet.Results.Select(r => r.Measurand == "total_chlorine" ? r with { Value = free } : r)] };
    }
}
