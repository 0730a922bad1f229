using System.Collections.Immutable;
using CsCheck;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Chemistry.Incidents;

/// <summary>The clock of a hold: only tests move it, and doubt never does.</summary>
public class HoldClockTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 3, 2, 8);
    private static readonly HoldFigure Loose = HoldChoice.Of(IncidentAuthority.UsCdc, IncidentKind.DiarrhoealStool, 0).Figure!;
    private static readonly HoldFigure Formed = HoldChoice.Of(IncidentAuthority.UsCdc, IncidentKind.FormedStool, 0).Figure!;

    [Fact]
    public void One_test_at_the_lowest_point_starts_nothing()
    {
        var clock = Clock(Loose, 60, Lowest(0, 20), Lowest(50, 20));
        Assert.Equal((HoldWord.NotStarted, 0.0), (clock.Word, clock.Credited));
        Assert.Equal("incident.start_through_the_pool", Assert.Single(clock.Why).Code);
    }

    [Fact]
    public void It_starts_when_the_last_of_three_places_has_the_residual()
    {
        var clock = Clock(Loose, 12, [Lowest(0, 20), Elsewhere(5, 20, "shallow end"), Elsewhere(10, 20, "stairs")]);
        Assert.Equal((HoldWord.Running, Start + TimeSpan.FromMinutes(10), 0.0), (clock.Word, clock.StartedAt, clock.Credited));
    }

    [Fact]
    public void The_same_place_three_times_is_one_place() =>
        Assert.Equal(HoldWord.NotStarted, Clock(Loose, 12, Lowest(0, 20), Elsewhere(5, 20, "stairs"), Elsewhere(8, 20, " Stairs")).Word);

    [Fact]
    public void Rounds_of_different_hours_are_not_one_round() =>
        Assert.Equal(HoldWord.NotStarted, Clock(Loose, 100, Elsewhere(0, 20, "stairs"), Elsewhere(5, 20, "shallow end"), Lowest(50, 20)).Word);

    [Fact]
    public void Twenty_milligrams_held_765_minutes_reach_15_300_and_not_a_minute_before()
    {
        var tests = Through(20).Concat(Enumerable.Range(1, 12).Select(hour => Lowest(hour * 60, 20))).ToList();
        Assert.Equal(HoldWord.Running, Clock(Loose, 760, [.. tests, Lowest(764, 20)]).Word);
        var reached = Clock(Loose, 800, [.. tests, Lowest(765, 20)]);
        Assert.Equal((HoldWord.Reached, 15_300.0), (reached.Word, Math.Round(reached.Credited, 6)));
        Assert.Equal("incident.reached", Assert.Single(reached.Why).Code);
    }

    [Fact]
    public void Nothing_is_credited_after_the_newest_test_whatever_the_clock_on_the_wall()
    {
        var tests = Through(20).Append(Lowest(60, 20)).ToArray();
        Assert.Equal(Clock(Loose, 61, tests).Credited, Clock(Loose, 119, tests).Credited);
        Assert.Equal(1200, Clock(Loose, 119, tests).Credited, 1e-9);
    }

    [Fact]
    public void A_falling_residual_is_credited_with_less_than_its_mean()
    {
        var clock = Clock(Loose, 60, [.. Through(20), Lowest(60, 10)]);
        Assert.Equal(60 * 10 / Math.Log(2), clock.Credited, 1e-6);
        Assert.True(clock.Credited < 60 * 15);
    }

    [Fact]
    public void A_rising_residual_is_credited_with_the_lower_of_the_two() =>
        Assert.Equal(600, Clock(Loose, 60, [.. Through(10), Lowest(60, 30)]).Credited, 1e-9);

    [Fact]
    public void A_ph_out_of_the_table_pauses_and_neither_side_of_it_counts()
    {
        ImmutableArray<HoldTest> tests = [.. Through(20), Lowest(30, 20), Lowest(60, 20, ph: 7.6)];
        var paused = Clock(Loose, 70, [.. tests]);
        Assert.Equal((HoldWord.Paused, "incident.ph_high", 600.0), (paused.Word, Assert.Single(paused.Why).Code, paused.Credited));
        var on = Clock(Loose, 130, [.. tests, Lowest(90, 20), Lowest(120, 20)]);
        Assert.Equal((HoldWord.Running, 1200.0), (on.Word, on.Credited));
    }

    [Theory]
    [InlineData(24.9, "incident.too_cold")]
    public void Cold_water_pauses(double celsius, string code) => Assert.Equal(code, Assert.Single(Clock(Loose, 61, [.. Through(20), Lowest(60, 20, celsius: celsius)]).Why).Code);

    [Fact]
    public void A_low_residual_elsewhere_pauses_until_that_place_is_tested_again()
    {
        HoldTest[] tests = [.. Through(2), Elsewhere(10, 0.8, "stairs"), Lowest(20, 2)];
        Assert.Equal(HoldWord.Paused, Clock(Formed, 21, tests).Word);
        var mended = Clock(Formed, 45, [.. tests, Elsewhere(22, 2, "stairs"), Lowest(24, 2), Lowest(44, 2)]);
        Assert.Equal((HoldWord.Running, 20.0), (mended.Word, mended.Credited));
    }

    [Fact]
    public void A_missing_test_holds_the_clock_and_the_long_gap_is_never_made_up()
    {
        var tests = Through(20).Append(Lowest(60, 20)).ToArray();
        Assert.Equal(HoldWord.TestMissing, Clock(Loose, 121, tests).Word);
        var later = Clock(Loose, 200, [.. tests, Lowest(180, 20)]);
        Assert.Equal((HoldWord.Running, 1200.0), (later.Word, later.Credited));
        Assert.Contains(later.Tests[^1].Why, why => why.Code == "incident.gap_not_counted");
    }

    [Fact]
    public void A_test_without_ph_by_meter_or_temperature_ends_no_counted_time()
    {
        var clock = Clock(Loose, 61, [.. Through(20), Lowest(60, 20) with { Ph = null }]);
        Assert.Equal(0, clock.Credited);
        Assert.False(clock.Tests[^1].Counts);
    }

    [Fact]
    public void The_next_test_is_due_before_the_gap_is_too_long_or_when_the_hold_may_be_reached()
    {
        Assert.Equal(Start + TimeSpan.FromMinutes(60), Clock(Loose, 1, [.. Through(20)]).NextTestBy);
        Assert.Equal(Start + TimeSpan.FromMinutes(25), Clock(Formed, 1, [.. Through(2)]).NextTestBy);
    }

    [Fact]
    public void The_row_at_or_below_the_residual_holds_and_none_between()
    {
        Assert.Equal(1, Formed.WorthOfMinute(2.19));
        Assert.Equal(25.0 / 24, Formed.WorthOfMinute(2.2), 1e-12);
        Assert.Equal(25.0 / 19, Formed.WorthOfMinute(9), 1e-12);
        Assert.Equal(0, Formed.WorthOfMinute(1.99));
    }

    [Theory]
    [InlineData(null, "incident.cyanurate_unknown")]
    [InlineData(15.01, "incident.dilute_first")]
    [InlineData(60.0, "incident.dilute_first")]
    public void Above_the_tables_cyanurate_or_without_knowing_it_there_is_no_countdown(double? cyanurate, string code)
    {
        var choice = HoldChoice.Of(IncidentAuthority.UsCdc, IncidentKind.DiarrhoealStool, cyanurate);
        Assert.Null(choice.Figure);
        Assert.Equal(code, choice.Refusal!.Code);
    }

    [Fact]
    public void Older_rows_for_stabilised_water_are_shown_and_not_counted_by()
    {
        foreach (var authority in new[] { IncidentAuthority.UsMahc, IncidentAuthority.UsCherokeeCounty })
        {
            Assert.Contains(IncidentTables.Of(authority, IncidentKind.DiarrhoealStool), row => row.Cyanurate.Contains(40));
            Assert.Null(HoldChoice.Of(authority, IncidentKind.DiarrhoealStool, 40).Figure);
        }
    }

    [Fact]
    public void Authorities_that_differ_stand_apart()
    {
        var loose = IncidentTables.For(IncidentKind.DiarrhoealStool).Select(a => HoldChoice.Of(a, IncidentKind.DiarrhoealStool, 0).Figure?.Required).ToArray();
        Assert.Contains(15_300, loose);
        Assert.Contains(9_600, loose);
    }

    [Fact]
    public void Every_row_names_its_source_and_provenance_and_needs_a_residual_at_least_at_its_floor() =>
        Assert.All(IncidentTables.All, row =>
        {
            Assert.True(row.Source.Length > 10 && row.Provenance != Provenance.Unknown && row.StartAt >= row.Floor);
            Assert.True(row.Basis is HoldBasis.None or HoldBasis.DiluteFirst || row.WorthOfMinute(row.StartAt) > 0);
        });

    [Fact]
    public void The_order_of_arrival_changes_nothing_and_a_hold_is_never_credited_beyond_residual_times_time() =>
        Gen.Select(Gen.Int[0, 2000], Gen.Double[0, 45], Gen.Double[6.8, 7.8], Gen.Double[23, 30], Gen.Int[0, 5]).Array[1, 60].Sample(rows =>
        {
            var tests = rows.Select((r, i) => new HoldTest(TimeOrderedId.Derive(Start, $"{i}"), Start + TimeSpan.FromMinutes(r.Item1), r.Item5 < 4, $"place {r.Item5}", r.Item2, r.Item3, r.Item4, [])).ToArray();
            foreach (var figure in IncidentTables.All.Where(row => row.Basis is HoldBasis.ContactTime or HoldBasis.Minutes))
            {
                var (straight, back) = (HoldClock.Of(figure, tests, Start + TimeSpan.FromDays(2)), HoldClock.Of(figure, tests.Reverse(), Start + TimeSpan.FromDays(2)));
                Assert.Equal(straight.Credited, back.Credited);
                Assert.Equal(straight.Word, back.Word);
                Assert.InRange(straight.Credited, 0, figure.Required);
                Assert.InRange(straight.Share, 0, 1);
                var span = (tests.Max(t => t.At) - tests.Min(t => t.At)).TotalMinutes;
                Assert.True(straight.Credited <= (span * figure.WorthOfMinute(45)) + 1e-6);
                Assert.Equal(straight.Credited > 0, straight.Tests.Any(t => t.Gained > 0));
            }
        }, iter: 200);

    [Fact]
    public void A_bad_test_more_never_gives_credit() =>
        Gen.Select(Gen.Int[1, 700], Gen.Bool).Sample((minute, wrongPh) =>
        {
            HoldTest[] tests = [.. Through(20), .. Enumerable.Range(1, 12).Select(hour => Lowest(hour * 60, 20))];
            var bad = wrongPh ? Lowest(minute, 20, ph: 7.9) with { Id = Guid.Empty } : Elsewhere(minute, 0.2, "stairs");
            Assert.True(Clock(Loose, 800, [.. tests, bad]).Credited <= Clock(Loose, 800, tests).Credited);
        });

    [Fact]
    public void Tests_out_of_order_or_out_of_range_are_no_contact_time()
    {
        Assert.Equal("contact.tests_out_of_order", ContactTime.Supported([new(Start + TimeSpan.FromMinutes(1), 2), new(Start, 2)]).Why!.Code);
        Assert.Equal("input.outside_range", ContactTime.Supported([new(Start, double.NaN)]).Why!.Code);
        Assert.Equal(0, ContactTime.Supported([]).Value);
        Assert.Equal("input.outside_range", GiardiaContactTime.Of(26, 7.5, 1).Why!.Code);
    }

    private static HoldClock Clock(HoldFigure figure, int minute, params HoldTest[] tests) => HoldClock.Of(figure, tests, Start + TimeSpan.FromMinutes(minute));

    // A round through the pool: the two other places just before, so that the clock starts with the test at the lowest point.
    private static IEnumerable<HoldTest> Through(double residual) => [Elsewhere(-8, residual, "shallow end"), Elsewhere(-4, residual, "stairs"), Lowest(0, residual)];

    private static HoldTest Lowest(int minute, double residual, double ph = 7.4, double celsius = 27) =>
        new(TimeOrderedId.Derive(Start, $"lowest {minute} {residual}"), Start + TimeSpan.FromMinutes(minute), true, "main drain", residual, ph, celsius, []);

    private static HoldTest Elsewhere(int minute, double residual, string place) =>
        new(TimeOrderedId.Derive(Start, $"{place} {minute} {residual}"), Start + TimeSpan.FromMinutes(minute), false, place, residual, null, null, []);
}
