using CsCheck;
using PlantWatch.Core.Alarms;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Alarms;

/// <summary>An alarm on the bench walks at random beside its plain telling, and the two never differ.</summary>
public sealed class AlarmWalkTests
{
    private enum Does { Inside, Edge, Outside, Tick, Acknowledge, Shelve, Unshelve, FlowLost, FlowBack, Restart }

    // Readings and time outweigh people; delays are 120 s, so steps of up to 90 s meet them half way.
    private static readonly Gen<(Does What, int Seconds)[]> Walks = Gen.Select(
        Gen.Frequency((4, Gen.Const(Does.Inside)), (2, Gen.Const(Does.Edge)), (5, Gen.Const(Does.Outside)), (3, Gen.Const(Does.Tick)), (1, Gen.Const(Does.Acknowledge)),
            (1, Gen.Const(Does.Shelve)), (1, Gen.Const(Does.Unshelve)), (1, Gen.Const(Does.FlowLost)), (2, Gen.Const(Does.FlowBack)), (1, Gen.Const(Does.Restart))),
        Gen.Int[1, 90]).Array[1, 400];

    [Fact]
    public void Two_hundred_thousand_random_steps_agree_with_the_state_table() => Walks.Sample(walk =>
    {
        var bench = new Bench();
        var plain = new PlainAlarm(onDelay: 120, offDelay: 120);
        var flow = true;
        foreach (var (what, seconds) in walk)
        {
            bench.Skip(TimeSpan.FromSeconds(seconds));
            Do(bench, plain, what, seconds, ref flow);
            Assert.Equal(plain.Shown, Shown(bench.Alarm(RuleBook.AboveLimit, "main-ph")));
        }
    }, iter: 1000);

    private static void Do(Bench bench, PlainAlarm plain, Does what, int seconds, ref bool flow)
    {
        switch (what)
        {
            case Does.Inside or Does.Edge or Does.Outside: Read(bench, plain, what, flow); break;
            case Does.Tick:
                // Of a shelf that ends and a delay that is over each takes a tick of its own.
                bench.Tick();
                bench.Tick();
                plain.Time(Seconds(bench));
                break;
            case Does.Acknowledge: Act(bench, plain, id => bench.Run(at => new AlarmAcknowledged(at, id, "J. Sample", "seen")), plain.Acknowledge); break;
            case Does.Shelve: Shelve(bench, plain, seconds); break;
            case Does.Unshelve: Act(bench, plain, id => bench.Run(at => new AlarmUnshelved(at, id, "J. Sample")), () => { if (plain.IsShelved) plain.Unshelve(); }); break;
            case Does.FlowLost or Does.FlowBack: Flow(bench, plain, what == Does.FlowBack, ref flow); break;
            case Does.Restart: bench.Restart(); break;
        }
    }

    private static void Read(Bench bench, PlainAlarm plain, Does what, bool flow)
    {
        // The limit is 7.6 and the deadband 0.05: 7.58 is inside, but not enough to clear.
        var (text, outside) = what switch { Does.Inside => ("7.4", false), Does.Edge => ("7.58", plain.InAlarm), _ => ("7.65", true) };
        bench.Says(Hall.Ph, text);
        if (flow) plain.Reading(Seconds(bench), outside);
    }

    private static void Shelve(Bench bench, PlainAlarm plain, int seconds)
    {
        // Now and then longer than a shelf may be.
        var span = TimeSpan.FromSeconds(seconds % 9 == 0 ? 30_000 : seconds * 7);
        Act(bench, plain, id => bench.Run(at => new AlarmShelved(at, id, at + span, "J. Sample", "work on it")), () => { if (span <= AlarmLife.LongestShelf) plain.Shelve(Seconds(bench) + span.TotalSeconds); });
    }

    private static void Flow(Bench bench, PlainAlarm plain, bool back, ref bool flow)
    {
        bench.Says(Hall.Flow, back ? "1" : "0");
        if (flow != back) { if (back) plain.FlowBack(); else plain.FlowLost(); }
        flow = back;
    }

    private static void Act(Bench bench, PlainAlarm plain, Func<Guid, Outcome> act, Action tell)
    {
        var live = bench.Alarm(RuleBook.AboveLimit, "main-ph") is { State: not AlarmState.Normal };
        Assert.Equal(plain.Exists, live);
        var outcome = act(live ? bench.Alarm(RuleBook.AboveLimit, "main-ph")!.Id : Guid.CreateVersion7());
        if (live) tell();
        else Assert.Equal(TurnedDownKind.NotFound, Assert.IsType<Outcome.TurnedDown>(outcome).Kind);
    }

    private static double Seconds(Bench bench) => bench.Now.UnixMicroseconds / 1e6;

    private static char Shown(AlarmRecord? alarm) => alarm?.State switch
    {
        null or AlarmState.Normal => 'A', AlarmState.Unacknowledged => 'B', AlarmState.Acknowledged => 'C', AlarmState.ReturnedUnacknowledged => 'D',
        AlarmState.Shelved => 'G', AlarmState.SuppressedByDesign => 'H', _ => '?',
    };
}
