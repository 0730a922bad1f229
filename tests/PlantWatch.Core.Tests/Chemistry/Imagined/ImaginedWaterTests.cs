using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry;

/// <summary>What is not known of an imagined water stays unknown in what comes of it.</summary>
public sealed class ImaginedWaterTests
{
    private static readonly ImaginedWater Whole = SweepTests.Water(7.4, 27, 100, 250, 1000) with { FreeChlorine = FreeChlorine.From(2) };

    [Fact]
    public void Without_calcium_or_solids_there_is_no_index_but_chlorine_is_worked_out()
    {
        foreach (var water in (ImaginedWater[])[Whole with { Calcium = null }, Whole with { Solids = null }])
        {
            var figures = water.FiguresOf(water.Speciate().Value);
            Assert.Null(figures.SaturationIndex);
            Assert.InRange(figures.HypochlorousAcid!.Value, 0.8, 1.4);
        }

        Assert.NotNull(Whole.FiguresOf(Whole.Speciate().Value).SaturationIndex);
    }

    [Fact]
    public void Without_free_chlorine_the_share_is_given_and_no_amount()
    {
        var water = Whole with { FreeChlorine = null };
        var (figures, with) = (water.FiguresOf(water.Speciate().Value), Whole.FiguresOf(Whole.Speciate().Value));
        Assert.Null(figures.FreeChlorine);
        Assert.Null(figures.HypochlorousAcid);
        Assert.Equal(with.HypochlorousShare!.Value, figures.HypochlorousShare!.Value, 0.001);
    }

    [Fact]
    public void With_cyanurate_the_share_depends_on_the_chlorine_and_is_not_given_without_it()
    {
        var water = Whole with { FreeChlorine = null, Cyanurate = CyanuricAcid.From(40) };
        Assert.Null(water.FiguresOf(water.Speciate().Value).HypochlorousShare);
        var stabilised = Whole with { Cyanurate = CyanuricAcid.From(40) };
        Assert.InRange(stabilised.FiguresOf(stabilised.Speciate().Value).HypochlorousShare!.Value, 0.001, 0.1);
    }

    [Fact]
    public void No_chlorine_is_no_hypochlorous_acid_and_still_has_a_share()
    {
        var water = Whole with { FreeChlorine = FreeChlorine.From(0) };
        var figures = water.FiguresOf(water.Speciate().Value);
        Assert.Equal(0, figures.HypochlorousAcid);
        Assert.Equal(0, figures.FreeChlorine);
        Assert.InRange(figures.HypochlorousShare!.Value, 0.4, 0.7);
    }

    [Fact]
    public void A_water_with_more_cyanurate_than_alkalinity_is_named_impossible()
    {
        var water = SweepTests.Water(8.2, 27, 30, 250, 1000) with { Cyanurate = CyanuricAcid.From(200) };
        Assert.Equal(EquilibriumFailure.NegativeCarbon, water.Speciate().Failure);
    }
}
