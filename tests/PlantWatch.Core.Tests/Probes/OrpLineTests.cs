using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

public class OrpLineTests
{
    // An invented pool: 735 mV at HOCl 1 mg/L, 68 mV a decade.
    private static double Shows(double chlorine, double ph) =>
        735 + (68 * Math.Log10(chlorine * HoclShare.Of(Ph.From(ph), Celsius.From(28)).Share));

    private static readonly double[] Scatter = [0.02, -0.04, 0.03, -0.01, 0.04, -0.03, 0.00, 0.01];

    private static TestPool Taught(int checks = 30, Func<int, double>? fault = null)
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < checks; i++) Check(pool, i, fault?.Invoke(i) ?? 0);
        return pool;
    }

    private static Judgement Check(TestPool pool, int i, double fault, double chlorineSlip = 1)
    {
        var chlorine = 1.0 + (0.8 * (i % 5 / 4.0));
        var ph = 7.3 + (0.2 * (i % 3 / 2.0));
        return pool.CheckOrp(i * 8, chlorine * (1 + Scatter[i % 8]) * chlorineSlip, ph + Scatter[(i + 3) % 8], Shows(chlorine, ph) + fault);
    }

    [Fact]
    public void The_probe_is_not_judged_before_eight_checks_spread_over_two_days()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 7; i++) Assert.Equal((Verdict.Learning, Standing.Unknown), (Check(pool, i, 0).Verdict, pool.Trust.Standing));
        Assert.Equal("trust.learning", pool.Trust.Reasons[0].Code);
        Assert.Null(pool.Trust.Line);
        Assert.False(pool.Trust.Bias.IsKnown);
        Assert.Equal(Verdict.Agrees, Check(pool, 7, 0).Verdict);
        Assert.NotNull(pool.Trust.Line);
    }

    [Fact]
    public void Eight_checks_in_one_morning_are_not_spread()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 10; i++) pool.CheckOrp(i * 0.3, 1.2, 7.4, Shows(1.2, 7.4));
        Assert.Equal("trust.learning_days", pool.Trust.Reasons[0].Code);
    }

    [Fact]
    public void The_pools_own_line_is_learned()
    {
        var line = Taught(60).Trust.Line!;
        Assert.Equal(735 + (68 * line.Reference), line.Level.Value, 2 * line.Level.StandardUncertainty);
        Assert.Equal(68, line.Slope.Value, 2 * line.Slope.StandardUncertainty);
        Assert.True(line.Slope.StandardUncertainty < 20);
    }

    [Fact]
    public void The_test_is_compared_in_millivolts_by_the_learned_line()
    {
        var judgement = Check(Taught(), 30, 0);
        Assert.Equal(Verdict.Agrees, judgement.Verdict);
        Assert.Equal(judgement.Probe.Value, judgement.Test.Value, judgement.Test.Expanded);
    }

    [Fact]
    public void A_poisoned_electrode_is_found_after_a_repeat()
    {
        var pool = Taught();
        Check(pool, 30, -80);
        var repeat = Check(pool, 31, -80);
        Assert.Equal((Verdict.ProbeDrifts, "trust.reads_low"), (repeat.Verdict, repeat.Reasons[0].Code));
        Assert.Equal(-80, pool.Trust.Bias.Value, 12.0);
    }

    [Fact]
    public void A_slow_drift_away_from_the_learned_line_is_found()
    {
        var pool = Taught(90, i => i < 20 ? 0 : -1.2 * (i - 20));
        Assert.Equal(Standing.OutOfSpecification, pool.Trust.Standing);
        Assert.Equal(-1.2 * 69, pool.Trust.Bias.Value, 15.0);
    }

    [Fact]
    public void A_spoiled_chlorine_test_is_doubted_and_the_probe_stays_good()
    {
        var pool = Taught();
        Assert.Equal(Verdict.CheckSuspect, Check(pool, 30, 0, chlorineSlip: 4).Verdict);
        Assert.Equal(Standing.Good, pool.Trust.Standing);
    }

    [Fact]
    public void After_work_on_the_electrode_the_line_is_learned_anew()
    {
        var pool = Taught();
        pool.Calibrate(241, 1, 0);
        Assert.Null(pool.Trust.Line);
        Assert.Equal(Verdict.Learning, Check(pool, 31, 0).Verdict);
    }

    private static string Why(TestPool pool, ManualCheck check, double? cyanurate = null) =>
        Reconciliation.Judge(ProbeTrust.New, pool.InputOf(check, 720) with { Cyanurate = cyanurate })!.Judgement.Reasons[0].Code;

    [Fact]
    public void With_cyanurate_the_line_is_learned_from_what_is_left_free_and_without_its_test_not_at_all()
    {
        var pool = new TestPool(Measurand.Orp);
        Assert.Equal("trust.learning", Why(pool, pool.OrpCheckOf(0, 1, 7.4), cyanurate: 30));
        Assert.Equal("trust.learning", Why(pool, pool.OrpCheckOf(0, 1, 7.4), cyanurate: 0));
        var stabilised = new TestPool(Measurand.Orp) { Disinfectant = Disinfectant.StabilisedChlorine };
        Assert.Equal("pair.cyanurate", Why(stabilised, stabilised.OrpCheckOf(0, 1, 7.4)));
        Assert.Equal("trust.learning", Why(stabilised, stabilised.OrpCheckOf(0, 2, 7.4), cyanurate: 40));
        var x = Reconciliation.Judge(ProbeTrust.New, stabilised.InputOf(stabilised.OrpCheckOf(0, 2, 7.4), 700) with { Cyanurate = 40 })!.Trust.Pairs[0].Test.Value;
        Assert.True(x < Math.Log10(2 * 0.1), "most chlorine is bound to cyanurate");
        var bromine = new TestPool(Measurand.Orp) { Disinfectant = Disinfectant.Bromine };
        Assert.Equal("pair.bromine", Why(bromine, bromine.OrpCheckOf(0, 1, 7.4)));
    }

    [Fact]
    public void Nil_chlorine_while_orp_stands_where_milligrams_put_it_is_doubted()
    {
        var pool = Taught();
        var nil = pool.CheckOrp(241, 0, 7.4, Shows(1.4, 7.4));
        Assert.Equal((Verdict.CheckSuspect, "trust.nil_contradicted"), (nil.Verdict, nil.Reasons[0].Code));
        // Chlorine that is truly gone takes the ORP with it.
        Assert.Equal(Verdict.NotComparable, pool.CheckOrp(242, 0, 7.4, Shows(0.05, 7.4)).Verdict);
    }

    [Fact]
    public void A_check_without_ph_temperature_or_chlorine_worth_a_logarithm_cannot_be_compared()
    {
        var pool = new TestPool(Measurand.Orp);
        TestResult Free(double value) => new(Measurand.FreeChlorine, value, TestMethod.Photometer);
        var ph = new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer);
        Assert.Equal("pair.needs_ph", Why(pool, pool.CheckOf(0, Free(1))));
        Assert.Equal("pair.needs_temperature", Why(pool, pool.CheckOf(0, Free(1), ph)));
        Assert.Equal("pair.too_little_chlorine", Why(pool, pool.CheckOf(0, Free(0), ph, new(Measurand.Temperature, 28, TestMethod.Meter))));
    }

    [Fact]
    public void The_temperature_probe_stands_in_for_a_thermometer_and_a_hot_spa_is_learned_like_any_pool()
    {
        var pool = new TestPool(Measurand.Orp);
        var check = pool.CheckOf(0, new(Measurand.FreeChlorine, 3, TestMethod.Photometer), new(Measurand.Ph, 7.4, TestMethod.Photometer));
        var input = pool.InputOf(check, 720);
        Assert.Equal(Verdict.Learning, Reconciliation.Judge(ProbeTrust.New, input with { WaterTemperature = input.Window! with { Mean = 38.5 } })!.Judgement.Verdict);
    }
}
