using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Plant;

/// <summary>A pool that goes to another circuit takes along how it was run and what is open in its water: no plant file opens a pool.</summary>
public sealed class ArrivalTests
{
    private static readonly CircuitPlan Spa = new() { Id = "spa", Name = "Spa", TimeZone = "Europe/London", Pools = [Pool("whirl")] };
    private static readonly PlantPlan Before = Plant(Hall.Plan, Spa);

    // The learner pool goes from the hall to the spa; the main pool stays.
    private static readonly PlantPlan After = Plant(Hall.Plan.Without("learner").Without("learner-ph").Without("learner-temperature"), Spa with { Pools = [.. Spa.Pools, Hall.Plan.Pools[1]] });

    private readonly Bench _hall = new();
    private readonly Bench _spa = new(Spa);

    [Fact]
    public void A_pool_closed_for_cause_is_closed_for_cause_in_its_new_circuit()
    {
        _hall.Run(at => new PoolStateSet(at, TimeOrderedId.Derive(at, "close"), "learner", OperatingState.Covered, "O. Example", "glass", ForCause: true));
        Move();
        var learner = _spa.State.Pools.Single(p => p.Id == "learner").Operation;
        Assert.Equal((OperatingState.Covered, true, "glass"), (learner.State, learner.ForCause, learner.Why));
        Assert.Contains(_spa.Entries, e => e is { Subject: "learner", Body: PoolStateEntry { Operation.ForCause: true } });
        Assert.Equal(OperatingState.NotStated, _spa.State.Pools[0].Operation.State);
    }

    [Theory, Evidence("R-013")]
    [InlineData(6.2, OperatingState.Closed, true)]
    [InlineData(7.4, OperatingState.NotStated, false)]
    public void A_pool_under_a_stop_arrives_closed_for_cause(double ph, OperatingState state, bool forCause)
    {
        _hall.Skip(TimeSpan.FromMinutes(1));
        _hall.Check(_hall.CheckOf(Bench.Test(Measurand.Ph, ph)) with { PoolId = "learner", Point = SamplePoint.Pool });
        Move();
        var learner = _spa.State.Pools.Single(p => p.Id == "learner").Operation;
        Assert.Equal((state, forCause), (learner.State, learner.ForCause));
    }

    [Theory, Evidence("R-005")]
    [InlineData("learner")]
    [InlineData("main")]
    public void An_incident_in_the_water_it_comes_from_is_open_in_both_circuits_and_closes_every_pool_of_both(string where)
    {
        Declare(where);
        _hall.Check(Lowest("learner"));
        _hall.Check(Lowest("main"));
        Move();
        foreach (var (bench, pools) in new[] { (_hall, new[] { "main" }), (_spa, ["whirl", "learner"]) })
            foreach (var pool in pools)
            {
                Assert.True(bench.IsUp(RuleBook.IncidentOpen, pool), pool);
                Assert.Equal((OperatingState.Closed, true), bench.State.Pools.Single(p => p.Id == pool).Operation is var o ? (o.State, o.ForCause) : default);
            }

        var (left, came) = (Assert.Single(_hall.State.Incidents.Values), Assert.Single(_spa.State.Incidents.Values));
        Assert.Equal(("main", "learner", IncidentAuthority.UsCdc), (left.PoolId, came.PoolId, came.Authority));
        Assert.NotEqual(left.Id, came.Id);
        Assert.Equal(left.HappenedAt, came.HappenedAt);
        // The tests go where their pool goes.
        Assert.Single(came.Tests, t => t.PoolId is null);
        Assert.Single(Clock(_hall, left, "main").Tests);
        Assert.Single(Clock(_spa, came, "learner").Tests);
        Assert.Empty(Clock(_spa, came, "whirl").Tests);
        Assert.Equal(IncidentChange.CameWithPool, _spa.Entries.Select(e => e.Body).OfType<IncidentEntry>().Single().Change);
        Assert.Equal(where == "learner" ? [IncidentChange.Declared, IncidentChange.PoolLeft] : [IncidentChange.Declared], _hall.Entries.Select(e => e.Body).OfType<IncidentEntry>().Select(e => e.Change));
    }

