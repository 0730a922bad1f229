using PlantWatch.Core.Maintenance;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Handover;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>One shift hands over to the next: who leaves writes, who comes in signs what stands.</summary>
public sealed class HandoverTests
{
    private static readonly CircuitPlan Plan = Hall.Plan with { Tasks = [new("ph-clean", "Clean the pH probe", "main-ph", TimeSpan.FromDays(7))] };

    private static Guid Id(Bench bench, string name) => TimeOrderedId.Derive(bench.Now, name);

    private static Outcome Write(Bench bench, Guid id, string by = "R. Example", string note = "The acid pump hums") => bench.Run(at => new HandoverWritten(at, id, by, note));

    private static Outcome Sign(Bench bench, Guid id, string by = "J. Sample", string? shown = null)
    {
        var seen = shown ?? HandoverSheet.Of(bench.State, bench.Now).Hash();
        return bench.Run(at => new HandoverSigned(at, id, by, " read ", seen));
    }

    private static string? Code(Outcome outcome) => outcome is Outcome.TurnedDown no ? no.Remarks[0].Reason.Code : null;

    [Fact]
    public void What_stands_is_frozen_with_the_signature_and_comes_back_from_the_journal()
    {
        var bench = new Bench(Plan);
        var job = Id(bench, "job");
        bench.Run(at => new JobWritten(at, new Job(job, "acid-pump", "Leaks at the head", null, JobState.InHand, null, "R. Example", at)));
        bench.Skip(TimeSpan.FromDays(6.5));
        bench.Tick();
        var id = Id(bench, "handover");
        Assert.IsType<Outcome.Done>(Write(bench, id));
        Assert.Equal((id, "R. Example", "The acid pump hums"), (bench.State.Handover.Id, bench.State.Handover.From, bench.State.Handover.Note));
        Assert.IsType<Outcome.AlreadyDone>(Write(bench, id));
        Assert.IsType<Outcome.Done>(Sign(bench, id));
        Assert.IsType<Outcome.AlreadyDone>(Sign(bench, id));

        var signed = bench.Entries.Select(e => e.Body).OfType<HandoverEntry>().Single(e => e.Change == HandoverChange.TakenOver);
        Assert.Equal(("R. Example", "J. Sample", "The acid pump hums", "read"), (signed.From, signed.To, signed.Note, signed.Remark));
        Assert.Equal(signed.Shown, signed.Sheet!.Hash());
        Assert.Contains(signed.Sheet.Lines, l => l is { Part: HandoverPart.Job, Subject: "acid-pump", State: "in_hand", Text: "Leaks at the head" } && l.Key == job.ToString());
        Assert.Contains(signed.Sheet.Lines, l => l is { Part: HandoverPart.Task, Key: "ph-clean", State: "due" });
        Assert.Contains(signed.Sheet.Lines, l => l is { Part: HandoverPart.Pool, Key: "main" });
        Assert.Equal((false, id, "J. Sample"), (bench.State.Handover.Waits, bench.State.Handover.SignedId, bench.State.Handover.SignedBy));

        Assert.Equal(bench.Events.OfType<HandoverWritten>(), JournalCodec.Read(JournalCodec.Write(bench.Events)).OfType<HandoverWritten>());
        Assert.Equal(bench.Events.OfType<HandoverSigned>(), JournalCodec.Read(JournalCodec.Write(bench.Events)).OfType<HandoverSigned>());
        var before = bench.State.Handover;
        bench.Restart();
        bench.Load(Plan with { Name = "Hall of the bath" });
        Assert.Equal(before, bench.State.Handover);
    }

    [Theory]
    [InlineData("r.example", "handover.same_person")]
    [InlineData("Example, R.", "handover.same_person")]
    [InlineData("R. Ex\u0430mple", "handover.same_person")]
    [InlineData("\u200B", "field.required")]
    public void Who_wrote_it_does_not_sign_it_in_another_spelling_and_what_was_signed_before_stays_signed(string by, string why)
    {
        var bench = new Bench(Plan);
        var id = Id(bench, "handover");
        Write(bench, id);
        Assert.Equal(why, HandoverObjection.ToSign(bench.State, id, by)?.Remarks[0].Reason.Code);
        Assert.Null(HandoverObjection.ToSign(bench.State, id, "J. Sample"));
        Assert.IsType<Outcome.Done>(Sign(bench, id, by));
        Assert.False(bench.State.Handover.Waits);
        // Sent again it is answered as the first time, also when another note waits by now.
        Write(bench, Id(bench, "next"));
        Assert.Null(HandoverObjection.ToSign(bench.State, id, by));
        Assert.IsType<Outcome.AlreadyDone>(Sign(bench, id, by));
    }

