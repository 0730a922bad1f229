using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>A dose from the bucket to the retest: what was entered is kept, and the next check after mixing answers what was predicted.</summary>
public sealed class GivenDoseTests
{
    private static readonly TimeSpan Mixing = TimeSpan.FromHours(4);
    private readonly Bench _bench = new();

    private DoseResponse[] Responses => [.. _bench.Entries.Select(e => e.Body).OfType<DoseResponseEntry>().Select(e => e.Response)];

    private GivenDose Dose(string id = "dose", double chlorine = 1.0, double ph = 0.03) => new()
    {
        Id = TimeOrderedId.Derive(Hall.Nine, id), PoolId = "main", ProductId = "hypo", Product = "Hypochlorite", Kind = ProductKind.SodiumHypochlorite, Kilograms = 5, Strength = 0.1,
        GivenAt = _bench.Now, MixedAt = _bench.Now + Mixing, By = "R. Example",
        Predicted = [new(Measurand.FreeChlorine, 0.8, 0.05, chlorine, 0.06, _bench.Now - TimeSpan.FromMinutes(10)), new(Measurand.Ph, 7.40, 0.08, ph, 0.01, _bench.Now - TimeSpan.FromMinutes(10))],
    };

    private Outcome Give(GivenDose dose) => _bench.Run(at => new DoseGiven(at, dose));

    private void Retest(params (Measurand What, double Value)[] results) => _bench.Check([.. results.Select(r => Bench.Test(r.What, r.Value))]);

    [Fact]
    public void The_retest_after_mixing_says_whether_the_water_did_what_was_predicted()
    {
        Assert.IsType<Outcome.Done>(Give(Dose()));
        _bench.Pass(Mixing + TimeSpan.FromMinutes(1));
        Retest((Measurand.FreeChlorine, 1.75), (Measurand.Ph, 7.4));

        var response = Assert.Single(Responses);
        Assert.Equal([(Measurand.FreeChlorine, ResponseWord.AsPredicted), (Measurand.Ph, ResponseWord.AsPredicted)], response.Figures.Select(f => (f.Measurand, f.Word)));
        Assert.Equal((1.8, 1.75), (Math.Round(response.Figures[0].Predicted, 6), response.Figures[0].Measured));
        // 5 % of 1.75, 0.05 and 0.06 together.
        Assert.Equal(Math.Sqrt((0.0875 * 0.0875) + (0.05 * 0.05) + (0.06 * 0.06)), response.Figures[0].Uncertainty, 1e-6);
        Assert.Empty(_bench.State.Doses);
    }

    [Theory]
    [InlineData(1.2, ResponseWord.Less)]
    [InlineData(2.8, ResponseWord.More)]
    [InlineData(0.3, ResponseWord.OtherWay)]
    [InlineData(1.6, ResponseWord.AsPredicted)]
    public void A_response_has_a_word(double measured, ResponseWord word)
    {
        Give(Dose());
        _bench.Pass(Mixing + TimeSpan.FromMinutes(1));
        Retest((Measurand.FreeChlorine, measured));
        Assert.Equal(word, Assert.Single(Responses).Figures.Single().Word);
    }

    [Fact]
    public void A_check_before_mixing_or_a_day_after_it_tells_nothing()
    {
        Give(Dose());
        _bench.Pass(TimeSpan.FromHours(1));
        Retest((Measurand.FreeChlorine, 1.8));
        _bench.Skip(TimeSpan.FromHours(28));
        Retest((Measurand.FreeChlorine, 1.8));
        Assert.Empty(Responses);
    }

    [Fact]
    public void Figures_are_answered_one_by_one_as_they_are_tested_and_a_dose_without_retest_leaves_the_list()
    {
        Give(Dose());
        _bench.Pass(Mixing + TimeSpan.FromMinutes(1));
        Retest((Measurand.Ph, 7.4));
        Assert.Equal([Measurand.FreeChlorine], Assert.Single(_bench.State.Doses).Predicted.Select(p => p.Measurand));
        _bench.Skip(TimeSpan.FromDays(3));
        _bench.Tick();
        Assert.Empty(_bench.State.Doses);
        Assert.Single(Responses);
    }

