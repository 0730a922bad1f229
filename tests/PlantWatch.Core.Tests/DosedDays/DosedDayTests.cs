using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Tests.Dosing.Supervision;
using PlantWatch.Core.Tests.GoldenDays;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.DosedDays;

/// <summary>Days of a dosed pool as folders: events.txt in, expected.txt out. The water is that of <see cref="DosedPool"/>, so that what is found is found by physics that nobody wrote for it.</summary>
/// <remarks>A day that is meant to come out otherwise is written anew with <c>PLANTWATCH_WRITE_GENERATED=true</c> and read over before it is committed.</remarks>
public sealed partial class DosedDayTests
{
    private static readonly string Folder = Source.PathOf("tests", "PlantWatch.Core.Tests", "DosedDays");

    public static TheoryData<string> Stories => [.. Directory.GetDirectories(Folder).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Stories))]
    public void A_day_comes_out_as_it_is_told(string story)
    {
        var path = Path.Combine(Folder, story, "expected.txt");
        var told = Live(File.ReadLines(Path.Combine(Folder, story, "events.txt")));
        if (Environment.GetEnvironmentVariable("PLANTWATCH_WRITE_GENERATED") == "true") File.WriteAllText(path, told);
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), told);
    }

    private static string Live(IEnumerable<string> lines)
    {
        var said = lines.Select(l => l.Split('#')[0].Trim()).Where(l => l.Length > 0).ToArray();
        var hall = new DosedHall(int.Parse(said[0]["seed ".Length..], CultureInfo.InvariantCulture));
        foreach (var line in said[1..])
        {
            var match = Line().Match(line);
            if (!match.Success) throw new FormatException($"a dosed day cannot say: {line}");
            var until = DosedPool.Start + TimeSpan.FromDays(int.Parse(match.Groups["day"].Value, CultureInfo.InvariantCulture) - 1) + TimeSpan.ParseExact(match.Groups["at"].Value, "hh\\:mm", CultureInfo.InvariantCulture);
            while (hall.Now < until - TimeSpan.FromMinutes(1)) hall.Minute();
            Do(hall.Pool, match.Groups["what"].Value);
        }

        var told = new StringBuilder();
        var telling = new Telling(Clock);
        foreach (var line in hall.Entries.SelectMany(telling.Of).Concat(telling.Of(hall.State))) told.Append(line).Append('\n');
        return told.ToString();
    }

    private static void Do(DosedPool pool, string what)
    {
        switch (what)
        {
            case "acid delivers nothing": pool.AcidArrives = _ => 0; break;
            case "acid delivers what it strokes": pool.AcidArrives = s => s; break;
            case "chlorine comes unasked, 8 strokes a minute": pool.ChlorineArrives = s => s + 8; break;
            case "chlorine comes as asked": pool.ChlorineArrives = s => s; break;
            case "end": break;
            default: throw new FormatException($"a dosed pool cannot do: {what}");
        }
    }

    private static string Clock(Instant at) => $"day {(int)(at - DosedPool.Start).TotalDays + 1} {at.ToDateTimeOffset():HH:mm}";

    [GeneratedRegex(@"^day (?<day>\d+) (?<at>\d\d:\d\d)\s+(?<what>.+)$")]
    private static partial Regex Line();
}
