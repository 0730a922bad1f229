using System.Globalization;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Commands.Replay;

namespace PlantWatch.Server.Tests.Commands;

/// <summary>A recorded plant of one pool: pH 7.40, sampled by hand three times a day; on the sixth day the probe begins to read 0.5 too high.</summary>
public sealed class ReplayCommandTests : IDisposable
{
    private static readonly DateTime Start = new(2025, 3, 1, 0, 0, 0, DateTimeKind.Utc);

    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-replay-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_probe_that_left_the_tests_is_flagged_after_it_left_and_not_before()
    {
        var verdicts = Replay(days: 12);
        var flagged = verdicts.Where(v => v.Probe == "p-ph" && v.Status is "maintenance_required" or "out_of_specification" or "failure").ToArray();
        Assert.NotEmpty(flagged);
        Assert.All(flagged, v => Assert.True(v.Time >= Start.AddDays(6)));
        Assert.Equal(0.5, verdicts.Last(v => v.Probe == "p-ph" && v.Bias is not null).Bias!.Value, 0.12);
        Assert.All(verdicts, v => Assert.Contains(v.Probe, (string[])["p-ph", "p-orp", "p-temperature"]));
    }

    [Fact]
    public void Half_of_the_input_gives_the_same_first_half()
    {
        var whole = Replay(days: 12);
        var half = Replay(days: 6);
        Assert.NotEmpty(half);
        Assert.Equal(half, whole.Take(half.Count));
    }