    [Fact]
    public void One_that_is_closed_in_one_circuit_stays_open_in_the_other()
    {
        Declare("learner");
        Move();
        var came = _spa.State.Incidents.Keys.Single();
        _hall.Run(at => new IncidentClosed(at, _hall.State.Incidents.Keys.Single(), "J. Sample", "held and tested"));
        Assert.False(_hall.IsUp(RuleBook.IncidentOpen, "main"));
        Assert.True(_spa.IsUp(RuleBook.IncidentOpen, "whirl"));
        _spa.Run(at => new IncidentClosed(at, came, "J. Sample", "held and tested"));
        // The same file read again brings nothing back.
        _spa.Load(After.Circuits[1]);
        Assert.Empty(_spa.State.Incidents);
        Assert.True(_spa.State.Pools[0].Operation.ForCause);
    }

    [Fact]
    public void What_came_is_in_the_journal_and_survives_a_restart()
    {
        Declare("main");
        Move();
        var again = Step.Run(CircuitState.Of(new CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "Europe/London" }), JournalCodec.Read(JournalCodec.Write(_spa.Events))).Next;
        Assert.Equal(PlantJson.HashOf(_spa.State), PlantJson.HashOf(again));
        _spa.Restart();
        Assert.Equal(PlantJson.HashOf(again), PlantJson.HashOf(_spa.State));
    }

    [Fact]
    public void A_circuit_that_is_only_renamed_and_pools_that_stay_bring_nothing()
    {
        Declare("main");
        Assert.Same(Arrival.Nothing, Arrival.In(Before, Plant(Hall.Plan with { Id = "large", Was = "hall" }, Spa), "large", Known));
        Assert.Same(Arrival.Nothing, Arrival.In(Before, After, "hall", Known));
        Assert.Same(Arrival.Nothing, Arrival.In(Before, After, "spa", _ => null));
    }

    [Fact]
    public void A_spill_on_the_deck_stays_where_it_was()
    {
        Declare("learner", IncidentKind.DeckSpill);
        Move();
        Assert.Empty(_spa.State.Incidents);
        Assert.Equal(OperatingState.NotStated, _spa.State.Pools[0].Operation.State);
    }

    private CircuitState? Known(string circuit) => circuit == "hall" ? _hall.State : _spa.State;

    // As the shell does it: what moves is read before any circuit lets go of it.
    private void Move()
    {
        var (hall, spa) = (Arrival.In(Before, After, "hall", Known), Arrival.In(Before, After, "spa", Known));
        _hall.Run(at => new PlanLoaded(at, After.Circuits[0]) { Arrival = hall });
        _spa.Run(at => new PlanLoaded(at, After.Circuits[1]) { Arrival = spa });
    }

    private void Declare(string pool, IncidentKind kind = IncidentKind.DiarrhoealStool) => Assert.IsType<Outcome.Done>(_hall.Run(at => new IncidentDeclared(at, new Incident
    {
        Id = TimeOrderedId.Derive(at, "incident"), PoolId = pool, Kind = kind, Authority = IncidentAuthority.UsCdc, DeclaredBy = "R. Example",
    })));

    private ManualCheck Lowest(string pool)
    {
        _hall.Skip(TimeSpan.FromSeconds(1));
        return _hall.CheckOf(new TestResult(Measurand.FreeChlorine, 20, TestMethod.Photometer, Dilution: 10)) with { Id = TimeOrderedId.Derive(_hall.Now, "lowest " + pool), PoolId = pool, Point = SamplePoint.Outlet };
    }

    private static HoldClock Clock(Bench bench, Incident incident, string pool)
    {
        var at = bench.State.Plan.Pools.Select(p => p.Id).ToList().IndexOf(pool);
        return IncidentEvidence.Clock(incident, bench.State.Plan.Pools[at], bench.State.Pools[at], bench.Now);
    }

    private static PoolPlan Pool(string id) => Hall.Plan.Pools[1] with { Id = id, Name = id };

    private static PlantPlan Plant(params CircuitPlan[] circuits) => new(new SitePlan("Baths", "Europe/London"), [], [.. circuits]);
}