    [Fact]
    public void A_note_is_somebodys_and_one_of_before_that_was_asked_is_kept()
    {
        var bench = new Bench(Plan);
        var id = Id(bench, "handover");
        Assert.Equal("field.required", HandoverObjection.ToWrite(bench.State, id, "...")?.Remarks[0].Reason.Code);
        Assert.Null(HandoverObjection.ToWrite(bench.State, id, "R. Example"));
        Assert.IsType<Outcome.Done>(Write(bench, id, by: "..."));
        // Sent again it is answered as the first time, before and after somebody has signed it; the next one is asked.
        Assert.Null(HandoverObjection.ToWrite(bench.State, id, "..."));
        Assert.IsType<Outcome.AlreadyDone>(Write(bench, id, by: "..."));
        Sign(bench, id);
        Assert.Null(HandoverObjection.ToWrite(bench.State, id, "..."));
        Assert.IsType<Outcome.AlreadyDone>(Write(bench, id, by: "..."));
        Assert.NotNull(HandoverObjection.ToWrite(bench.State, Id(bench, "next"), "..."));
    }

    [Fact]
    public void Under_one_id_there_is_one_note_and_one_signature()
    {
        var bench = new Bench(Plan);
        var id = Id(bench, "handover");
        Write(bench, id);
        Assert.Equal("id.taken", Code(Write(bench, id, note: "The acid pump is out")));
        Assert.Equal("id.taken", Code(Write(bench, id, by: "J. Sample")));
        Assert.Equal("The acid pump hums", bench.State.Handover.Note);
        Sign(bench, id);
        Assert.Equal("id.taken", Code(Sign(bench, id, "D. Third")));
        Assert.Equal("J. Sample", bench.State.Handover.SignedBy);
    }

    [Fact]
    public void What_changed_since_it_was_shown_cannot_be_signed()
    {
        var bench = new Bench(Plan);
        var id = Id(bench, "handover");
        Write(bench, id);
        var shown = HandoverSheet.Of(bench.State, bench.Now).Hash();
        bench.Run(at => new JobWritten(at, new Job(Id(bench, "job"), "acid-pump", "Leaks", null, JobState.Open, null, "R. Example", at)));
        Assert.Equal("handover.changed", Code(Sign(bench, id, shown: shown)));
        Assert.Equal("handover.changed", Code(Sign(bench, id, shown: "")));
        Assert.True(bench.State.Handover.Waits);
        Assert.Null(Code(Sign(bench, id)));
    }

    [Fact]
    public void Who_wrote_it_does_not_sign_it_and_nobody_signs_without_a_name()
    {
        var bench = new Bench(Plan);
        var id = Id(bench, "handover");
        Assert.Equal("field.required", Code(Write(bench, id, by: " ")));
        Assert.Equal("field.required", Code(Write(bench, id, note: "")));
        Write(bench, id);
        Assert.Equal("handover.same_person", Code(Sign(bench, id, by: " r. example ")));
        Assert.Equal("field.required", Code(Sign(bench, id, by: "")));
        Assert.Equal("handover.another_waits", Code(Sign(bench, Id(bench, "another"))));
    }

    [Fact]
    public void One_that_nobody_signed_stays_in_the_record_as_that_and_a_shift_can_be_taken_over_without_any()
    {
        var bench = new Bench(Plan);
        var (first, second) = (Id(bench, "first"), Id(bench, "second"));
        Write(bench, first);
        Write(bench, second, by: "J. Sample", note: "Nothing new");
        Assert.Equal([HandoverChange.Written, HandoverChange.LeftUnsigned, HandoverChange.Written], bench.Entries.Select(e => e.Body).OfType<HandoverEntry>().Select(e => e.Change));
        Assert.Equal(first, bench.Entries.Select(e => e.Body).OfType<HandoverEntry>().ElementAt(1).HandoverId);
        Sign(bench, second, by: "M. Invented");

        Assert.Null(Code(Sign(bench, Id(bench, "without"), by: "R. Example")));
        Assert.Equal((null, "R. Example"), bench.Entries.Select(e => e.Body).OfType<HandoverEntry>().Last() is var last ? (last.From, last.To) : default);
    }

    [Fact]
    public void Figures_that_move_with_every_reading_do_not_change_what_is_signed()
    {
        var bench = new Bench(Plan);
        // By then the probes that say nothing are known to.
        bench.Hold(TimeSpan.FromMinutes(30), (Hall.Ph, 7.4));
        var hash = HandoverSheet.Of(bench.State, bench.Now).Hash();
        bench.Hold(TimeSpan.FromMinutes(1), (Hall.Ph, 7.42));
        Assert.Equal(hash, HandoverSheet.Of(bench.State, bench.Now).Hash());
    }
}
