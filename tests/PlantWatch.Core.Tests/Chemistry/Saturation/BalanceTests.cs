using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

public sealed class BalanceTests
{
    // Photometer and tablet counts, standard uncertainties (common practice).
    private static readonly BalanceInputs Usual = new()
    {
        Ph = new(7.5, 0.1), Temperature = new(27, 0.3), Alkalinity = new(100, 10), Calcium = new(250, 20), Solids = new(1000, 50),
    };

    [Fact]
    public void All_indices_stand_side_by_side_each_with_its_claim()
    {
        var sheet = Balance.Of(Usual);
        Assert.Equal(0.0587, sheet.Speciated.Value, 0.001);
        Assert.Equal(1.456, sheet.PrecipitationPotential!.Value, 0.05);
        Assert.Equal(7.4405, sheet.SaturationPhMoved!.Value, 0.001);
        Assert.Equal((0.06, 0.3, 0.3, 0.1), (sheet.Speciated.Claim, sheet.Handbook.Claim, sheet.ClosedForm.Claim, sheet.IonicStrength.Claim));
        Assert.All([sheet.Speciated, sheet.Handbook, sheet.ClosedForm, sheet.IonicStrength], i => Assert.Equal(BalanceWord.Balanced, i.Word));
        Assert.Empty(sheet.Missing);
        Assert.Empty(sheet.Sayings);
    }

    [Fact]
    public void The_uncertainty_of_the_tests_is_what_moving_each_test_does_to_the_model()
    {
        // GUM by brute force: each input moved by its own uncertainty, the model solved again.
        double Index(BalanceInputs inputs) => Balance.Of(inputs).Speciated.Value;
        double[] moves =
        [
            Index(Usual with { Ph = new(7.6, 0.1) }), Index(Usual with { Temperature = new(27.3, 0.3) }), Index(Usual with { Alkalinity = new(110, 10) }),
            Index(Usual with { Calcium = new(270, 20) }), Index(Usual with { Solids = new(1050, 50) }),
        ];
        var brute = Math.Sqrt(moves.Sum(m => Math.Pow(m - Index(Usual), 2)));
        Assert.Equal(brute, Balance.Of(Usual).Speciated.Measured, 0.006);
        Assert.Equal(Math.Sqrt((0.06 * 0.06) + (4 * Math.Pow(Balance.Of(Usual).Speciated.Measured, 2))), Balance.Of(Usual).Speciated.Expanded, 1e-12);
    }

    [Fact]
    public void A_word_that_the_uncertainty_could_change_is_said_to_be_unsure()
    {
        var edge = Balance.Of(Usual with { Ph = new(7.95, 0.1) });
        Assert.False(edge.Speciated.WordIsSure);
        Assert.Contains(edge.Sayings, s => s.Code == "balance.word_unsure");
        Assert.True(Balance.Of(Usual).Speciated.WordIsSure);
    }

    [Fact]
    public void What_is_missing_is_said_and_what_can_be_known_without_it_is_given()
    {
        var sheet = Balance.Of(Usual with { Ph = default });
        Assert.Equal([Measurand.Ph], sheet.Missing.AsEnumerable());
        Assert.Equal("balance.missing", sheet.Speciated.Why!.Code);
        Assert.Equal(7.45, sheet.SaturationPhMoved!.Value, 0.01);
        Assert.Equal([Measurand.TotalAlkalinity, Measurand.CalciumHardness], Balance.Of(Usual with { Alkalinity = default, Calcium = default }).Missing.AsEnumerable());
    }

    [Fact]
    public void Solids_that_were_never_tested_are_assumed_and_said()
    {
        var sheet = Balance.Of(Usual with { Solids = default });
        Assert.True(sheet.Speciated.IsKnown);
        Assert.Contains(sheet.Sayings, s => s.Code == "balance.solids_assumed");
        Assert.True(sheet.Speciated.Measured > Balance.Of(Usual).Speciated.Measured);
    }

    [Fact]
    public void Cyanurate_is_taken_off_every_index_and_said()
    {
        var (without, with) = (Balance.Of(Usual), Balance.Of(Usual with { Cyanurate = new(60, 5) }));
        Assert.Contains(with.Sayings, s => s.Code == "balance.cyanurate_taken_off");
        Assert.True(with.Handbook.Value < without.Handbook.Value - 0.05);
        // The model takes it off by itself; the corrected hand methods must agree with it as well as they do without cyanurate.
        Assert.Equal(without.IonicStrength.Value - without.Speciated.Value, with.IonicStrength.Value - with.Speciated.Value, 0.02);
    }

    [Fact]
    public void Tests_that_contradict_each_other_are_refused_with_the_reason()
    {
        var sheet = Balance.Of(Usual with { Alkalinity = new(20, 5), Cyanurate = new(150, 10) });
        Assert.Equal("water.negative_carbon", sheet.Speciated.Why!.Code);
        Assert.Equal(("input.outside_range", "input_carbonate_alkalinity"), (sheet.Handbook.Why!.Code, sheet.Handbook.Why.Facts[0].Text));
    }

    [Fact]
    public void An_input_out_of_range_is_named_with_its_range_and_the_other_methods_still_answer()
    {
        var sheet = Balance.Of(Usual with { Calcium = new(1200, 50) });
        Assert.Equal("input_calcium", sheet.Handbook.Why!.Facts[0].Text);
        Assert.Equal(1000, sheet.Handbook.Why.Facts[3].Number);
        Assert.True(sheet.Speciated.IsKnown && sheet.ClosedForm.IsKnown);
    }

    [Fact]
    public void Whatever_is_typed_the_balance_answers_with_numbers_or_reasons() =>
        Gen.Double[-1e4, 1e5].Array[7].Sample(v =>
        {
            Estimate E(int i) => v[i] > 9e4 ? default : new(v[i], 1);
            var sheet = Balance.Of(new() { Ph = E(0), Temperature = E(1), Alkalinity = E(2), Calcium = E(3), Solids = E(4), Cyanurate = E(5), FreeChlorine = E(6) });
            foreach (var index in (IndexResult[])[sheet.Speciated, sheet.Handbook, sheet.ClosedForm, sheet.IonicStrength])
                Assert.True(index.IsKnown ? double.IsFinite(index.Value) && double.IsFinite(index.Expanded) : index.Why is not null);
        }, iter: 50_000);
}
