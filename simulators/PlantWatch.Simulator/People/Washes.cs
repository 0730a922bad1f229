using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.People;

/// <summary>What somebody tells of a filter: that he begins to wash it, or that it is washed.</summary>
/// <param name="Id">Id of the telling.</param>
/// <param name="Circuit">The circuit.</param>
/// <param name="Filter">The filter.</param>
/// <param name="Who">Who.</param>
/// <param name="Begins">True for the beginning.</param>
internal sealed record WashWord(Guid Id, string Circuit, string Filter, string Who, bool Begins);

/// <summary>The washing of filters as the scenario has it: somebody says so, turns the valves, washes, turns them back, and notes it.</summary>
internal sealed class Washes(Scenario scenario)
{
    // From the word to the valve, and from the valve to the note.
    private const double HoursToTheValve = 6.0 / 60;
    private const double HoursToTheNote = 3.0 / 60;

    private readonly Chance _chance = new(scenario.Seed, "washes");
    private readonly (WashSetup Setup, double From, double Until)[] _washes = [.. scenario.Washes.Select(w => Span.Read(w.After).TotalHours is var from ? (w, from, from + Span.Read(w.For).TotalHours) : default)];
    private double _last = double.NegativeInfinity;

    /// <summary>True while water of a circuit goes backwards.</summary>
    public bool IsWashing(string circuit, double hours)
    {
        foreach (var (setup, from, until) in _washes)
            if (setup.Circuit == circuit && hours >= from && hours < until) return true;
        return false;
    }

    /// <summary>The filters of a circuit whose wash ended since the last look.</summary>
    public IEnumerable<string> Washed(string circuit, double before, double hours) =>
        _washes.Where(w => w.Setup.Circuit == circuit && w.Until > before && w.Until <= hours).Select(w => w.Setup.Filter);

    /// <summary>What is said by now and was not said before.</summary>
    public IEnumerable<WashWord> Said(double hours, DateTimeOffset now)
    {
        foreach (var (setup, from, until) in _washes)
        {
            if (IsNew(from - HoursToTheValve, hours)) yield return new(_chance.TimeOrderedId(now), setup.Circuit, setup.Filter, setup.Who, true);
            if (IsNew(until + HoursToTheNote, hours)) yield return new(_chance.TimeOrderedId(now), setup.Circuit, setup.Filter, setup.Who, false);
        }
        _last = hours;
    }

    private bool IsNew(double at, double hours) => at > _last && at <= hours;
}
