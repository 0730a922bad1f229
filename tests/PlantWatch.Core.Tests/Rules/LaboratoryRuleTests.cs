using CsCheck;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>What the laboratory found stands until the laboratory, or a person who may, says otherwise.</summary>
public sealed class LaboratoryRuleTests
{
    private const string Subject = "main/legionella";
    private const string MayReopen = "J. Sample";
    private readonly Bench _bench = new(Plan());

    private static CircuitPlan Plan(double? everyDays = null) => Hall.Plan with
    {
        People = [new("js", MayReopen, PersonRole.DutyManager), new("re", "R. Example", PersonRole.Operator)],
        Pools = [.. Hall.Plan.Pools.Select(p => p.Id != "main" ? p : p with
        {
            Laboratory = new() { Limits = [new(Organism.Legionella, 0, "invented code, s. 1"), new(Organism.ColonyCount, 100, "invented code, s. 2")], Every = everyDays is { } days ? TimeSpan.FromDays(days) : null },
        })],
    };

    [Fact, Evidence("R-060")]
    public void A_result_outside_its_limit_is_an_alarm_that_time_does_not_end()
    {
        var first = Enter(Legionella(4));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Assert.Equal("lab.outside", _bench.Alarm(RuleBook.LaboratoryOutside, Subject)!.Cause.Code);
        _bench.Pass(TimeSpan.FromHours(30));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Assert.Single(_bench.Entries.Select(e => e.Body).OfType<LabResultEntry>(), e => e.Result.Id == first);
    }

