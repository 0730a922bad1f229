using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using PlantWatch.Browser.Tests.Browser;
using PlantWatch.Server.Tests.House;

namespace PlantWatch.Browser.Tests.Journeys;

/// <summary>One person's task from its beginning to its end, with what it cost: taps, fields filled in, seconds. What it costs stands in docs/journeys.md, and a task that came to cost more is seen.</summary>
public sealed class Journey(Screen screen, string task)
{
    private static readonly Lock Writing = new();
    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private int _taps;
    private int _fields;

    /// <summary>A tap or a click.</summary>
    public Task TapAsync(string testId) => TapAsync(screen[testId]);

    /// <summary>A tap or a click.</summary>
    public async Task TapAsync(ILocator where)
    {
        _taps++;
        await where.ClickAsync();
    }

    /// <summary>A field filled in.</summary>
    public Task FillAsync(string testId, string text) => FillAsync(screen[testId], text);

    /// <summary>A field filled in, key by key.</summary>
    public async Task FillAsync(ILocator where, string text)
    {
        _fields++;
        await where.FillAsync("");
        await where.PressSequentiallyAsync(text);
    }

    /// <summary>One of a list: a tap to open it and one to choose.</summary>
    public async Task ChooseAsync(string testId, string value)
    {
        _taps += 2;
        await screen[testId].SelectOptionAsync(value);
    }

    /// <summary>The task is done: it costs what docs/journeys.md says. The seconds are the machine's, with nobody thinking or walking, and are not held against anything.</summary>
    public void CostsWhatIsListed()
    {
        var seconds = _clock.Elapsed.TotalSeconds.ToString("0", CultureInfo.InvariantCulture);
        var costs = $"| {task} | {_taps} | {_fields} |";
        var path = Repository.PathOf("docs", "journeys.md");
        lock (Writing)
        {
            var lines = File.Exists(path) ? File.ReadAllLines(path).ToList() : [];
            var at = lines.FindIndex(line => line.StartsWith($"| {task} |", StringComparison.Ordinal));
            if (Environment.GetEnvironmentVariable(Repository.WriteVariable) == "true")
            {
                if (at < 0) lines.Add($"{costs} {seconds} |");
                else lines[at] = $"{costs} {seconds} |";
                File.WriteAllLines(path, lines);
                return;
            }

            Assert.True(at >= 0, $"docs/journeys.md does not list '{task}'");
            Assert.StartsWith(costs, lines[at], StringComparison.Ordinal);
        }
    }
}
