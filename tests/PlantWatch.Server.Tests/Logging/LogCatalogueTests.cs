using System.Reflection;
using System.Text;
using Microsoft.Extensions.Logging;
using PlantWatch.Server.Tests.House;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Logging;

/// <summary>Every log line of the server has a number that never changes its meaning; the list of them is a page of the documentation.</summary>
public sealed class LogCatalogueTests
{
    private static readonly (int Block, string Title, string[] Folders)[] Blocks =
    [
        (1000, "Server", ["Server", "Live", "Accounts", "Charts", "Reports", "Health", "Logging", "Metrics", "WhatIf"]),
        (2000, "Ingest", ["Ingest"]),
        (3000, "Plant file and boards", ["PlantFile", "Boards"]),
        (4000, "Loop and storage", ["Loop", "Storage", "Series", "Backup", "Upkeep"]),
        (5000, "Interface", ["Api"]),
        (6000, "Telling people", ["Telling"]),
        (7000, "Paper", ["Paper"]),
    ];

    private sealed record Line(int Number, LogLevel Level, string Text, string Folder, string Where);

    private static readonly List<Line> Lines =
    [
        .. from assembly in (Assembly[])[typeof(PlantWatchOptions).Assembly, typeof(PartitionKey).Assembly]
           from type in assembly.GetTypes()
           from method in type.GetMethods(BindingFlags.Static | BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
           let said = method.GetCustomAttribute<LoggerMessageAttribute>()
           where said is not null
           orderby said.EventId
           select new Line(said.EventId, said.Level, said.Message ?? "", type.Namespace!.Split('.')[^1], $"{type.Name}.{method.Name}"),
    ];

    [Fact]
    public void Every_number_is_used_once()
    {
        var twice = Lines.GroupBy(l => l.Number).Where(g => g.Count() > 1).Select(g => $"{g.Key}: {string.Join(", ", g.Select(l => l.Where))}");
        Findings.None(twice, "numbers used twice");
    }

    [Fact]
    public void Every_number_lies_in_the_block_of_its_folder()
    {
        var strays = Lines.Where(l => !Blocks.Any(b => l.Number / 1000 * 1000 == b.Block && b.Folders.Contains(l.Folder))).Select(l => $"{l.Number} {l.Where}");
        Findings.None(strays, "numbers outside the block of their folder");
    }

    [Fact]
    public void Every_line_says_something() => Assert.All(Lines, l => Assert.False(string.IsNullOrWhiteSpace(l.Text), l.Where));

    [Fact]
    public void The_page_lists_every_message() => Repository.IsUpToDate(Page(), "docs", "log-messages.md");

    [Fact]
    public void No_log_line_of_the_server_goes_past_the_catalogue()
    {
        // ILogger's own Log... extensions take free text, which has no number.
        var free = Assemblies.MembersUsedBy(typeof(PlantWatchOptions).Assembly.Location)
            .Where(m => m.StartsWith("Microsoft.Extensions.Logging.LoggerExtensions.Log", StringComparison.Ordinal));
        Findings.None(free, "log lines without a number");
    }

    private static string Page()
    {
        var page = new StringBuilder("""
            # Log messages

            Every line of the log carries a number, which keeps its meaning for ever: search for it here. On the console it stands after the level; in
            `data/logs/plantwatch-*.jsonl` (one JSON object a line) it is `MessageId`. A name in braces is a figure of the line and a property of the JSON object.
            This page is generated from the source by a test; a message that is taken out leaves its number unused.

            """);
        foreach (var (block, title, folders) in Blocks)
        {
            page.Append($"\n## {block}: {title}\n\n");
            var lines = Lines.Where(l => l.Number / 1000 * 1000 == block).ToList();
            if (lines.Count == 0) page.Append("None yet.\n");
            else page.Append("| number | level | message |\n|---|---|---|\n");
            foreach (var line in lines) page.Append($"| {line.Number} | {line.Level} | {line.Text.Replace("|", "\\|", StringComparison.Ordinal)} |\n");
        }
        return page.ToString().ReplaceLineEndings("\n");
    }
}
