using CsCheck;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Alarms.Telling;

/// <summary>Alarms come and go at random, looks are missed at random, and what must hold of the messages holds.</summary>
public sealed class TellingWalkTests
{
    private static readonly Gen<(int What, int Which, int Minutes)[]> Walks = Gen.Select(Gen.Int[0, 6], Gen.Int[0, 5], Gen.Int[0, 200]).Array[1, 60];

    [Fact]
    public void Nothing_is_told_twice() => Walks.Sample(walk => Assert.Distinct(Walk(walk, static (_, _) => { }).Told.Select(n => n.Id)), iter: 2000);

    [Fact]
    public void No_look_leaves_a_critical_alarm_that_asks_for_somebody_without_a_message_to_a_person() => Walks.Sample(walk => Walk(walk, static (bench, _) =>
    {
        foreach (var alarm in bench.Live.Where(a => a.Priority == Priority.Critical && a.State == AlarmState.Unacknowledged))
            Assert.Contains(bench.Told, n => n.Alarm == alarm.Id && n.AnnunciatedAt == alarm.AnnunciatedAt && n.Kind == NoticeKind.Raised && n.Person is not null);
    }), iter: 2000);

    [Fact]
    public void The_more_severe_comes_first() => Walks.Sample(walk => Walk(walk, static (bench, before) =>
        Assert.Equal(bench.Told.Skip(before).OrderByDescending(n => n.Priority).Select(n => n.Id), bench.Told.Skip(before).Select(n => n.Id))), iter: 2000);

    [Fact]
    public void An_end_is_told_only_where_the_beginning_was() => Walks.Sample(walk =>
    {
        var told = Walk(walk, static (_, _) => { }).Told;
        foreach (var end in told.Where(n => n.Kind != NoticeKind.Raised))
            Assert.Contains(told.TakeWhile(n => n != end), n => n.Kind == NoticeKind.Raised && (n.Alarm, n.Channel, n.Person) == (end.Alarm, end.Channel, end.Person));
    }, iter: 2000);

    [Fact]
    public void Low_and_medium_are_never_told_in_the_quiet_hours() => Walks.Sample(walk => Walk(walk, static (bench, before) =>
    {
        // In August 22:00 to 07:00 in London is 21:00 to 06:00 UTC.
        if (bench.Now.ToDateTimeOffset().Hour is >= 21 or < 6) Assert.All(bench.Told.Skip(before), n => Assert.True(n.Priority >= Priority.High));
    }), iter: 2000);

    private static TellingBench Walk((int What, int Which, int Minutes)[] walk, Action<TellingBench, int> afterLook)
    {
        var bench = new TellingBench(TellingBench.Usual);
        foreach (var (what, which, minutes) in walk)
        {
            bench.Now += TimeSpan.FromMinutes(minutes);
            var key = $"R-0{which}0/x";
            if (what < 5) Do(bench, what, which, key);
            if (what == 4) continue; // Nobody looked this time.
            var before = bench.Told.Count;
            bench.Look();
            afterLook(bench, before);
        }

        return bench;
    }

    private static void Do(TellingBench bench, int what, int which, string key)
    {
        if (!bench.Has(key)) bench.Raise(key, (Priority)(which % 5));
        else if (what == 0) bench.Acknowledge(key);
        else if (what == 1 && bench[key].Active) bench.Clear(key);
        else if (what == 2 && bench[key].Active) bench.ReAlarm(key);
        else if (what == 3) bench[key] = bench[key] with { ShelvedUntil = bench[key].ShelvedUntil.IsSet ? Instant.Never : bench.Now + TimeSpan.FromHours(1) };
    }
}
