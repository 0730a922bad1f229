using System.Globalization;
using System.Security.Cryptography;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Commands;

/// <summary>Two days of one pool: pH 7.40, on the second day 7.75 for three hours; from hour 30 on the probe reads 0.5 above the tests.</summary>
public sealed class StoreReplayTests : IDisposable
{
    private const string Plant = """
        site:
          name: Bramble Street Baths
          time_zone: Etc/UTC
        products:
          - { id: acid, name: Hydrochloric acid, kind: hydrochloric_acid, strength_percent: 10 }
        circuits:
          - id: hall
            name: Hall
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - { measurand: ph, low: 7.0, high: 7.6, source: test }
            probes:
              - { id: ph, name: pH, pool: main, measurand: ph, origin: raw, topic: hall/ph, format: number, range: [0, 14], every_seconds: 10 }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-store-replay-").FullName;

    private string Data => Path.Combine(_folder, "data");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Under_the_same_plant_file_nothing_differs_and_the_record_is_left_as_it_was()
    {
        await LiveAsync();
        var before = SHA256.HashData(await File.ReadAllBytesAsync(Path.Combine(Data, "record.db")));
        var (said, rows) = Replay("out", 0, 48);
        Assert.Empty(rows);
        Assert.Contains("in the order of their sample times", said, StringComparison.Ordinal);
        Assert.Contains("verdicts on checks: 12 the same", said, StringComparison.Ordinal);
        Assert.Matches("alarms: [1-9][0-9]* the same\n", said);
        Assert.Matches("probes flagged: [1-9][0-9]* the same\n", said);
        Assert.Equal(before, SHA256.HashData(await File.ReadAllBytesAsync(Path.Combine(Data, "record.db"))));
    }

    [Fact]
    public async Task Under_a_wider_limit_an_alarm_would_be_gone_and_under_a_narrower_one_there_would_be_a_new_one()
    {
        await LiveAsync();
        var (_, wider) = Replay("wider", 20, 29, Plant.Replace("high: 7.6", "high: 8.2", StringComparison.Ordinal));
        // The probe's alarm, that of the test by hand an hour later, and that nobody has closed the breach since.
        Assert.Equal(["R-011", "R-012", "R-070"], wider.Select(r => r.Split(',')[2]));
        Assert.StartsWith("alarm,ph,R-011,gone,2026-03-03T00:0", wider[0], StringComparison.Ordinal);
        Assert.Contains("7.6", wider[0], StringComparison.Ordinal);
        Assert.StartsWith("alarm,main/ph,R-012,gone,2026-03-03T01:0", wider[1], StringComparison.Ordinal);
        var (said, narrower) = Replay("narrower", 2, 20, Plant.Replace("high: 7.6", "high: 7.3", StringComparison.Ordinal));
        // Beside them what nobody settled in its time.
        Assert.Contains(narrower, r => r.StartsWith("alarm,main/ph,R-070,new", StringComparison.Ordinal));
        Assert.Equal(["alarm,main/ph,R-012,new", "alarm,ph,R-011,new"], narrower.Where(r => !r.Contains("R-070", StringComparison.Ordinal)).Select(r => string.Join(',', r.Split(',')[..4])).Order(StringComparer.Ordinal));
        Assert.Contains($"alarms: {narrower.Length} new\n", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_limit_that_a_slow_rise_passes_sooner_gives_the_same_alarm_earlier()
    {
        await new LivedRecord(Data, Plant).LiveAsync(24, hour => 7.3 + Math.Max(0, 0.05 * (hour - 10)));
        var (_, rows) = Replay("out", 0, 24, Plant.Replace("high: 7.6", "high: 7.5", StringComparison.Ordinal));
        var earlier = Assert.Single(rows, r => r.Contains("R-011", StringComparison.Ordinal)).Split(',');
        Assert.Equal("earlier", earlier[3]);
        // 0.1 at 0.05 an hour.
        Assert.Equal(-120, double.Parse(earlier[6], CultureInfo.InvariantCulture), 15.0);
    }

    [Fact]
    public async Task What_came_later_changes_nothing_of_what_was_said_before()
    {
        await LiveAsync();
        Replay("whole", 0, 48);
        Replay("half", 0, 31);
        var half = await File.ReadAllLinesAsync(Path.Combine(_folder, "half", "verdicts.csv"));
        Assert.True(half.Length > 5);
        Assert.Equal(half, (await File.ReadAllLinesAsync(Path.Combine(_folder, "whole", "verdicts.csv"))).Take(half.Length));
    }

    [PeerFact("mosquitto_pub")]
    public async Task Beside_a_running_server_it_reads_what_is_committed()
    {
        await using var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 100).Select(i => FormattableString.Invariant($"{7.3 + (i % 10 / 100.0):0.00}")));
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)));
        var output = new StringWriter { NewLine = "\n" };
        var (from, to) = (WholeServer.Now - TimeSpan.FromHours(1), WholeServer.Now + TimeSpan.FromSeconds(1));
        Assert.Equal(0, CommandLine.Run(["replay", "--from", from.ToString(), "--to", to.ToString(), "--data", Path.Combine(server.Folder, "data"), "--out", Path.Combine(_folder, "out")], output, output));
        Assert.Contains("hall: 100 readings", output.ToString(), StringComparison.Ordinal);
        Assert.Contains("1 checks and calibrations", output.ToString(), StringComparison.Ordinal);
        await server.PublishAsync("hall/ph", "7.35");
        Assert.Equal(101, (await server.SumsAsync()).Stored);
    }

    [Theory]
    [InlineData("--from 2026-03-02T00:00:00Z --to 2026-03-01T00:00:00Z --out x", 2, "replay --from T")]
    [InlineData("--from 0001-01-01T00:00:00Z --to 2026-03-01T00:00:00Z --out x", 2, "replay --from T")]
    [InlineData("--from 9999-12-30T00:00:00Z --to 9999-12-31T23:59:59Z --out x", 2, "replay --from T")]
    [InlineData("--from yesterday --to 2026-03-01T00:00:00Z --out x", 2, "replay --from T")]
    [InlineData("--from 2026-03-02T00:00:00Z --to 2026-03-03T00:00:00Z --out x --data nowhere", 1, "plant.in-force.yaml")]
    [InlineData("--from 2026-03-02T00:00:00Z --to 2026-03-03T00:00:00Z --out x --plant HERE/plant.yaml --data nowhere", 2, "record.db is not there")]
    [InlineData("--from 2026-03-02T00:00:00Z --to 2026-03-03T00:00:00Z --out x --plant HERE/plant.yaml --data HERE", 2, "is a database of another program")]
    public void What_cannot_be_done_is_named(string words, int answer, string complaint)
    {
        File.WriteAllText(Path.Combine(_folder, "plant.yaml"), Plant);
        using (var other = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(_folder, "record.db")};Pooling=False"))
        {
            other.Open();
            using var command = other.CreateCommand();
            command.CommandText = "CREATE TABLE theirs (id)";
            command.ExecuteNonQuery();
        }

        var complaints = new StringWriter();
        Assert.Equal(answer, CommandLine.Run(["replay", .. words.Replace("HERE", _folder, StringComparison.Ordinal).Split(' ')], TextWriter.Null, complaints));
        Assert.Contains(complaint, complaints.ToString(), StringComparison.Ordinal);
    }

    private Task LiveAsync() => new LivedRecord(Data, Plant).LiveAsync(
        48, hour => (hour is >= 24 and < 27 ? 7.75 : 7.4) + (hour >= 30 ? 0.5 : 0) + (0.03 * Math.Sin(hour)), [.. Enumerable.Range(0, 12).Select(i => ((double)(4 * i) + 1, i == 6 ? 7.75 : 7.4))]);

    private (string Said, string[] Rows) Replay(string to, int from, int until, string? plant = null)
    {
        var output = new StringWriter { NewLine = "\n" };
        string[] other = [];
        if (plant is not null)
        {
            File.WriteAllText(Path.Combine(_folder, "other.yaml"), plant);
            other = ["--plant", Path.Combine(_folder, "other.yaml")];
        }

        var answer = CommandLine.Run(
            ["replay", "--from", $"{LivedRecord.Start + TimeSpan.FromHours(from)}", "--to", $"{LivedRecord.Start + TimeSpan.FromHours(until)}", "--data", Data, "--out", Path.Combine(_folder, to), .. other], output, output);
        Assert.True(answer == 0, output.ToString());
        return (output.ToString(), [.. File.ReadLines(Path.Combine(_folder, to, "comparison.csv")).Skip(1)]);
    }
}
