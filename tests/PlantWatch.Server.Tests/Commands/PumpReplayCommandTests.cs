using System.Globalization;
using PlantWatch.Server.Commands;

namespace PlantWatch.Server.Tests.Commands;

/// <summary>Recorded dosing of two pools: in one the circulation stops while the acid pump goes on, in the other a pump runs on from the second day.</summary>
public sealed class PumpReplayCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-pumps-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Verdicts_stand_in_the_table_with_their_times()
    {
        var (answer, verdicts, _) = Replay(Write("whole", 3000));
        Assert.Equal(0, answer);
        Assert.Equal("time,pool,pump,kind,state", verdicts[0]);
        Assert.Contains("2025-03-01T10:00:00Z,a,acid,no_circulation,raised", verdicts);
        Assert.Contains("2025-03-01T10:20:00Z,a,acid,no_circulation,cleared", verdicts);
        Assert.Contains(verdicts, v => v.StartsWith("2025-03-02T20:0", StringComparison.Ordinal) && v.EndsWith(",b,chlorine,stuck_on,raised", StringComparison.Ordinal));
    }

    [Fact]
    public void Half_of_the_input_gives_the_same_first_half()
    {
        var (_, whole, _) = Replay(Write("whole", 3000));
        var (_, half, _) = Replay(Write("half", 1500));
        Assert.True(half.Length > 1);
        Assert.Equal(half.Where(v => v.Contains(",a,", StringComparison.Ordinal)), whole.Where(v => v.Contains(",a,", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,stranger,ph,7.4", "of no pool of plant.csv")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,a,ph,7.4", "its pool was over before")]
    [InlineData("signals.csv", "2025-03-01T00:00:00Z,b,ph,7.4", "not in the order of time")]
    [InlineData("signals.csv", "yesterday,b,ph,7.4", "no time")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b,ph,74", "no value that this signal can have")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b,ph,NaN", "no value")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b,acid_tank_l,-3", "no value that this signal can have")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b,smell,1", "no signal")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b", "not time, pool, signal and value")]
    [InlineData("signals.csv", "2025-03-09T00:00:00Z,b,circulation,0.5", "no value that this signal can have")]
    [InlineData("plant.csv", "c,100,100,3,7,0,120,0.6", "not a pool with figures above nil")]
    [InlineData("plant.csv", "a,100,100,3,7,0.4,120,0.6", "stands there twice")]
    [InlineData("checks.csv", "2025-03-01T07:00:00Z,a,free_chlorine,1e999", "no value that a test can give")]
    [InlineData("checks.csv", "2025-03-01T07:00:00Z,z,free_chlorine,1", "of no pool of plant.csv")]
    public void A_row_that_cannot_be_used_is_named_and_the_rest_still_told(string file, string row, string complaint)
    {
        var folder = Write("bad", 1500);
        File.AppendAllText(Path.Combine(folder, "input", file), row + "\n");
        var (answer, verdicts, complaints) = Replay(folder);
        Assert.Equal(1, answer);
        Assert.Contains($"{file}, line ", complaints, StringComparison.Ordinal);
        Assert.Contains(complaint, complaints, StringComparison.Ordinal);
        Assert.Contains("2025-03-01T10:00:00Z,a,acid,no_circulation,raised", verdicts);
    }

    [Fact]
    public void A_folder_without_recorded_dosing_is_refused()
    {
        var complaints = new StringWriter();
        Assert.Equal(2, CommandLine.Run(["replay-pumps", _folder, "--out", Path.Combine(_folder, "out")], TextWriter.Null, complaints));
        Assert.Contains("plant.csv", complaints.ToString(), StringComparison.Ordinal);
    }

    private static (int Answer, string[] Verdicts, string Complaints) Replay(string folder)
    {
        var complaints = new StringWriter();
        var answer = CommandLine.Run(["replay-pumps", folder, "--out", Path.Combine(folder, "out")], TextWriter.Null, complaints)!.Value;
        return (answer, File.ReadAllLines(Path.Combine(folder, "out", "pump_verdicts.csv")), complaints.ToString());
    }

    private string Write(string name, int minutes)
    {
        var input = Directory.CreateDirectory(Path.Combine(_folder, name, "input")).FullName;
        File.WriteAllText(
            Path.Combine(input, "plant.csv"),
            "pool,volume_m3,alkalinity,turnover_h,acid_strength_eq_per_l,acid_ml_per_stroke,chlorine_strength_g_per_l,chlorine_ml_per_stroke\na,100,100,3,7,0.4,120,0.6\nb,100,100,3,7,0.4,120,0.6\n");
        File.WriteAllText(Path.Combine(input, "checks.csv"), "time,pool,quantity,value\n2025-03-01T07:00:00Z,a,free_chlorine,1.4\n2025-03-01T07:00:00Z,a,ph,7.3\n");
        File.WriteAllLines(Path.Combine(input, "signals.csv"), ["time,pool,signal,value", .. from pool in (string[])["a", "b"] from minute in Enumerable.Range(0, minutes) from row in Rows(pool, minute) select row]);
        return Path.Combine(_folder, name);
    }

    private static IEnumerable<string> Rows(string pool, int minute)
    {
        var time = new DateTime(2025, 3, 1, 0, 0, 0, DateTimeKind.Utc).AddMinutes(minute).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
        var (stands, runsOn) = (pool == "a" && minute is >= 600 and < 620, pool == "b" && minute >= 2640);
        yield return $"{time},{pool},ph,7.32";
        yield return $"{time},{pool},orp,710";
        yield return $"{time},{pool},acid_strokes,{4 + (minute / 60 % 2)}";
        yield return $"{time},{pool},chlorine_strokes,{(runsOn ? 30 : stands ? 0 : 2)}";
        yield return $"{time},{pool},circulation,{(stands ? 0 : 1)}";
    }
}