    [Fact]
    public void Two_doses_that_move_one_figure_between_two_tests_cannot_be_told_apart()
    {
        Give(Dose());
        _bench.Pass(TimeSpan.FromMinutes(30));
        Give(Dose("another") with { Predicted = [new(Measurand.FreeChlorine, 0.8, 0.05, 0.5, 0.03, _bench.Now - TimeSpan.FromHours(1))] });
        _bench.Pass(Mixing - TimeSpan.FromMinutes(20));
        Retest((Measurand.FreeChlorine, 2.3), (Measurand.Ph, 7.4));
        Assert.Equal([ResponseWord.NotComparable, ResponseWord.AsPredicted], Assert.Single(Responses).Figures.Select(f => f.Word));
        _bench.Pass(TimeSpan.FromHours(1));
        Retest((Measurand.FreeChlorine, 2.2));
        Assert.Equal(ResponseWord.NotComparable, Responses[1].Figures.Single().Word);
    }

    [Fact]
    public void The_same_dose_twice_is_one_row_and_another_under_its_id_is_a_conflict()
    {
        Give(Dose());
        Assert.IsType<Outcome.AlreadyDone>(Give(Dose() with { GivenAt = _bench.State.Doses[0].GivenAt, Predicted = [], MixedAt = default }));
        Assert.Equal(TurnedDownKind.Conflict, Assert.IsType<Outcome.TurnedDown>(Give(Dose() with { Kilograms = 6 })).Kind);
        Assert.Single(_bench.Entries, e => e.Body is DoseEntry);
    }

    [Fact]
    public void A_correction_is_a_new_row_that_takes_the_place_of_the_old()
    {
        var wrong = Dose();
        Give(wrong);
        var right = Dose("right") with { Kilograms = 2, Corrects = wrong.Id, CorrectionReason = "typed 5 for 2", Predicted = [new(Measurand.FreeChlorine, 0.8, 0.05, 0.4, 0.03, wrong.GivenAt)] };
        Assert.Equal("correctionReason", Assert.IsType<Outcome.TurnedDown>(Give(right with { CorrectionReason = null })).Remarks[0].Field);
        Assert.IsType<Outcome.Done>(Give(right));
        Assert.Equal(right.Id, Assert.Single(_bench.State.Doses).Id);
        Assert.Equal(2, _bench.Entries.Count(e => e.Body is DoseEntry));
        _bench.Pass(Mixing + TimeSpan.FromMinutes(1));
        Retest((Measurand.FreeChlorine, 1.2));
        Assert.Equal((right.Id, ResponseWord.AsPredicted), (Assert.Single(Responses).DoseId, Responses[0].Figures.Single().Word));
    }

    [Fact]
    public void What_cannot_have_been_given_is_turned_down_by_its_field()
    {
        Assert.Equal("poolId", Field(Dose() with { PoolId = "lake" }));
        Assert.Equal("amount", Field(Dose() with { Kilograms = 0 }));
        Assert.Equal("amount", Field(Dose() with { Kilograms = double.NaN }));
        Assert.Equal("by", Field(Dose() with { By = " " }));
        Assert.Equal("givenAt", Field(Dose() with { GivenAt = _bench.Now + TimeSpan.FromHours(1) }));
        Assert.Empty(_bench.State.Doses);
    }

    [Fact]
    public void A_waiting_dose_survives_a_restart_and_follows_a_renamed_pool()
    {
        Give(Dose());
        _bench.Restart();
        _bench.Load(Hall.Plan.WithPool("main", p => p with { Id = "large", Was = "main" }));
        Assert.Equal("large", Assert.Single(_bench.State.Doses).PoolId);
        _bench.Load(Hall.Plan.WithPool("main", p => p with { Id = "other" }));
        Assert.Empty(_bench.State.Doses);
    }

    private string Field(GivenDose dose) => Assert.IsType<Outcome.TurnedDown>(Give(dose)).Remarks[0].Field;
}
