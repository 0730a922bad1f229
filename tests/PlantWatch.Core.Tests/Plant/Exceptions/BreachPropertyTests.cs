using CsCheck;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant.Exceptions;

/// <summary>What holds of the exceptions whatever happens, over the random days of the hall.</summary>
public sealed class BreachPropertyTests
{
    // What is owed by an incident runs by the incident's clock: there By is never.
    [Fact]
    public void Whatever_happens_a_pool_and_quantity_has_one_open_line_and_every_open_one_owes_something() => Walk.Acts.Sample(acts => Walk.Live(acts, bench =>
    {
        Assert.Equal(bench.State.Exceptions.Length, bench.State.Exceptions.Select(l => l.Key).Distinct().Count());
        Assert.All(bench.State.Exceptions, l => Assert.True(l.IsOpen && l.Owed.Act != OwedAct.Nothing && l.Owed.By.IsSet == (l.Owed.Act != OwedAct.Incident) && !l.ClosedAt.IsSet));
        Assert.All(bench.State.ClosedExceptions, l => Assert.True(!l.IsOpen && l.Owed == default && l.ClosedAt.IsSet));
        Assert.Equal(bench.State.Exceptions.Length + bench.State.ClosedExceptions.Length, bench.State.Exceptions.Concat(bench.State.ClosedExceptions).Select(l => l.Id).Distinct().Count());
    }), iter: 300, print: Print);

    [Fact]
    public void No_line_is_closed_by_a_retest_without_one_that_is_inside_and_later_and_minutes_are_never_negative() => Walk.Acts.Sample(acts =>
    {
        foreach (var line in Walk.Live(acts).Entries.Select(e => e.Body).OfType<ExceptionEntry>().Select(e => e.Line))
        {
            if (line.Closing == Closing.ByRetest && !line.Reading.Withdrawn) Assert.True(line.Answer is { Word: RetestWord.Inside, Withdrawn: false } answer && answer.At >= line.Reading.At, line.Key);
            foreach (var at in line.Steps.Select(s => s.At).Append(line.ClosedAt)) Assert.True(line.Until(at) is null || line.Until(at) >= TimeSpan.Zero);
            Assert.True(line.Action is null || line.Action.At >= line.Reading.At);
            Assert.Equal(line.Steps.Select(s => s.At).Order(), line.Steps.Select(s => s.At));
        }
    }, iter: 300, print: Print);

    [Fact]
    public void Every_test_that_raises_an_alarm_of_the_water_rests_in_one_line() => Walk.Acts.Sample(acts => Walk.Live(acts, bench =>
    {
        foreach (var alarm in bench.State.Alarms.Values.Where(a => a.Active && BreachRules.GradeOf(a.Rule) != BreachGrade.Unknown && !BreachRules.IsLiveLimit(a.Rule) && a.Subject.Contains('/', StringComparison.Ordinal)))
            Assert.True(bench.State.Exceptions.Count(l => l.Key == alarm.Subject) == 1, $"{alarm.Key} stands and has no line");
    }), iter: 300, print: Print);

    [Fact]
    public void A_breach_told_in_any_order_of_arrival_has_one_line_that_begins_with_the_first_reading() =>
        Gen.Select(Gen.Shuffle(new[] { 0, 1, 2, 3 }), Gen.Double[0.3, 0.8]).Sample((order, low) =>
        {
            var bench = BreachBench.New();
            bench.Minutes(90);
            var start = bench.Now;
            foreach (var i in order) bench.TestsChlorine(low + (i / 100.0), minutesAgo: (bench.Now - start).TotalMinutes + 80 - (20 * i));
            var line = Assert.Single(bench.State.Exceptions);
            Assert.Equal(80, Math.Round((start - line.Reading.At).TotalMinutes));
            Assert.Equal(3, line.Steps.Count(s => s.IsRetest));
        }, iter: 60);

    [Fact]
    public void What_is_told_of_a_line_is_the_same_from_the_journal() => Walk.Acts.Sample(acts =>
    {
        var bench = Walk.Live(acts);
        var again = Step.Run(CircuitState.Of(new() { Id = "hall", Name = "Hall", TimeZone = "Europe/London" }), bench.Events);
        Assert.Equal(Lines(bench.Entries), Lines(again.Entries));
    }, iter: 60, print: Print);

    private static string[] Lines(IEnumerable<RecordEntry> entries) =>
        [.. entries.Where(e => e.Body is ExceptionEntry).Select(e => System.Text.Json.JsonSerializer.Serialize(e, PlantJson.Options))];

    private static string Print(Walk.Act[] acts) => System.Text.Json.JsonSerializer.Serialize(acts.Select(a => new[] { a.What, a.A, a.B }));
}
