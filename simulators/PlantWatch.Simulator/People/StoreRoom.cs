using System.Globalization;
using System.Text.Json.Nodes;
using PlantWatch.Simulator.Pumps;
using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.People;

/// <summary>The drums of the plant: counted when the story begins, brought by a van once a week, put into the tanks by two people who read the label aloud.</summary>
internal sealed class StoreRoom
{
    private const double Drum = 25;
    private const DayOfWeek VanComes = DayOfWeek.Tuesday;
    private const double DaysSinceMade = 4;

    private readonly Scenario _scenario;
    private readonly Chance _chance;
    private readonly Dictionary<string, double> _litres = [];
    private bool _counted;
    private DateOnly _van;

    /// <summary>The store of a scenario. It is filled for about three weeks of what its tanks hold.</summary>
    public StoreRoom(Scenario scenario)
    {
        _scenario = scenario;
        _chance = new(scenario.Seed, "store");
        foreach (var pumps in scenario.Circuits.SelectMany(c => c.Pumps).GroupBy(p => p.Product)) _litres[pumps.Key] = Drum * Math.Ceiling(1.2 * pumps.Sum(p => p.TankLitres) / Drum);
    }

    /// <summary>What is written down of the store by now: once what is there, and then what the van brings.</summary>
    /// <param name="now">Simulated time.</param>
    /// <param name="local">The same on the clock of the site.</param>
    public IEnumerable<BookWord> Written(DateTimeOffset now, DateTime local)
    {
        if (!_counted)
        {
            _counted = true;
            foreach (var (product, litres) in _litres) yield return Row("stock-counts", product, null, litres, now, null);
        }

        var day = DateOnly.FromDateTime(local);
        if (local.DayOfWeek != VanComes || local.Hour < 9 || day == _van) yield break;
        _van = day;
        foreach (var (product, litres) in _litres.ToArray())
            if (Drums(product, litres) is > 0 and var drums)
            {
                _litres[product] += drums * Drum;
                yield return Row("deliveries", product, null, drums * Drum, now, drums);
            }
    }

    /// <summary>A tank was filled from the store.</summary>
    public BookWord Refilled(Pump pump, double litres, DateTimeOffset now)
    {
        _litres[pump.Setup.Product] -= litres;
        return Row("refills", pump.Setup.Product, pump.Setup.Id, litres, now, null);
    }

    // The van brings back what is missing to the first stock, in whole drums.
    private int Drums(string product, double litres) =>
        (int)Math.Floor(((1.2 * _scenario.Circuits.SelectMany(c => c.Pumps).Where(p => p.Product == product).Sum(p => p.TankLitres)) - litres) / Drum);

    private BookWord Row(string path, string product, string? pump, double litres, DateTimeOffset now, int? drums)
    {
        var (who, other) = Two();
        var body = new JsonObject
        {
            ["productId"] = product, ["pumpId"] = pump, ["litres"] = Math.Round(litres, 1), ["happenedAt"] = now.UtcDateTime, ["by"] = who, ["checkedBy"] = path == "stock-counts" ? null : other,
        };
        if (drums is { } count)
        {
            body["containers"] = count;
            body["batch"] = string.Create(CultureInfo.InvariantCulture, $"{product.ToUpperInvariant()}-{ISOWeek.GetWeekOfYear(now.DateTime):00}{_chance.Between(10, 99):0}");
            body["madeOn"] = now.AddDays(-DaysSinceMade).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            if (_scenario.Product(product) is { LabelPercent: > 0 } label)
            {
                body["strength"] = label.LabelPercent;
                body["price"] = Math.Round(litres * label.PricePerLitre, 2);
            }
        }

        return new(_chance.TimeOrderedId(now), path, body, string.Create(CultureInfo.InvariantCulture, $"{who} writes down {litres:0.#} L of {product} ({path}{(pump is null ? "" : ", " + pump)})"));
    }

    private (string, string) Two()
    {
        var names = _scenario.People.Names;
        if (names.Count < 2) return (names.Count == 0 ? "Somebody" : names[0], "The driver");
        var first = (int)(_chance.Even() * names.Count);
        return (names[first], names[(first + 1) % names.Count]);
    }
}
