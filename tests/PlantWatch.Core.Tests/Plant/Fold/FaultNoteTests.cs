using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A fault note from seen to done: each version is a row of the record, the open ones stand in the state.</summary>
public sealed class FaultNoteTests
{
    private readonly Bench _bench = new();
    private readonly Guid _id = TimeOrderedId.Derive(Hall.Nine, "note");

    [Fact]
    public void A_note_is_open_then_in_hand_then_done_and_the_record_keeps_each_version()
    {
        Assert.IsType<Outcome.Done>(Note(FaultState.Open));
        Assert.IsType<Outcome.Done>(Note(FaultState.InHand, "ordered a hose"));
        Assert.Equal(FaultState.InHand, _bench.State.Faults[_id].State);
        Assert.IsType<Outcome.Done>(Note(FaultState.Done, "new hose"));
        Assert.Empty(_bench.State.Faults);
        Assert.Equal([FaultState.Open, FaultState.InHand, FaultState.Done], _bench.Entries.Select(e => e.Body).OfType<FaultEntry>().Select(e => e.Note.State));
    }

    [Fact]
    public void The_same_version_twice_is_one_row()
    {
        Note(FaultState.Open);
        Assert.IsType<Outcome.AlreadyDone>(Note(FaultState.Open));
        Assert.Single(_bench.Entries, e => e.Body is FaultEntry);
    }

    [Fact]
    public void Done_says_what_was_done_seen_says_what_was_seen_and_the_asset_exists()
    {
        Assert.Equal("done", Field(Note(FaultState.Done)));
        Assert.Equal("seen", Field(Note(FaultState.Open, seen: " ")));
        Assert.Equal("asset", Field(Note(FaultState.Open, asset: "heat exchanger")));
    }

    [Fact]
    public void An_open_note_follows_a_renamed_pump_and_leaves_with_a_removed_one()
    {
        Note(FaultState.Open);
        _bench.Load(Hall.Plan with { Pumps = [.. Hall.Plan.Pumps.Select(p => p.Id == "acid-pump" ? p with { Id = "acid-2", Was = "acid-pump" } : p)] });
        Assert.Equal("acid-2", _bench.State.Faults[_id].Asset);
        _bench.Load(Hall.Plan.Without("acid-pump"));
        Assert.Empty(_bench.State.Faults);
    }

    private Outcome Note(FaultState state, string? done = null, string seen = "drips", string asset = "acid-pump") =>
        _bench.Run(at => new FaultNoted(at, new FaultNote(_id, asset, seen, done, state, null, "M. Invented", at)));

    private static string Field(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Field;
}
