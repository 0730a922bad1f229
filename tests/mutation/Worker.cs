using System.Diagnostics;
using System.Reflection;
using System.Runtime.Loader;

namespace PlantWatch.Mutation;

/// <summary>A process that sets the switch to one mutant after the other and runs the tests that came by it, until one fails. It says a line before and after each.</summary>
internal static class Worker
{
    // A change can make a loop without end; who comes by a switch so much more often than usual is caught in one.
    private const long Patience = 50, Least = 2_000_000;

    /// <summary>Runs the mutants whose numbers it is given, or learns which test comes by which when it is given none.</summary>
    public static int Run(string folder, IReadOnlyList<int> mutants, IReadOnlyList<string> spaces, bool isFresh)
    {
        AssemblyLoadContext.Default.Resolving += (context, name) => File.Exists($"{folder}/{name.Name}.dll") ? context.LoadFromAssemblyPath($"{folder}/{name.Name}.dll") : null;
        var core = AssemblyLoadContext.Default.LoadFromAssemblyPath($"{folder}/PlantWatch.Core.dll").GetType("PlantWatch.Mutation.Switch")!;
        var control = new Control(core);
        if (isFresh) control.Active = mutants[0];
        var cases = Case.Of(AssemblyLoadContext.Default.LoadFromAssemblyPath($"{folder}/PlantWatch.Core.Tests.dll"), spaces);
        var map = $"{folder}/coverage.txt";
        if (mutants.Count == 0) Learn(control, cases, map);
        else Judge(control, cases, Coverage.Read(map), mutants, isFresh);
        return 0;
    }

    private static void Learn(Control control, List<Case> cases, string to)
    {
        using var map = new StreamWriter(to);
        foreach (var one in cases)
        {
            control.Begin(long.MaxValue);
            var start = Stopwatch.GetTimestamp();
            var passes = one.Passes();
            var took = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
            if (!passes) Console.WriteLine($"! {one.Name} fails without a change");
            else map.WriteLine($"{one.Name}\t{took:0}\t{control.Count}\t{string.Join(' ', control.Seen())}");
        }

        Console.WriteLine($"= {string.Join(' ', control.AtStart)}");
    }

    private static void Judge(Control control, List<Case> cases, List<Coverage> map, IReadOnlyList<int> mutants, bool isFresh)
    {
        var byName = cases.ToDictionary(c => c.Name);
        foreach (var mutant in mutants)
        {
            Console.WriteLine($"? {mutant}");
            control.Active = mutant;
            // What a type's beginning does is seen by whoever comes first, and by all others in what they find.
            var killer = map.Where(m => isFresh || m.Mutants.Contains(mutant)).OrderBy(m => m.Milliseconds)
                .FirstOrDefault(m => byName.TryGetValue(m.Name, out var one) && !Holds(control, one, m));
            Console.WriteLine(killer is null ? $"- {mutant}" : $"+ {mutant} {killer.Name}");
        }
    }

    private static bool Holds(Control control, Case one, Coverage usual)
    {
        control.Begin((usual.Count * Patience) + Least);
        return one.Passes();
    }

    private sealed class Control(Type type)
    {
        private readonly FieldInfo _active = type.GetField("Active")!, _count = type.GetField("Count")!, _most = type.GetField("Most")!;
        private readonly bool[] _seen = (bool[])type.GetField("Seen")!.GetValue(null)!;

        /// <summary>Those that act while a type is initialised: once a process.</summary>
        public List<int> AtStart => (List<int>)type.GetField("AtStart")!.GetValue(null)!;

        public int Active { set => _active.SetValue(null, value); }

        public long Count => (long)_count.GetValue(null)!;

        public void Begin(long most)
        {
            _count.SetValue(null, 0L);
            _most.SetValue(null, most);
            Array.Clear(_seen);
        }

        public IEnumerable<int> Seen() => Enumerable.Range(0, _seen.Length).Where(i => _seen[i]);
    }
}

/// <summary>What a test comes by.</summary>
internal sealed record Coverage(string Name, double Milliseconds, long Count, HashSet<int> Mutants)
{
    public static List<Coverage> Read(string file) =>
    [
        .. File.ReadLines(file).Select(line => line.Split('\t')).Select(p => new Coverage(p[0], double.Parse(p[1], System.Globalization.CultureInfo.InvariantCulture),
            long.Parse(p[2], System.Globalization.CultureInfo.InvariantCulture), [.. p[3].Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(s => int.Parse(s, System.Globalization.CultureInfo.InvariantCulture))])),
    ];
}
