using PlantWatch.Server.Commands.Replay;

namespace PlantWatch.Server.Tests.Commands;

public sealed class ProgressTests
{
    [Fact]
    public void Into_a_file_it_writes_a_plain_line_each_tenth_and_never_one_twice()
    {
        var output = new StringWriter { NewLine = "\n" };
        var progress = new Progress(output, isTerminal: false, whole: 1000);
        for (var i = 0; i < 250; i++) progress.Add(4);
        progress.End();
        Assert.Equal(string.Concat(Enumerable.Range(1, 10).Select(i => $"{i * 10} %\n")), output.ToString());
    }

    [Fact]
    public void On_a_terminal_one_line_is_written_over_and_taken_away_at_the_end()
    {
        var output = new StringWriter();
        var progress = new Progress(output, isTerminal: true, whole: 1000);
        progress.Add(500);
        Assert.Equal($"\r[{new string('#', 20)}{new string('.', 20)}]  50 %", output.ToString());
        progress.End();
        Assert.EndsWith("\r" + new string(' ', 49) + "\r", output.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain('\n', output.ToString());
    }

    [Fact]
    public void Asked_from_many_threads_it_ends_at_the_whole()
    {
        var output = new StringWriter { NewLine = "\n" };
        var progress = new Progress(TextWriter.Synchronized(output), isTerminal: false, whole: 10_000);
        Parallel.For(0, 10_000, _ => progress.Add(1));
        progress.Add(0);
        Assert.EndsWith("100 %\n", output.ToString(), StringComparison.Ordinal);
    }
}
