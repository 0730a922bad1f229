using System.Diagnostics;
using System.Text.RegularExpressions;
using PlantWatch.Core.Plans;

namespace PlantWatch.Server.Tests.House;

public sealed partial class CoreIsPureTests
{
    private static readonly string Core = typeof(CircuitPlan).Assembly.Location;

    // The outside world by type: files, consoles, networks, threads, timers, chance. A namespace ends in a dot.
    private static readonly string[] Outside =
    [
        "System.Threading.Tasks.", "System.Threading.Thread", "System.Threading.Timer", "System.Threading.Lock", "System.Threading.Monitor",
        "System.Threading.SemaphoreSlim", "System.Threading.Channels.", "System.Net.", "System.IO.File", "System.IO.Directory", "System.IO.Path",
        "System.Console", "System.Environment", "System.TimeProvider", "System.Random", "System.Security.Cryptography.RandomNumberGenerator",
        "System.Diagnostics.Stopwatch", "System.Diagnostics.Process", "System.Diagnostics.Metrics.", "System.Runtime.CompilerServices.AsyncTaskMethodBuilder",
        "System.Runtime.CompilerServices.AsyncValueTaskMethodBuilder",
    ];

    // The clock and chance by member: their types are innocent otherwise.
    private static readonly string[] Clocks =
    [
        "System.DateTime.get_Now", "System.DateTime.get_UtcNow", "System.DateTime.get_Today", "System.DateTimeOffset.get_Now", "System.DateTimeOffset.get_UtcNow",
        "System.TimeZoneInfo.get_Local", "System.Guid.NewGuid", "System.Guid.CreateVersion7",
    ];

    [Fact]
    public void Core_refers_to_nothing_but_the_base_class_library()
    {
        var strangers = Assemblies.ReferencesOf(Core).Where(n => n != "System" && !n.StartsWith("System.", StringComparison.Ordinal));
        Findings.None(strangers, "Core refers to");
    }

    [Fact]
    public void Core_touches_no_clock_file_console_network_thread_or_chance() => Findings.None(OutsideWorldIn(Core), "Core touches the outside world");

    [Fact]
    public void The_look_finds_a_clock_and_a_file_where_they_are()
    {
        var here = OutsideWorldIn(typeof(CoreIsPureTests).Assembly.Location);
        Assert.Contains("System.Diagnostics.Stopwatch", here);
        Assert.Contains("System.IO.File", here);
        Assert.Contains("System.DateTimeOffset.get_UtcNow", here);
        _ = (Stopwatch.GetTimestamp(), DateTimeOffset.UtcNow); // what it must find
    }

    [Fact]
    public void Core_has_no_waiting_and_no_clock_in_its_source()
    {
        var found =
            from file in Repository.Sources("src", "PlantWatch.Core")
            from Match match in Impure().Matches(Comments().Replace(File.ReadAllText(file), ""))
            select $"{Path.GetRelativePath(Repository.Root, file)}: {match.Value}";
        Findings.None(found, "impure words in Core");
        Assert.NotEmpty(Repository.Sources("src", "PlantWatch.Core"));
    }

    private static List<string> OutsideWorldIn(string assembly) =>
    [
        .. Assemblies.TypesUsedBy(assembly).Where(t => Outside.Any(o => o.EndsWith('.') ? t.StartsWith(o, StringComparison.Ordinal) : t == o)),
        .. Assemblies.MembersUsedBy(assembly).Where(Clocks.Contains),
    ];

    [GeneratedRegex(@"\b((async|await|TimeProvider|Stopwatch)\b|DateTime(Offset)?\.(Now|UtcNow|Today)\b|(Value)?Task[.<]|(File|Console|Environment|Thread)\.|Random\.Shared|new Random\b)")]
    private static partial Regex Impure();

    [GeneratedRegex(@"//.*?$|/\*.*?\*/|""(\\.|[^""\\])*""", RegexOptions.Multiline | RegexOptions.Singleline)]
    private static partial Regex Comments();
}
