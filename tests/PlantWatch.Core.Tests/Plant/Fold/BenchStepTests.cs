using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A probe is taken out, put into buffers, signed for and looked over by somebody else.</summary>
public sealed class BenchStepTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void A_calibration_within_the_limits_holds_by_the_signature_and_waits_for_a_second_look()
    {
        _bench.Says(Hall.Ph, "7.8");
        var id = Sign(7.2, 4.2);
        var done = _bench.State.Calibrations.Single();
        Assert.Equal((id, CalibrationStatus.Approved, "R. Example", true), (done.Id, done.Status, done.DecidedBy, done.WaitsForReview));
        Assert.Equal(7.6, _bench.Probe("main-ph").Last.Value, 9);
        Assert.IsType<Outcome.Done>(Review(id, accepted: true, "J. Sample"));
        Assert.False(_bench.State.Calibrations.Single().WaitsForReview);
        Assert.Equal(7.6, _bench.Probe("main-ph").Last.Value, 9);
    }

    [Theory]
    [InlineData("R. Example")]
    [InlineData("  r.  EXAMPLE ")]
    [InlineData("R Example")]
    [InlineData("R.\u200bExam\u00adple")]
    public void Who_did_it_does_not_review_it(string same) =>
        Assert.Equal("review.second_person", Code(Review(Sign(7.2, 4.2), accepted: true, same)));

    [Fact]
    public void Who_proposed_a_correction_from_checks_does_not_approve_it_and_may_take_it_back()
    {
        var id = TimeOrderedId.Derive(_bench.Now, "typed");
        _bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Offset = -0.2, ProposedBy = "R. Example" }));
        Assert.Equal("review.second_person", Code(Decide(id, CalibrationStatus.Approved, "R. Example")));
        Assert.Equal(CalibrationStatus.Proposed, _bench.State.Calibrations.Single().Status);
        Assert.IsType<Outcome.Done>(Decide(id, CalibrationStatus.Rejected, "R. Example"));
    }

    [Fact]
    public void A_plant_with_one_person_says_so_in_its_file()
    {
        _bench.Load(Hall.Plan.With("main-ph", p => p with { Care = new CarePlan { SecondPerson = false } }));
        Assert.IsType<Outcome.Done>(Review(Sign(7.2, 4.2), accepted: true, "R. Example"));
    }

    [Fact]
    public void An_objection_takes_the_correction_back_from_its_beginning_and_leaves_the_work_a_fact()
    {
        _bench.Says(Hall.Ph, "7.8");
        var id = Sign(7.2, 4.2, ProbeWork.Cleaned);
        Assert.Equal("review.says_why", Code(Review(id, accepted: false, "J. Sample", why: null)));
        Assert.IsType<Outcome.Done>(Review(id, accepted: false, "J. Sample"));
        Assert.IsType<Outcome.AlreadyDone>(Review(id, accepted: false, "J. Sample"));
        Assert.Equal("review.already_done", Code(Review(id, accepted: true, "M. Invented")));
        Assert.Equal(7.8, _bench.Probe("main-ph").Last.Value);
        Assert.Equal(ProbeWork.Cleaned, CalibrationsInForce.Changes(_bench.State.Calibrations, "main-ph", _bench.Now).Single().Work);
    }

    [Fact]
    public void Beyond_the_limits_nothing_holds_until_a_second_person_approves()
    {
        _bench.Says(Hall.Ph, "7.8");
        var id = Sign(7.0, 4.8);
        Assert.Equal((CalibrationStatus.Proposed, 7.8), (_bench.State.Calibrations.Single().Status, _bench.Probe("main-ph").Last.Value));
        Assert.Equal("review.nothing_to_review", Code(Review(id, accepted: true, "J. Sample")));
        Assert.Equal("review.second_person", Code(Decide(id, CalibrationStatus.Approved, "R. Example")));
        Assert.IsType<Outcome.Done>(Decide(id, CalibrationStatus.Approved, "J. Sample"));
        Assert.Equal(7 + (0.8 * 3 / 2.2), _bench.Probe("main-ph").Last.Value, 9);
        Assert.Equal("J. Sample", _bench.State.Calibrations.Single().ReviewedBy);
    }

    [Fact]
    public void The_same_sheet_twice_is_one_and_another_under_its_id_a_conflict()
    {
        var id = TimeOrderedId.Derive(_bench.Now, "sheet");
        var sheet = Sheet(7.2, 4.2);
        Assert.IsType<Outcome.Done>(Propose(id, sheet));
        Assert.IsType<Outcome.AlreadyDone>(Propose(id, sheet));
        Assert.Equal("id.taken", Code(Propose(id, sheet with { Points = [sheet.Points[0]] })));
        Assert.Single(_bench.State.Calibrations);
    }

    [Fact]
    public void A_sheet_from_another_time_is_refused()
    {
        var sheet = Sheet(7.2, 4.2);
        var now = _bench.Now;
        Assert.Equal("calibration.not_in_future", Code(Propose(default, sheet with { EndedAt = now + TimeSpan.FromHours(1) })));
        Assert.Equal("bench.ends_before_start", Code(Propose(default, sheet with { StartedAt = now, EndedAt = now - TimeSpan.FromHours(1) })));
        Assert.Equal("bench.too_old", Code(Propose(default, sheet with { StartedAt = Instant.Never, EndedAt = now - TimeSpan.FromDays(8) })));
        Assert.Equal("bench.swapped", Code(Propose(default, Sheet(4.1, 7.1))));
    }

    [Fact]
    public void While_a_probe_is_worked_on_its_readings_are_a_function_check_and_nobody_elses()
    {
        _bench.Says(Hall.Flow, "1");
        _bench.Pass(TimeSpan.FromMinutes(10));
        Assert.IsType<Outcome.Done>(Begin());
        _bench.Says(Hall.Ph, "4.01");
        _bench.Says(Hall.Temperature, "28");
        Assert.Equal(Quality.Received | Quality.FunctionCheck, _bench.Probe("main-ph").Last.Quality);
        Assert.Equal((Standing.CheckFunction, "signal.worked_on"), (_bench.Probe("main-ph").Signal.Standing, _bench.Probe("main-ph").Signal.Reasons[0].Code));
        Assert.Equal(Quality.Received, _bench.Probe("main-temperature").Last.Quality);
        Assert.False(_bench.IsUp(RuleBook.BelowLimit, "main-ph"));
        Assert.IsType<Outcome.Done>(End());
        Assert.IsType<Outcome.AlreadyDone>(End());
        _bench.Says(Hall.Ph, "7.4");
        Assert.Equal(Quality.Received, _bench.Probe("main-ph").Last.Quality);
        Assert.Equal([WorkChange.Begun, WorkChange.Ended], _bench.Entries.Select(e => e.Body).OfType<WorkEntry>().Select(w => w.Change));
    }

    [Fact]
    public void Work_that_nobody_ends_runs_out_after_half_an_hour()
    {
        Begin();
        _bench.Pass(WorkWindow.Longest - TimeSpan.FromMinutes(1));
        Assert.True(_bench.Probe("main-ph").Work.IsOpen);
        _bench.Pass(TimeSpan.FromMinutes(2));
        Assert.Equal(WorkChange.RanOut, _bench.Entries.Select(e => e.Body).OfType<WorkEntry>().Last().Change);
        _bench.Says(Hall.Ph, "7.4");
        Assert.Equal(Quality.Received, _bench.Probe("main-ph").Last.Quality);
        Assert.IsType<Outcome.AlreadyDone>(End());
    }

    [Fact]
    public void An_alarm_that_stands_is_neither_cleared_nor_hidden_by_work_on_the_probe()
    {
        _bench.Says(Hall.Flow, "1");
        _bench.Pass(TimeSpan.FromMinutes(10));
        _bench.Hold(TimeSpan.FromMinutes(20), (Hall.Ph, 8.4));
        Assert.True(_bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        Begin();
        _bench.Hold(TimeSpan.FromMinutes(10), (Hall.Ph, 7.4));
        Assert.True(_bench.IsUp(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact]
    public void Two_people_do_not_work_on_one_probe_at_a_time()
    {
        Begin();
        Assert.IsType<Outcome.AlreadyDone>(Begin());
        Assert.Equal("work.under_way", Code(_bench.Run(at => new ProbeWorkBegun(at, Guid.CreateVersion7(), "main-ph", "J. Sample"))));
        Assert.Equal("work.unknown", Code(_bench.Run(at => new ProbeWorkEnded(at, Guid.CreateVersion7(), "main-ph", "J. Sample"))));
        Assert.Equal("probe.unknown", Code(_bench.Run(at => new ProbeWorkBegun(at, Guid.CreateVersion7(), "nobody", "J. Sample"))));
        Assert.Equal("field.required", Code(_bench.Run(at => new ProbeWorkBegun(at, Guid.CreateVersion7(), "main-orp", " "))));
    }

    [Fact]
    public void Who_begins_again_from_another_device_goes_on_with_a_new_half_hour()
    {
        Begin();
        _bench.Skip(TimeSpan.FromMinutes(20));
        Assert.IsType<Outcome.Done>(_bench.Run(at => new ProbeWorkBegun(at, Guid.CreateVersion7(), "main-ph", " r. example")));
        Assert.Equal(_bench.Now + WorkWindow.Longest, _bench.Probe("main-ph").Work.Until);
        Assert.Equal([WorkChange.Begun, WorkChange.Ended, WorkChange.Begun], _bench.Entries.Select(e => e.Body).OfType<WorkEntry>().Select(w => w.Change));
    }

    [Fact]
    public void Signing_the_sheet_ends_the_work()
    {
        Begin();
        Sign(7.2, 4.2);
        Assert.False(_bench.Probe("main-ph").Work.IsOpen);
        Assert.Equal(WorkChange.SheetSigned, _bench.Entries.Select(e => e.Body).OfType<WorkEntry>().Last().Change);
    }

    [Fact]
    public void A_second_look_by_another_spelling_that_a_journal_of_before_holds_was_taken_and_is_again()
    {
        var id = Sign(7.2, 4.2);
        Assert.IsType<Outcome.Done>(_bench.Run(at => new CalibrationReviewed(at, id, true, "Example R.", "as it should be")));
        Assert.Equal("Example R.", _bench.State.Calibrations.Single(c => c.Id == id).ReviewedBy);
        // Sent again it is answered as the first time; whoever else comes is told that it is done, and not that they are the first person.
        Assert.IsType<Outcome.AlreadyDone>(Review(id, accepted: true, "Example R."));
        Assert.Equal("review.already_done", Code(Review(id, accepted: true, "M. Invented")));
        // What was turned down even then is so still.
        var next = Sign(7.2, 4.2);
        Assert.Equal("review.second_person", Code(_bench.Run(at => new CalibrationReviewed(at, next, true, " r.  example", "as it should be"))));
    }

    [Theory]
    [InlineData("Example R.")]
    [InlineData("...")]
    public void An_approval_by_another_spelling_that_a_journal_of_before_holds_is_answered_as_the_first_time(string by)
    {
        var id = Sign(7.0, 4.8);
        Assert.NotNull(SecondPerson.Objection(_bench.State, id, by));
        Assert.IsType<Outcome.Done>(_bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Approved, Instant.Never, by, null)));
        Assert.Null(SecondPerson.Objection(_bench.State, id, by));
        Assert.IsType<Outcome.AlreadyDone>(Decide(id, CalibrationStatus.Approved, by));
        var next = Sign(7.2, 4.2);
        Assert.IsType<Outcome.Done>(_bench.Run(at => new CalibrationReviewed(at, next, true, by, null)));
        Assert.IsType<Outcome.AlreadyDone>(Review(next, accepted: true, by));
    }

    private static readonly Guid Work = TimeOrderedId.Derive(Hall.Nine, "work");

    private Outcome Begin() => _bench.Run(at => new ProbeWorkBegun(at, Work, "main-ph", "R. Example"));

    private Outcome End() => _bench.Run(at => new ProbeWorkEnded(at, Work, "main-ph", "R. Example"));

    private static BenchSheet Sheet(double at7, double at4) => new()
    {
        Points = [new() { Buffer = PhBuffer.Technical7, Celsius = 25, Reading = at7 }, new() { Buffer = PhBuffer.Technical4, Celsius = 25, Reading = at4 }],
    };

    private Guid Sign(double at7, double at4, ProbeWork work = ProbeWork.None)
    {
        var id = TimeOrderedId.Derive(_bench.Now, "sheet");
        // The reading before belongs to the time after the probe was put back: it went back an hour ago.
        Assert.IsType<Outcome.Done>(Propose(id, Sheet(at7, at4) with { EndedAt = _bench.Now - TimeSpan.FromHours(1) }, work));
        return id;
    }

    private Outcome Propose(Guid id, BenchSheet sheet, ProbeWork work = ProbeWork.None) => _bench.Run(at => new CalibrationProposed(at, new Calibration
    {
        Id = id == default ? TimeOrderedId.Derive(at, "other") : id, ProbeId = "main-ph", ProposedBy = "R. Example", Work = work, Sheet = sheet,
    }));

    private Outcome Review(Guid id, bool accepted, string by, string? why = "as it should be") =>
        (accepted ? SecondPerson.Objection(_bench.State, id, by) : null) ?? _bench.Run(at => new CalibrationReviewed(at, id, accepted, by, why));

    private Outcome Decide(Guid id, CalibrationStatus decision, string by) =>
        (decision == CalibrationStatus.Approved ? SecondPerson.Objection(_bench.State, id, by) : null) ?? _bench.Run(at => new CalibrationDecided(at, id, decision, Instant.Never, by, null));

    private static string Code(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Reason.Code;
}
