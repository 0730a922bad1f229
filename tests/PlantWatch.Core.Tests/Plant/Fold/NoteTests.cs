using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Plant.Notes;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>What people write about a span of time.</summary>
public sealed class NoteTests
{
    private static SpanNote Party(Bench bench, string name = "party") =>
        new(TimeOrderedId.Derive(bench.Now, name), "main", bench.Now - TimeSpan.FromHours(2), bench.Now - TimeSpan.FromHours(1), "School party, forty children", "R. Example");

    private static Outcome Write(Bench bench, SpanNote note) => bench.Run(at => new NoteWritten(at, note));

    private static string? WhyNot(Outcome outcome) => outcome is Outcome.TurnedDown no ? $"{no.Remarks[0].Field} {no.Remarks[0].Reason.Code}" : null;

    [Fact]
    public void A_note_goes_into_the_record_at_the_time_it_speaks_of_and_once_however_often_it_is_sent()
    {
        var bench = new Bench(Hall.Plan);
        var note = Party(bench);
        Assert.IsType<Outcome.Done>(Write(bench, note with { Text = "  School party, forty children " }));
        Assert.IsType<Outcome.AlreadyDone>(Write(bench, note));
        var row = Assert.Single(bench.Entries, e => e.Body is NoteEntry);
        Assert.Equal((note.From, "main", note.Id), (row.HappenedAt, row.Subject, row.Id));
        Assert.True(((NoteEntry)row.Body).Note.SaysWhat(note));
        Assert.Equal("id id.taken", WhyNot(Write(bench, note with { Text = "something else" })));
    }

    [Fact]
    public void A_correction_and_a_retraction_are_rows_of_their_own_and_each_note_has_one_at_most()
    {
        var bench = new Bench(Hall.Plan);
        var first = Party(bench);
        Write(bench, first);
        var second = Party(bench, "second") with { Text = "Fourteen children", Corrects = first.Id, Why = "misheard" };
        Assert.IsType<Outcome.Done>(Write(bench, second));
        Assert.Equal("corrects note.corrected_already", WhyNot(Write(bench, Party(bench, "third") with { Corrects = first.Id, Why = "so did I" })));
        Assert.IsType<Outcome.Done>(Write(bench, Party(bench, "fourth") with { Corrects = second.Id, Why = "it was the day before", Retracted = true }));
        Assert.Equal(["School party, forty children", "Fourteen children", "School party, forty children"], bench.Entries.Select(e => e.Body).OfType<NoteEntry>().Select(n => n.Note.Text));
        Assert.Equal([false, false, true], bench.State.Notes.Select(n => n.Retracted));
    }

    [Fact]
    public void What_cannot_be_is_said_by_its_field()
    {
        var bench = new Bench(Hall.Plan);
        var note = Party(bench);
        Assert.Equal("by field.required", WhyNot(Write(bench, note with { By = " " })));
        Assert.Equal("text field.required", WhyNot(Write(bench, note with { Text = " " })));
        Assert.Equal("poolId pool.unknown", WhyNot(Write(bench, note with { PoolId = "nowhere" })));
        Assert.Equal("to note.ends_before_it_begins", WhyNot(Write(bench, note with { To = note.From - TimeSpan.FromMinutes(1) })));
        Assert.Equal("to note.to_come", WhyNot(Write(bench, note with { To = bench.Now + TimeSpan.FromHours(1) })));
        Assert.Equal("to note.too_long", WhyNot(Write(bench, note with { From = bench.Now - TimeSpan.FromDays(400) })));
        Assert.Equal("from note.too_old", WhyNot(Write(bench, note with { From = bench.Now - TimeSpan.FromDays(2000), To = bench.Now - TimeSpan.FromDays(1999) })));
        Assert.Equal("corrects field.required", WhyNot(Write(bench, note with { Retracted = true })));
        Assert.Equal("why field.required", WhyNot(Write(bench, note with { Corrects = Guid.Empty })));
        Assert.Equal("corrects note.corrects_unknown", WhyNot(Write(bench, note with { Corrects = note.Id, Why = "itself" })));
        Assert.Empty(bench.State.Notes);
        // A moment is a span too.
        Assert.IsType<Outcome.Done>(Write(bench, note with { To = note.From }));
    }

    [Fact]
    public void A_note_comes_back_from_the_journal_as_it_was_written()
    {
        var bench = new Bench(Hall.Plan);
        NoteWritten said = new(bench.Now, Party(bench) with { Corrects = Guid.NewGuid(), Why = "misheard", Retracted = true });
        Assert.Equal(said, Assert.Single(JournalCodec.Read(JournalCodec.Write([said]))));
    }

    [Fact]
    public void A_renamed_pool_keeps_its_notes()
    {
        var bench = new Bench(Hall.Plan);
        Write(bench, Party(bench));
        var next = Hall.Plan with { Pools = [Hall.Plan.Pools[0] with { Id = "hall-pool", Was = "main" }, .. Hall.Plan.Pools.Skip(1)] };
        Assert.Equal("hall-pool", Assert.Single(PlanChange.Carry(bench.State, next).Notes).PoolId);
    }
}
