using System.Globalization;
using System.Text.Json.Nodes;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.People;

/// <summary>How many came through the door of each pool on a day. A bather stays for an hour and a quarter (common practice).</summary>
internal sealed class DoorCount(Scenario scenario)
{
    private const double HoursOfABather = 1.25;

    private readonly Chance _chance = new(scenario.Seed, "door");
    private readonly Dictionary<string, double> _hours = [];
    private DateOnly _day;
    private int _daysOver;

    /// <summary>So many are in the water for a step.</summary>
    public void Pass(string pool, int bathers, double hours) => _hours[pool] = _hours.GetValueOrDefault(pool) + (bathers * hours);

    /// <summary>When a day is over somebody reads the till. The day on which the story begins is known in part and not said.</summary>
    public IEnumerable<BookWord> Written(DateTimeOffset now, DateTime local)
    {
        var today = DateOnly.FromDateTime(local);
        if (_day == today) yield break;
        var over = _day;
        _day = today;
        var counts = _hours.ToArray();
        _hours.Clear();
        if (over == default || _daysOver++ == 0) yield break;
        foreach (var (pool, hours) in counts) yield return Row(pool, over, (int)Math.Round(hours / HoursOfABather), now);
    }

    private BookWord Row(string pool, DateOnly day, int number, DateTimeOffset now)
    {
        var who = scenario.People.Names.Count == 0 ? "Somebody" : scenario.People.Names[0];
        var said = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        return new(_chance.TimeOrderedId(now), "bathers", new JsonObject { ["poolId"] = pool, ["day"] = said, ["number"] = number, ["by"] = who }, $"{who} writes down {number} bathers of {pool} on {said}");
    }
}
