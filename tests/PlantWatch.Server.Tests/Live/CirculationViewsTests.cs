using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Server.Live;

namespace PlantWatch.Server.Tests.Live;

/// <summary>How a circuit's water goes round, from its plan and what a person asks.</summary>
public sealed class CirculationViewsTests
{
    private static readonly CircuitPlan Circuit = new()
    {
        Id = "c", Name = "Circuit", TimeZone = "Europe/London", BalanceTankCubicMetres = 30, TurnoverHours = 3, Filters = [new("f1", "One", 4.5), new("f2", "Two", 4.5), new("s1", "Strainer", null) { Kind = FilterKind.Strainer }],
        Pools = [new() { Id = "main", Name = "Main pool", VolumeCubicMetres = 360 }, new() { Id = "small", Name = "Small pool", VolumeCubicMetres = 60 }],
    };

    [Fact]
    public void The_water_of_all_pools_goes_through_all_filters_in_a_turnover()
    {
        var view = CirculationViews.Of(Circuit, default, UnitSystem.Metric);
        // 420 m3 in 3 h: 140 m3/h over 9 m2. The tank is water that a dose ends up in, and no pool that is turned over.
        Assert.Equal((450.0, 140.0), (view.Volume.Value, view.Flow!.Value));
        Assert.Equal(15.56, view.FilterRate!.Value, 0.01);
        Assert.Equal(FilterRateKind.Medium, view.FilterKind);
        Assert.Equal(3, view.RetestHours);
        Assert.Equal(9, view.EvenHours!.Value, 0.02);
        Assert.Equal([63, 86, 95, 98, 100], view.Passed.Select(p => Math.Round(100 * p.Part)));
        Assert.Null(view.Fresh);
        Assert.Empty(view.Sayings);
    }

    [Fact]
    public void Fresh_water_of_a_day_is_dilution_said_in_the_units_of_the_plant()
    {
        var view = CirculationViews.Of(Circuit, new(200, null, 150, 8), UnitSystem.Us);
        Assert.Equal((6.0, 20.0), (view.Fresh!.ForBathers.Value, view.Fresh.ByBackwash.Value));
        Assert.Equal("6,868 US gal (26 m³)", view.Fresh.Total.ToString().Replace('\u00a0', ' '));
        Assert.Equal(1 - Math.Exp(-26.0 / 450), view.Fresh.PartReplaced, 1e-9);
    }

    [Fact]
    public void What_the_plan_leaves_out_and_what_is_out_of_range_is_said()
    {
        var bare = CirculationViews.Of(Circuit with { TurnoverHours = null, Filters = [new("f1", "One", null)] }, new(-1, null, null, null), UnitSystem.Metric);
        Assert.Null(bare.Flow);
        Assert.Equal(["circulation.turnover_missing", "circulation.filter_area_missing", "input.outside_range"], bare.Sayings.Select(s => s.Code));
    }
}