    [Fact]
    public void A_folder_without_a_recorded_plant_is_refused()
    {
        var complaints = new StringWriter();
        Assert.Equal(2, CommandLine.Run(["replay", _folder, "--out", Path.Combine(_folder, "out")], TextWriter.Null, complaints));
        Assert.Contains("plant.csv", complaints.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("readings.csv", "2025-03-02T00:00:00Z,stranger,7.4", "is of no probe of plant.csv")]
    [InlineData("readings.csv", "2025-03-02T00:00:00Z,p-ph,abc", "is no reading")]
    [InlineData("readings.csv", "9025-03-02T00:00:00Z,p-ph,7.4", "days after what stands before it")]
    [InlineData("plant.csv", "p,p-ph,ph", "p-ph stands there twice")]
    [InlineData("flow.csv", "2025-03-02T00:00:00Z,p,maybe", "is neither 1 nor 0")]
    [InlineData("checks.csv", "2025-03-02T00:00:00Z,2025-03-02T00:00:00Z,p,ph,1e999,pH,photometer", "is no number")]
    [InlineData("checks.csv", "2025-03-02T00:00:00Z,2025-03-02T00:00:00Z,q,ph,7.4,pH,photometer", "q is no pool of plant.csv")]
    [InlineData("services.csv", "2025-03-02T00:00:00Z,stranger,cleaned", "stranger is no probe of plant.csv")]
    public void A_row_that_cannot_be_used_is_named_and_nothing_is_left_out_in_silence(string file, string row, string complaint)
    {
        Replay(days: 1);
        File.AppendAllText(Path.Combine(_folder, "1", "input", file), row + "\n");
        var complaints = new StringWriter();
        Assert.Equal(2, CommandLine.Run(["replay", Path.Combine(_folder, "1"), "--out", Path.Combine(_folder, "1", "out")], TextWriter.Null, complaints));
        Assert.Contains(complaint, complaints.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void However_many_pools_run_at_once_the_answer_is_the_same_to_the_byte_and_in_the_order_of_the_plant()
    {
        Replay(days: 8);
        var one = Path.Combine(_folder, "8", "input");
        var many = Directory.CreateDirectory(Path.Combine(_folder, "many", "input")).FullName;
        foreach (var file in Directory.GetFiles(one))
        {
            var rows = File.ReadAllLines(file);
            // Pools named against the alphabet: the order is the plant's.
            File.WriteAllLines(Path.Combine(many, Path.GetFileName(file)), [rows[0], .. from pool in (string[])["s", "r", "q", "p"] from row in rows.Skip(1) select row.Replace(",p", $",{pool}", StringComparison.Ordinal).Replace($",{pool}hotometer", ",photometer", StringComparison.Ordinal).Replace($",{pool}h,", ",ph,", StringComparison.Ordinal).Replace($",{pool}H,", ",pH,", StringComparison.Ordinal)]);
        }

        File.WriteAllText(Path.Combine(many, "plant.csv"), "pool,probe,kind\n" + string.Concat(((string[])["s", "r", "q", "p"]).Select(p => $"{p},{p}-ph,ph\n{p},{p}-orp,orp\n{p},{p}-temperature,temperature\n")));
        foreach (var atOnce in (int[])[1, 2, 7])
            Assert.Equal(0, ReplayCommand.Run(Path.Combine(_folder, "many"), Path.Combine(_folder, $"out{atOnce}"), TextWriter.Null, TextWriter.Null, atOnce));
        foreach (var table in (string[])["verdicts.csv", "doubted.csv"])
            Assert.Equal(File.ReadAllBytes(Path.Combine(_folder, "out1", table)), File.ReadAllBytes(Path.Combine(_folder, "out2", table)));
        Assert.Equal(File.ReadAllBytes(Path.Combine(_folder, "out1", "verdicts.csv")), File.ReadAllBytes(Path.Combine(_folder, "out7", "verdicts.csv")));
        Assert.Equal(["s", "r", "q", "p"], File.ReadLines(Path.Combine(_folder, "out7", "verdicts.csv")).Skip(1).Select(l => l.Split(',')[1][..1]).Distinct());
    }

    [Fact]
    public void The_first_fault_in_the_order_of_the_input_is_named_whichever_pool_is_ready_first()
    {
        Replay(days: 2);
        var input = Path.Combine(_folder, "2", "input");
        File.AppendAllText(Path.Combine(input, "plant.csv"), "q,q-ph,ph\n");
        File.AppendAllText(Path.Combine(input, "readings.csv"), "2025-03-02T00:00:00Z,p-ph,late\n2025-03-02T00:00:00Z,q-ph,bad\n2025-03-02T00:00:00Z,stranger,7\n");
        var complaints = new StringWriter();
        Assert.Equal(2, ReplayCommand.Run(Path.Combine(_folder, "2"), Path.Combine(_folder, "out"), TextWriter.Null, complaints));
        Assert.Equal("\"2025-03-02T00:00:00Z,p-ph,late\" is no reading", complaints.ToString().Trim());
    }

    [Fact]
    public void A_line_longer_than_any_row_is_named_and_lines_may_end_as_on_any_machine()
    {
        var whole = Replay(days: 2);
        var readings = Path.Combine(_folder, "2", "input", "readings.csv");
        File.WriteAllText(readings, File.ReadAllText(readings).Replace("\n", "\r\n", StringComparison.Ordinal));
        Assert.Equal(0, ReplayCommand.Run(Path.Combine(_folder, "2"), Path.Combine(_folder, "2", "out"), TextWriter.Null, TextWriter.Null));
        Assert.Equal(whole, File.ReadLines(Path.Combine(_folder, "2", "out", "verdicts.csv")).Skip(1).Select(Said.Of));
        File.AppendAllText(readings, new string('7', 3_000_000));
        var complaints = new StringWriter();
        Assert.Equal(2, ReplayCommand.Run(Path.Combine(_folder, "2"), Path.Combine(_folder, "2", "out"), TextWriter.Null, complaints));
        Assert.Contains("is no reading", complaints.ToString(), StringComparison.Ordinal);
        Assert.True(complaints.ToString().Length < 200);
    }

    [Fact]
    public void A_standing_is_written_at_its_own_time_however_events_are_batched()
    {
        Replay(days: 2);
        File.AppendAllText(Path.Combine(_folder, "2", "input", "flow.csv"), $"{Time(1800)},p,0\n{Time(1810)},p,1\n");
        Assert.Equal(0, CommandLine.Run(["replay", Path.Combine(_folder, "2"), "--out", Path.Combine(_folder, "2", "out")], TextWriter.Null, TextWriter.Null));
        Said[] said = [.. File.ReadLines(Path.Combine(_folder, "2", "out", "verdicts.csv")).Skip(1).Select(Said.Of).Where(v => v.Probe == "p-ph" && v.Time >= Start.AddMinutes(1790) && v.Time < Start.AddMinutes(1850))];
        Assert.Equal([("check_function", Start.AddMinutes(1800)), ("good", Start.AddMinutes(1814))], said.Select(v => (v.Status, v.Time)));
    }

    [Fact]
    public void Readings_that_no_probe_can_show_are_counted()
    {
        Replay(days: 1);
        File.AppendAllText(Path.Combine(_folder, "1", "input", "readings.csv"), $"{Time(1441)},p-ph,15\n{Time(1442)},p-ph,7.4\n");
        var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(["replay", Path.Combine(_folder, "1"), "--out", Path.Combine(_folder, "1", "out")], output, TextWriter.Null));
        Assert.Contains("1 readings lie beyond what their probe can show", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_line_among_the_readings_ends_nothing()
    {
        var whole = Replay(days: 2);
        var readings = Path.Combine(_folder, "2", "input", "readings.csv");
        File.WriteAllLines(readings, File.ReadAllLines(readings).SelectMany((line, i) => i == 500 ? [line, ""] : new[] { line }));
        Assert.Equal(0, CommandLine.Run(["replay", Path.Combine(_folder, "2"), "--out", Path.Combine(_folder, "2", "out")], TextWriter.Null, TextWriter.Null));
        Assert.Equal(whole, File.ReadLines(Path.Combine(_folder, "2", "out", "verdicts.csv")).Skip(1).Select(Said.Of));
    }

    private List<Said> Replay(int days)
    {
        var (input, output) = (Directory.CreateDirectory(Path.Combine(_folder, $"{days}", "input")).FullName, Path.Combine(_folder, $"{days}", "out"));
        File.WriteAllText(Path.Combine(input, "plant.csv"), "pool,probe,kind\np,p-ph,ph\np,p-orp,orp\np,p-temperature,temperature\n");
        File.WriteAllText(Path.Combine(input, "flow.csv"), $"time,pool,flow\n{Time(0)},p,1\n");
        File.WriteAllText(Path.Combine(input, "services.csv"), "time,probe,what\n");
        File.WriteAllLines(Path.Combine(input, "readings.csv"), Readings(days).Prepend("time,probe,value"));
        File.WriteAllLines(Path.Combine(input, "checks.csv"), Checks(days).Prepend("time,entered,pool,quantity,value,unit,method"));
        Assert.Equal(0, CommandLine.Run(["replay", Path.Combine(_folder, $"{days}"), "--out", output], TextWriter.Null, TextWriter.Null));
        return [.. File.ReadLines(Path.Combine(output, "verdicts.csv")).Skip(1).Select(Said.Of)];
    }

    private static IEnumerable<string> Readings(int days)
    {
        for (var minute = 0; minute < days * 1440; minute++)
        {
            var wobble = 0.02 * Math.Sin(minute / 37.0);
            var ph = 7.40 + wobble + (minute >= 6 * 1440 ? 0.5 : 0) + (0.004 * (minute % 3));
            yield return string.Create(CultureInfo.InvariantCulture, $"{Time(minute)},p-ph,{ph:0.000}");
            yield return string.Create(CultureInfo.InvariantCulture, $"{Time(minute)},p-orp,{720 + (minute % 5)}");
            yield return string.Create(CultureInfo.InvariantCulture, $"{Time(minute)},p-temperature,{28 + (0.01 * (minute % 7)):0.00}");
        }
    }

    private static IEnumerable<string> Checks(int days) =>
        from day in Enumerable.Range(0, days)
        from hour in (int[])[7, 13, 19]
        let minute = (day * 1440) + (hour * 60)
        from row in (string[])[$"ph,{(hour == 13 ? "7.42" : "7.38")},pH,photometer", "free_chlorine,1.50,mg/L,photometer", "total_chlorine,1.70,mg/L,photometer", "temperature,28.0,degC,meter"]
        select $"{Time(minute)},{Time(minute + 3)},p,{row}";

    private static string Time(int minute) => Start.AddMinutes(minute).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);

    private sealed record Said(DateTime Time, string Probe, string Status, double? Bias)
    {
        public static Said Of(string line)
        {
            var fields = line.Split(',');
            return new(
                DateTime.Parse(fields[0], CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal), fields[1], fields[2],
                fields[3].Length > 0 ? double.Parse(fields[3], CultureInfo.InvariantCulture) : null);
        }
    }
}