    [Fact, Evidence("R-060")]
    public void No_sequence_of_good_chemistry_clears_it() => Gen.Select(Gen.Int[0, 3], Gen.Double[0.9, 2.4], Gen.Double[7.1, 7.5]).Array[1, 12].Sample(acts =>
    {
        var bench = new Bench(Plan());
        Enter(bench, Legionella(4));
        foreach (var (what, chlorine, ph) in acts)
        {
            if (what == 0) bench.Check(Bench.Test(Measurand.FreeChlorine, chlorine), Bench.Test(Measurand.Ph, ph));
            else if (what == 1) bench.Hold(TimeSpan.FromMinutes(5), (Hall.Chlorine, chlorine), (Hall.Ph, ph), (Hall.Flow, 1));
            else if (what == 2) bench.Pass(TimeSpan.FromHours(2));
            else bench.Restart();
            Assert.True(bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        }
    }, iter: 60);

    [Fact, Evidence("R-060")]
    public void Only_a_later_sample_inside_the_limit_answers_it()
    {
        Enter(Legionella(4));
        _bench.Pass(TimeSpan.FromHours(10));
        Enter(Legionella(0), sampledAgo: TimeSpan.FromHours(20));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Enter(new LabCount(Organism.Legionella, 0, CountSense.NotDetected, 10));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Enter(new LabCount(Organism.ColonyCount, 2, CountSense.Counted, 1));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Enter(Legionella(0), point: SamplePoint.BalanceTank);
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Enter(new LabCount(Organism.Legionella, 0, CountSense.NotDetected, 100));
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
    }

    [Fact, Evidence("R-060")]
    public void A_person_who_may_open_a_pool_closes_it_with_a_reason_and_nobody_else()
    {
        var id = Enter(Legionella(4));
        Assert.IsType<Outcome.TurnedDown>(Close(id, "R. Example", "it will be fine"));
        Assert.IsType<Outcome.TurnedDown>(Close(id, MayReopen, " "));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Assert.IsType<Outcome.Done>(Close(id, MayReopen, "sample mixed up, confirmed by the laboratory"));
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Assert.IsType<Outcome.AlreadyDone>(Close(id, MayReopen, "again"));
        _bench.Pass(TimeSpan.FromHours(1));
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        Enter(Legionella(1));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
    }

    [Fact]
    public void A_report_that_comes_late_and_was_answered_already_raises_nothing()
    {
        _bench.Pass(TimeSpan.FromHours(10));
        Enter(Legionella(0));
        Enter(Legionella(4), sampledAgo: TimeSpan.FromHours(9));
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
    }

    [Fact]
    public void A_corrected_report_takes_back_what_it_said()
    {
        var wrong = Enter(Legionella(40));
        Enter(Legionella(0), corrects: wrong);
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
    }

    [Fact]
    public void A_limit_that_goes_leaves_the_finding_and_one_that_comes_finds_it()
    {
        _bench.Load(Hall.Plan);
        Enter(Legionella(4));
        Assert.False(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        _bench.Load(Plan());
        _bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
        _bench.Load(Hall.Plan);
        _bench.Pass(TimeSpan.FromMinutes(1));
        Assert.True(_bench.IsUp(RuleBook.LaboratoryOutside, Subject));
    }

    [Fact]
    public void Sent_twice_it_is_one_and_another_under_its_id_is_turned_down()
    {
        var id = Enter(Legionella(4));
        var entered = _bench.Events.OfType<LabResultEntered>().Last();
        Assert.IsType<Outcome.AlreadyDone>(_bench.Run(at => entered with { At = at }));
        Assert.IsType<Outcome.TurnedDown>(_bench.Run(at => entered with { At = at, Result = entered.Result with { By = "S. Other" } }));
        Assert.Single(_bench.Entries, e => e.Id == id);
    }

    [Fact, Evidence("R-061")]
    public void A_planned_sample_that_nobody_took_is_overdue()
    {
        var bench = new Bench(Plan(everyDays: 1));
        bench.Pass(TimeSpan.FromHours(23));
        Assert.False(bench.IsUp(RuleBook.LaboratorySampleOverdue, "main"));
        bench.Pass(TimeSpan.FromHours(2));
        Assert.True(bench.IsUp(RuleBook.LaboratorySampleOverdue, "main"));
        Enter(bench, Legionella(0));
        Assert.False(bench.IsUp(RuleBook.LaboratorySampleOverdue, "main"));
        bench.Pass(TimeSpan.FromHours(25));
        Assert.True(bench.IsUp(RuleBook.LaboratorySampleOverdue, "main"));
    }

    [Fact, Evidence("R-062")]
    public void A_resample_is_due_after_a_result_outside()
    {
        Enter(Legionella(4));
        _bench.Pass(TimeSpan.FromDays(2.9));
        Assert.False(_bench.IsUp(RuleBook.ResampleOverdue, "main"));
        _bench.Pass(TimeSpan.FromDays(0.2));
        Assert.True(_bench.IsUp(RuleBook.ResampleOverdue, "main"));
        Enter(Legionella(0));
        Assert.False(_bench.IsUp(RuleBook.ResampleOverdue, "main"));
    }

    private static LabCount Legionella(double count) => new(Organism.Legionella, count, CountSense.Counted, 100);

    private Guid Enter(LabCount count, TimeSpan sampledAgo = default, SamplePoint point = SamplePoint.Pool, Guid? corrects = null) => Enter(_bench, count, sampledAgo, point, corrects);

    private static Guid Enter(Bench bench, LabCount count, TimeSpan sampledAgo = default, SamplePoint point = SamplePoint.Pool, Guid? corrects = null)
    {
        var id = TimeOrderedId.Derive(bench.Now, $"sample {bench.Events.Count}");
        Assert.IsType<Outcome.Done>(bench.Run(at => new LabResultEntered(at, new LabResult
        {
            Id = id, PoolId = "main", Point = point, SampledAt = at - sampledAgo, ReportedAt = at, Laboratory = "Example laboratory", SampleNumber = "26-0417", By = "R. Example", Counts = [count], Corrects = corrects,
        }, [])));
        return id;
    }

    private Outcome Close(Guid id, string by, string why) => _bench.Run(at => new LabResultClosed(at, id, by, why));
}
