using System.Globalization;
using YamlDotNet.Core;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace PlantWatch.Simulator.Setup;

/// <summary>A scenario file could not be used; the message says why and where.</summary>
internal sealed class ScenarioException(string message) : Exception(message);

/// <summary>Reads scenario files and refuses those that name what is not there.</summary>
internal static class ScenarioFile
{
    /// <summary>Folder of the scenarios that come with the simulator.</summary>
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "scenarios");

    /// <summary>Loads a file by path, or one of the simulator's own by name.</summary>
    /// <exception cref="ScenarioException">There is no such file, or it is not understood.</exception>
    public static Scenario Load(string nameOrPath)
    {
        var path = File.Exists(nameOrPath) ? nameOrPath : Path.Combine(Folder, nameOrPath + ".yaml");
        if (!File.Exists(path)) throw new ScenarioException($"no scenario '{nameOrPath}'; there are {string.Join(", ", Names())}");
        return Parse(File.ReadAllText(path), path);
    }

    /// <summary>Names of the simulator's own scenarios.</summary>
    public static IEnumerable<string> Names() =>
        Directory.Exists(Folder) ? Directory.EnumerateFiles(Folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order() : [];

    /// <summary>Reads a scenario from text.</summary>
    /// <exception cref="ScenarioException">It is not understood.</exception>
    public static Scenario Parse(string yaml, string from = "scenario")
    {
        try
        {
            var reader = new DeserializerBuilder().WithNamingConvention(UnderscoredNamingConvention.Instance)
                .WithEnumNamingConvention(UnderscoredNamingConvention.Instance).Build();
            var scenario = reader.Deserialize<Scenario?>(yaml) ?? throw new ScenarioException($"{from} is empty");
            Borrow(scenario);
            foreach (var complaint in Complaints(scenario)) throw new ScenarioException($"{from}: {complaint}");
            return scenario;
        }
        catch (YamlException e)
        {
            throw new ScenarioException($"{from} line {e.Start.Line}: {e.InnerException?.Message ?? e.Message}");
        }
    }

    private static void Borrow(Scenario scenario)
    {
        if (scenario.PlantOf.Length > 0)
        {
            var other = Load(scenario.PlantOf);
            if (scenario.Products.Count == 0) scenario.Products = other.Products;
            if (scenario.Circuits.Count == 0) scenario.Circuits = other.Circuits;
            if (scenario.People.Rounds.Count == 0) scenario.People = other.People;
        }
        foreach (var pool in scenario.Circuits.SelectMany(c => c.Pools)) pool.Bathers.Peak *= scenario.BathersFactor;
    }

    private static IEnumerable<string> Complaints(Scenario s)
    {
        if (s.Circuits.Count == 0) yield return "no circuits";
        foreach (var c in s.Circuits.Where(c => c.Pools.Count == 0)) yield return $"circuit {c.Id} has no pools";
        var pools = s.Circuits.SelectMany(c => c.Pools).Select(p => p.Id).ToHashSet();
        var probes = s.Circuits.SelectMany(c => c.Probes).Select(p => p.Id).ToHashSet();
        var things = probes.Concat(s.Circuits.SelectMany(c => c.Pumps).Select(p => p.Id)).Concat(s.Circuits.Select(c => c.Id)).ToHashSet();
        foreach (var c in s.Circuits)
        {
            foreach (var p in c.Probes.Where(p => p.Pool.Length > 0 || p.Measures is not (Measures.CirculationFlow or Measures.FilterPressure)).Where(p => c.Pools.All(x => x.Id != p.Pool))) yield return $"probe {p.Id}: no pool {p.Pool} in circuit {c.Id}";
            foreach (var p in c.Pumps.Where(p => p.Pool.Length > 0 && c.Pools.All(x => x.Id != p.Pool))) yield return $"pump {p.Id}: no pool {p.Pool} in circuit {c.Id}";
            foreach (var p in c.Pumps.Where(p => c.Probes.All(x => x.Id != p.Controller.Probe))) yield return $"pump {p.Id}: no probe {p.Controller.Probe} in circuit {c.Id}";
            foreach (var p in c.Pumps.Where(p => s.Products.All(x => x.Id != p.Product))) yield return $"pump {p.Id}: no product {p.Product}";
        }
        foreach (var r in s.People.Rounds.Where(r => !pools.Contains(r.Pool))) yield return $"a round names pool {r.Pool}, which is not there";
        foreach (var t in s.People.Rounds.SelectMany(r => r.At).Where(t => !IsTime(t))) yield return $"'{t}' is no time of day such as 07:00";
        foreach (var r in s.People.Extra.Where(r => !pools.Contains(r.Pool))) yield return $"an extra check names pool {r.Pool}, which is not there";
        foreach (var f in s.Faults.Where(f => !things.Contains(f.On))) yield return $"a fault is on {f.On}, which is not there";
        foreach (var w in s.Washes.Where(w => !s.Circuits.Any(c => c.Id == w.Circuit && c.Filters.Any(f => f.Id == w.Filter)))) yield return $"a wash names filter {w.Filter} of {w.Circuit}, which is not there";
        foreach (var t in s.PanelTurns.Where(t => !probes.Contains(t.Probe))) yield return $"a panel turn names probe {t.Probe}, which is not there";
        foreach (var after in s.Faults.Select(f => f.After).Concat(s.Faults.Select(f => f.For).Where(f => f.Length > 0))
            .Concat(s.PanelTurns.Select(t => t.After)).Concat(s.People.Extra.Select(e => e.After))
            .Concat(s.Washes.Select(w => w.After)).Concat(s.Washes.Select(w => w.For)).Where(a => Span.TryRead(a) is null))
            yield return $"'{after}' is no duration such as 2d6h30m";
    }

    private static bool IsTime(string text) => TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
}
