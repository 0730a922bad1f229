using System.Text;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>What bad input gets: a counted refusal that is kept with its bytes, a reason and a detail, and never changes what is known of a probe.</summary>
public sealed class RefusalTests
{
    private static readonly long Now = Hall.Nine.UnixMicroseconds / 1_000_000;

    private static readonly Case[] All =
    [
        new("a topic that nobody claims", RefusalReason.UnknownTopic, "7.4", "hall/nobody"),
        new("nothing at all", RefusalReason.Empty, ""),
        new("white space", RefusalReason.Empty, " \r\n"),
        new("a mebibyte", RefusalReason.TooLarge, new string('7', 1 << 20)),
        new("one byte over the largest payload", RefusalReason.TooLarge, new string('7', (64 * 1024) + 1)),
        new("words", RefusalReason.NotANumber, "seven point four"),
        new("a decimal comma", RefusalReason.NotANumber, "7,4"),
        new("not a number, by name", RefusalReason.NotFinite, "NaN"),
        new("infinity", RefusalReason.NotFinite, "-Infinity"),
        new("a number too large for a double", RefusalReason.NotFinite, "1e999"),
        new("above the instrument's range", RefusalReason.OutsideRange, "14.01"),
        new("below the instrument's range", RefusalReason.OutsideRange, "-0.01"),
        new("a tank more than full", RefusalReason.OutsideRange, "101", Hall.AcidTank),
        new("a pump state nobody knows", RefusalReason.UnknownState, "priming", Hall.AcidState),
        new("a pump code nobody knows", RefusalReason.UnknownState, "3", Hall.AcidState),
        new("a device clock an hour ahead", RefusalReason.ClockAhead, $$"""[{"n":"learner:ph","t":{{Now + 3600}},"v":7.4}]""", Hall.Learner),
        new("a device clock ten years ahead", RefusalReason.ClockAhead, $$"""[{"n":"learner:ph","t":{{Now + (3653L * 86400)}},"v":7.4}]""", Hall.Learner),
        new("a device clock ten years behind", RefusalReason.ClockBehind, $$"""[{"n":"learner:ph","t":{{Now - (3653L * 86400)}},"v":7.4}]""", Hall.Learner),
        new("text that is no SenML", RefusalReason.MalformedSenml, "7.4", Hall.Learner),
        new("SenML of another version", RefusalReason.UnsupportedSenml, """[{"bver":11,"n":"learner:ph","v":7.4}]""", Hall.Learner),
        new("a SenML record of text", RefusalReason.SenmlWithoutNumber, """[{"n":"learner:ph","vs":"seven"}]""", Hall.Learner),
        new("a SenML name with a blank", RefusalReason.InvalidName, """[{"n":"learner ph","v":7.4}]""", Hall.Learner),
        new("a SenML name that no probe has", RefusalReason.UnknownName, """[{"n":"learner:turbidity","v":0.2}]""", Hall.Learner),
        new("a unit that does not fit", RefusalReason.WrongUnit, """[{"n":"learner:ph","u":"mV","v":7.4}]""", Hall.Learner),
    ];

    public static TheoryData<string> Names => [.. All.Select(c => c.Name)];

    [Theory, MemberData(nameof(Names))]
    public void Is_refused_counted_and_kept(string what)
    {
        var bad = All.Single(c => c.Name == what);
        var bench = new Bench();
        bench.Says(bad.Topic, bad.Payload);
        var refusal = Assert.Single(bench.Refusals);
        Assert.Equal(bad.Reason, refusal.Reason);
        Assert.Contains(Encoding.UTF8.GetString(refusal.Payload.Span), (string[])[bad.Payload, bad.Payload.Trim('[', ']')]);
        Assert.Equal((bad.Topic, bench.Now), (refusal.Topic, refusal.ReceivedAt));
        Assert.True(TimeOrderedId.IsVersion7(refusal.Id));
        Assert.Equal((1, 1, 0, 1), (bench.Ledger.Messages, bench.Ledger.Received, bench.Ledger.Stored, bench.Ledger.Refused));
        Assert.All(bench.State.Probes, p => Assert.Equal(Quality.NotReceived, p.Last.Quality));
        Assert.Empty(bench.Readings);
    }

    [Fact]
    public void Invalid_utf8_is_refused_with_its_very_bytes()
    {
        var bench = new Bench();
        bench.Says(Hall.Ph, [0x37, 0x2E, 0xFF]);
        Assert.Equal(RefusalReason.InvalidUtf8, Assert.Single(bench.Refusals).Reason);
        Assert.Equal([0x37, 0x2E, 0xFF], bench.Refusals[0].Payload.ToArray());
    }

    [Fact]
    public void A_retained_message_is_a_last_value_and_no_new_sample()
    {
        var bench = new Bench();
        bench.Says(Hall.Ph, "7.4"u8.ToArray(), retained: true);
        Assert.Equal(RefusalReason.Retained, Assert.Single(bench.Refusals).Reason);
        Assert.Empty(bench.Readings);
    }

    [Fact]
    public void Another_value_for_the_same_device_time_is_refused_and_the_first_stands()
    {
        var bench = new Bench();
        var at = bench.Now;
        bench.LearnerSays("ph", at, 7.4);
        bench.LearnerSays("ph", at, 7.9);
        Assert.Equal(RefusalReason.ConflictingValue, Assert.Single(bench.Refusals).Reason);
        Assert.Equal(7.4, bench.Probe("learner-ph").Last.Raw);
    }

    [Fact]
    public void A_bad_record_of_a_pack_is_refused_alone_with_its_own_bytes()
    {
        var bench = new Bench();
        bench.Says(Hall.Learner, """[{"n":"learner:ph","v":7.4},{"n":"learner:turbidity","v":1},{"n":"learner:temperature","v":29.5}]""");
        Assert.Equal((3, 2, 1), (bench.Ledger.Received, bench.Ledger.Stored, bench.Ledger.Refused));
        Assert.Equal("""{"n":"learner:turbidity","v":1}""", Encoding.UTF8.GetString(Assert.Single(bench.Refusals).Payload.Span));
    }

    [Fact]
    public void Before_the_plan_came_into_force_nothing_is_claimed_and_all_is_kept()
    {
        var result = Core.Plant.Step.Run(Core.Plant.CircuitState.Of(Hall.Plan),
        [
            new Core.Plant.MessageArrived(Hall.Nine, Hall.Ph, "7.4"u8.ToArray(), false, null), new Core.Plant.ClockTicked(Hall.Nine),
        ]);
        Assert.Equal(RefusalReason.UnknownTopic, Assert.Single(result.Refusals).Reason);
    }

    [Fact]
    public void Every_reason_the_fold_can_give_has_its_test()
    {
        // Invalid UTF-8, retained and conflicting values have tests of their own; a defect is the shell's word for a fold that failed.
        RefusalReason[] elsewhere = [RefusalReason.None, RefusalReason.InvalidUtf8, RefusalReason.Retained, RefusalReason.ConflictingValue, RefusalReason.Defect];
        Assert.Equal(Enum.GetValues<RefusalReason>().Except(elsewhere).Order(), All.Select(c => c.Reason).Distinct().Order());
    }

    private sealed record Case(string Name, RefusalReason Reason, string Payload, string Topic = Hall.Ph);
}
