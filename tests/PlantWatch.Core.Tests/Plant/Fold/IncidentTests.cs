using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A contamination incident in the fold: declared and closed by persons, moved by tests alone.</summary>
public sealed class IncidentTests
{
    private readonly Bench _bench = new();
    private readonly Guid _id = TimeOrderedId.Derive(Hall.Nine, "incident");

    private Incident Incident => _bench.State.Incidents[_id];

    private HoldClock Clock => IncidentEvidence.Clock(Incident, _bench.State.Plan.Pools[0], _bench.State.Pools[0], _bench.Now);

    [Fact, Evidence("R-005")]
    public void It_closes_every_pool_that_shares_the_water_until_a_person_closes_it()
    {
        Assert.IsType<Outcome.Done>(Declare());
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "learner"));
        Assert.Equal("incident.open_in_shared_water", _bench.Alarm(RuleBook.IncidentOpen, "learner")!.Cause.Code);
        _bench.Pass(TimeSpan.FromDays(2));
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.IsType<Outcome.Done>(Close());
        Assert.False(_bench.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.False(_bench.IsUp(RuleBook.IncidentOpen, "learner"));
    }

    [Fact, Evidence("R-005")]
    public void A_hold_that_is_reached_opens_nothing()
    {
        Declare(IncidentKind.FormedStool);
        Cyanurate(0);
        Round(2.4);
        _bench.Pass(TimeSpan.FromMinutes(23));
        Lowest(2.4);
        Assert.Equal(HoldWord.Reached, Clock.Word);
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.Equal(Priority.Critical, RuleBook.IncidentOpen.Priority);
    }

    [Fact]
    public void Probe_values_never_move_the_clock()
    {
        Declare();
        Cyanurate(0);
        var before = PlantJson.HashOf(_bench.State with { Probes = [], Ledger = new(), Watermark = default, ListeningSince = default, Serial = 0, Alarms = _bench.State.Alarms.Clear(), Exceptions = [] });
        _bench.Hold(TimeSpan.FromMinutes(5), (Hall.Chlorine, 12), (Hall.Ph, 7.4), (Hall.Temperature, 27));
        Assert.Equal(HoldWord.NotStarted, Clock.Word);
        Assert.Equal(before, PlantJson.HashOf(_bench.State with { Probes = [], Ledger = new(), Watermark = default, ListeningSince = default, Serial = 0, Alarms = _bench.State.Alarms.Clear(), Exceptions = [] }));
    }

    [Fact]
    public void Only_diluted_tests_at_the_lowest_point_with_ph_by_meter_count()
    {
        Declare();
        Cyanurate(0);
        Round(20);
        Assert.Equal(HoldWord.Running, Clock.Word);
        _bench.Pass(TimeSpan.FromMinutes(10));
        _bench.Check(_bench.CheckOf(Bench.Test(Measurand.FreeChlorine, 20), Ph(7.4), Warm()) with { Point = SamplePoint.Outlet });
        Assert.Equal("incident.not_diluted", Why());
        _bench.Check(_bench.CheckOf(Chlorine(20), Bench.Test(Measurand.Ph, 7.4), Warm()) with { Point = SamplePoint.Outlet });
        Assert.Equal("incident.ph_not_by_meter", Why());
        _bench.Check(_bench.CheckOf(Chlorine(20), Ph(7.4), Warm()) with { Point = SamplePoint.Cell });
        Assert.Equal("incident.not_lowest_point", Why());
        Assert.Equal(0, Clock.Credited);
        Lowest(20);
        Assert.Equal(200, Clock.Credited, 0.1);
    }

    [Fact]
    public void A_test_typed_late_stands_at_its_sample_time()
    {
        Declare();
        Cyanurate(0);
        Round(20);
        _bench.Pass(TimeSpan.FromMinutes(50));
        var late = LowestCheck(20);
        _bench.Pass(TimeSpan.FromMinutes(50));
        Lowest(20);
        Assert.Equal(0, Clock.Credited);
        _bench.Check(late);
        Assert.Equal(2000, Clock.Credited, 0.1);
        Assert.Equal(Incident.Tests.OrderBy(t => t.At).Select(t => t.Id), Incident.Tests.Select(t => t.Id));
    }

    [Fact]
    public void A_corrected_test_is_taken_back()
    {
        Declare();
        Cyanurate(0);
        Round(20);
        _bench.Pass(TimeSpan.FromMinutes(30));
        var wrong = LowestCheck(20);
        _bench.Check(wrong);
        Assert.Equal(600, Clock.Credited, 0.1);
        _bench.Check(LowestCheck(5) with { SampledAt = wrong.SampledAt, Corrects = wrong.Id, CorrectionReason = "wrong cell" });
        Assert.Equal(30 * 15 / Math.Log(4), Clock.Credited, 0.1);
    }

    [Fact]
    public void Cyanurate_above_the_table_refuses_the_countdown_also_in_the_middle_of_it()
    {
        Declare();
        Assert.Equal("incident.cyanurate_unknown", Clock.Why[0].Code);
        Cyanurate(0);
        Round(20);
        Assert.Equal(HoldWord.Running, Clock.Word);
        _bench.Pass(TimeSpan.FromMinutes(5));
        Cyanurate(24);
        Assert.Equal((HoldWord.Refused, "incident.dilute_first"), (Clock.Word, Clock.Why[0].Code));
    }

    [Fact]
    public void Bromine_has_no_countdown()
    {
        _bench.Load(Hall.Plan.WithPool("main", p => p with { Disinfectant = Disinfectant.Bromine }));
        Declare();
        Cyanurate(0);
        Round(20);
        Assert.Equal((HoldWord.Refused, "incident.bromine"), (Clock.Word, Clock.Why[0].Code));
    }

    [Fact]
    public void A_spill_on_the_deck_leaves_the_water_open()
    {
        Declare(IncidentKind.DeckSpill);
        Assert.False(_bench.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.Equal("incident.nothing_to_count", Clock.Why[0].Code);
    }

    [Fact]
    public void Sent_twice_it_is_declared_noted_and_closed_once()
    {
        Declare();
        Assert.IsType<Outcome.AlreadyDone>(Declare());
        Assert.Equal(TurnedDownKind.Conflict, Assert.IsType<Outcome.TurnedDown>(Declare(IncidentKind.FormedStool)).Kind);
        Note("filters on");
        Assert.IsType<Outcome.AlreadyDone>(Note("filters on"));
        Close();
        Assert.IsType<Outcome.AlreadyDone>(Close());
        Assert.IsType<Outcome.AlreadyDone>(Declare());
        Assert.Empty(_bench.State.Incidents);
        Assert.Equal([IncidentChange.Declared, IncidentChange.Noted, IncidentChange.Closed], _bench.Entries.Select(e => e.Body).OfType<IncidentEntry>().Select(e => e.Change));
    }

    [Fact]
    public void It_is_closed_by_name_and_with_a_reason()
    {
        Declare();
        Assert.Equal("by", Field(Close(by: " ")));
        Assert.Equal("why", Field(Close(why: "")));
        Assert.NotEmpty(_bench.State.Incidents);
    }

    [Fact]
    public void What_cannot_be_is_turned_down()
    {
        Assert.Equal("poolId", Field(Declare(pool: "nowhere")));
        Assert.Equal("kind", Field(Declare(IncidentKind.Unknown)));
        Assert.Equal("authority", Field(Declare(IncidentKind.Blood)));
        Assert.Equal("happenedAt", Field(Declare(happenedAt: _bench.Now + TimeSpan.FromHours(1))));
        Assert.Equal("happenedAt", Field(Declare(happenedAt: _bench.Now - TimeSpan.FromDays(8))));
    }

    [Fact]
    public void It_follows_a_renamed_pool_stays_with_those_that_shared_the_water_and_ends_with_the_last_of_them()
    {
        Declare();
        _bench.Load(Hall.Plan.WithPool("main", p => p with { Id = "large", Was = "main" }));
        Assert.Equal("large", Incident.PoolId);
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "large"));
        // The pool is gone; the water it shared is still in the other.
        _bench.Load(Hall.Plan.Without("main"));
        Assert.Equal("learner", Incident.PoolId);
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "learner"));
        Assert.Equal(IncidentChange.PoolLeft, _bench.Entries.Select(e => e.Body).OfType<IncidentEntry>().Last().Change);
        _bench.Load(Hall.Plan.Without("main").Without("learner"));
        Assert.Empty(_bench.State.Incidents);
        Assert.Equal(IncidentChange.PoolGone, _bench.Entries.Select(e => e.Body).OfType<IncidentEntry>().Last().Change);
    }

    [Fact]
    public void Each_pool_of_the_water_is_held_by_its_own_tests()
    {
        Declare();
        Cyanurate(0);
        Cyanurate(0, "learner");
        Round(20);
        Assert.Equal((HoldWord.Running, HoldWord.NotStarted), (Clock.Word, ClockOf("learner").Word));
        _bench.Pass(TimeSpan.FromMinutes(30));
        Lowest(20);
        Round(20, "learner");
        _bench.Pass(TimeSpan.FromMinutes(10));
        _bench.Check(LowestCheck(20) with { PoolId = "learner", Id = TimeOrderedId.Derive(_bench.Now, "learner") });
        Assert.Equal((600, 200), (Math.Round(Clock.Credited), Math.Round(ClockOf("learner").Credited)));
        // A test of one says nothing of the other, out of range or in it.
        _bench.Check(LowestCheck(0.5) with { PoolId = "learner", Id = TimeOrderedId.Derive(_bench.Now, "low") });
        Assert.Equal((HoldWord.Running, HoldWord.Paused), (Clock.Word, ClockOf("learner").Word));
        Close();
        var entry = _bench.Entries.Select(e => e.Body).OfType<IncidentEntry>().Last();
        Assert.Equal((HoldWord.Running, "learner", HoldWord.Paused), (entry.Hold, entry.Others.Single().PoolId, entry.Others.Single().Hold));
        Assert.Equal(200 / 15300.0, entry.Others.Single().Share, 4);
    }

    [Fact]
    public void A_pool_that_comes_into_the_water_is_closed_for_cause_however_it_was_run()
    {
        _bench.Load(Hall.Plan.Without("learner").Without("learner-ph").Without("learner-temperature"));
        Declare();
        _bench.Load(Hall.Plan);
        Assert.Equal((OperatingState.Closed, true), _bench.State.Pools[1].Operation is var o ? (o.State, o.ForCause) : default);
        Assert.True(_bench.IsUp(RuleBook.IncidentOpen, "learner"));
    }

    [Fact]
    public void It_comes_through_a_restart_as_it_was()
    {
        Declare();
        Cyanurate(0);
        Round(20);
        var hash = PlantJson.HashOf(_bench.State);
        _bench.Restart();
        Assert.Equal(hash, PlantJson.HashOf(_bench.State));
        Assert.Equal(HoldWord.Running, Clock.Word);
    }

    private HoldClock ClockOf(string pool)
    {
        var at = _bench.State.Plan.Pools.Select(p => p.Id).ToList().IndexOf(pool);
        return IncidentEvidence.Clock(Incident, _bench.State.Plan.Pools[at], _bench.State.Pools[at], _bench.Now);
    }

    private string Why() => Clock.Tests[^1].Why[0].Code;

    private Outcome Declare(IncidentKind kind = IncidentKind.DiarrhoealStool, string pool = "main", Instant happenedAt = default) => _bench.Run(at => new IncidentDeclared(at, new Incident
    {
        Id = _id, PoolId = pool, Kind = kind, Authority = IncidentAuthority.UsCdc, HappenedAt = happenedAt, DeclaredBy = "R. Example",
    }));

    private Outcome Note(string text) => _bench.Run(at => new IncidentNoted(at, _id, TimeOrderedId.Derive(Hall.Nine, text), "R. Example", text));

    private Outcome Close(string by = "J. Sample", string why = "hold reached, water as it should be") => _bench.Run(at => new IncidentClosed(at, _id, by, why));

    // A round through the pool; each test a second after the other.
    private void Round(double residual, string pool = "main")
    {
        foreach (var place in new[] { "shallow end", "stairs" })
        {
            _bench.Check(_bench.CheckOf(Chlorine(residual)) with { PoolId = pool, Point = SamplePoint.Pool, Place = place });
            _bench.Skip(TimeSpan.FromMilliseconds(1));
        }

        _bench.Check(LowestCheck(residual) with { PoolId = pool });
    }

    private void Lowest(double residual) => _bench.Check(LowestCheck(residual));

    private ManualCheck LowestCheck(double residual) => _bench.CheckOf(Chlorine(residual), Ph(7.4), Warm()) with { Point = SamplePoint.Outlet };

    private void Cyanurate(double value, string pool = "main")
    {
        _bench.Check(_bench.CheckOf(Bench.Test(Measurand.CyanuricAcid, value)) with { PoolId = pool });
        _bench.Skip(TimeSpan.FromMilliseconds(1));
    }

    private static TestResult Chlorine(double value) => new(Measurand.FreeChlorine, value, TestMethod.Photometer, Dilution: value > 5 ? 10 : 1);

    private static TestResult Ph(double value) => new(Measurand.Ph, value, TestMethod.Meter);

    private static TestResult Warm() => new(Measurand.Temperature, 27, TestMethod.Meter);

    private static string Field(Outcome outcome) => Assert.IsType<Outcome.TurnedDown>(outcome).Remarks[0].Field;
}
