using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Commands.Pumps;

/// <summary>Reads the table of signals, a pool after the other, and gives what was heard of a pool at each time.</summary>
internal sealed class SignalRows(string folder, IReadOnlyDictionary<string, PumpedPool> pools, BadRows bad)
{
    private const string File = "signals.csv";

    // A level sensor about nil shows a little less than nothing, in litres.
    private const double LeastLevel = -2;
    private readonly HashSet<string> _over = new(StringComparer.Ordinal);
    private string? _pool;
    private string _time = "";
    private PlantMinute _minute;

    /// <summary>Rows that were read and used.</summary>
    public long Used { get; private set; }

    /// <summary>All of it in order; a pool that was over does not come again.</summary>
    public IEnumerable<(string Pool, PlantMinute Minute)> All()
    {
        var line = 0L;
        foreach (var row in System.IO.File.ReadLines(Path.Combine(folder, File)))
        {
            if (++line == 1) Head(row);
            if (line == 1 || row.Length == 0) continue;
            var (before, minute) = (_pool, _minute);
            if (Take(row, out var why) && before is not null) yield return (before, minute);
            if (why is null) Used++;
            else bad.Name(File, line, row, why);
        }

        if (line == 0) throw new FormatException($"{File} is empty");
        if (_pool is { } last) yield return (last, _minute);
    }

    private static void Head(string row)
    {
        if (row.TrimStart('\uFEFF').TrimEnd() != "time,pool,signal,value") throw new FormatException($"{File} does not begin with time,pool,signal,value");
    }

    // True when with this row another time or pool begins.
    private bool Take(string row, out string? why)
    {
        why = "not time, pool, signal and value";
        if (row.Split(',') is not { Length: 4 } fields) return false;
        var begins = Begins(fields, out why);
        why ??= Put(fields);
        return begins;
    }

    private bool Begins(string[] fields, out string? why)
    {
        why = null;
        if (fields[1] == _pool && fields[0] == _time) return false;
        if (!pools.ContainsKey(fields[1])) why = "of no pool of plant.csv";
        else if (fields[1] != _pool && _over.Contains(fields[1])) why = "its pool was over before";
        else if (!Instant.TryParse(fields[0], out var at)) why = "no time";
        else if (fields[1] == _pool && at <= _minute.At) why = "not in the order of time";
        else
        {
            if (_pool is not null && fields[1] != _pool) _over.Add(_pool);
            (_pool, _time, _minute) = (fields[1], fields[0], new PlantMinute { At = at });
            return true;
        }

        return false;
    }

    private string? Put(string[] fields)
    {
        if (PumpTables.Figure(fields[3]) is not { } value) return "no value";
        switch (fields[2])
        {
            case "ph" when Measurand.Ph.Possible().Contains(value): return Once(_minute.Ph, _minute with { Ph = value });
            case "orp" when Measurand.Orp.Possible().Contains(value): return Once(_minute.Orp, _minute with { Orp = value });
            case "acid_strokes" when value is >= 0 and < 1e6: return Once(_minute.AcidStrokes, _minute with { AcidStrokes = value });
            case "chlorine_strokes" when value is >= 0 and < 1e6: return Once(_minute.ChlorineStrokes, _minute with { ChlorineStrokes = value });
            case "circulation" when value is 0 or 1: return Once(_minute.Circulates is { } runs ? runs ? 1 : 0 : null, _minute with { Circulates = value > 0 });
            case "acid_tank_l" when value is >= LeastLevel and < 1e6: return Once(_minute.AcidLitres, _minute with { AcidLitres = value });
            case "chlorine_tank_l" when value is >= LeastLevel and < 1e6: return Once(_minute.ChlorineLitres, _minute with { ChlorineLitres = value });
            case "temperature" when Measurand.Temperature.Possible().Contains(value): return null;
            case "ph" or "orp" or "temperature" or "acid_strokes" or "chlorine_strokes" or "circulation" or "acid_tank_l" or "chlorine_tank_l": return "no value that this signal can have";
            default: return "no signal";
        }
    }

    private string? Once(double? before, PlantMinute after)
    {
        if (before is not null) return "said twice for that time";
        _minute = after;
        return null;
    }
}
