using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Instruments held against standards, and what that makes of the tests made with them.</summary>
public sealed class InstrumentTests
{
    private static readonly TimeSpan Day = TimeSpan.FromDays(1);

    private static readonly CircuitPlan Plan = Hall.Plan with
    {
        Instruments =
        [
            new() { Id = "photo", Name = "Photometer", Tests = [Measurand.FreeChlorine, Measurand.TotalChlorine, Measurand.Ph] },
            new() { Id = "meter", Name = "pH meter", Kind = InstrumentKind.Meter, Tests = [Measurand.Ph] },
        ],
    };

    [Theory]
    [InlineData(1.10, VerificationWord.Within)]
    [InlineData(0.90, VerificationWord.Within)]
    [InlineData(1.11, VerificationWord.Outside)]
    [InlineData(0.89, VerificationWord.Outside)]
    public void A_standard_of_1_read_within_a_tenth_is_in_order_the_edge_too(double reading, VerificationWord word) => Assert.Equal(word, Made(Hall.Nine, reading).Word);

    [Fact]
    public void It_is_in_order_then_overdue_then_failed_and_unknown_while_nobody_has_looked()
    {
        var (plan, state) = (Plan.Instruments[0], new InstrumentState("photo", []));
        InstrumentWord Word(Instant at, Measurand what = Measurand.FreeChlorine) => InstrumentWatch.WordOf(plan, state, what, at);
        Assert.Equal(InstrumentWord.NotVerified, Word(Hall.Nine));
        state = state.With(Made(Hall.Nine, 1.02));
        Assert.Equal(InstrumentWord.InOrder, Word(Hall.Nine + (31 * Day)));
        Assert.Equal(InstrumentWord.Overdue, Word(Hall.Nine + (31 * Day) + TimeSpan.FromSeconds(1)));
        // One colour, one lamp: the standard speaks for total chlorine, and not for pH.
        Assert.Equal((InstrumentWord.InOrder, InstrumentWord.NotVerified), (Word(Hall.Nine + Day, Measurand.TotalChlorine), Word(Hall.Nine + Day, Measurand.Ph)));
        state = state.With(Made(Hall.Nine + Day, 1.4));
        Assert.Equal((InstrumentWord.InOrder, InstrumentWord.Failed), (Word(Hall.Nine), Word(Hall.Nine + Day)));
    }

    [Fact]
    public void A_standard_that_was_read_wrong_stands_until_the_same_one_is_read_right()
    {
        var (plan, high) = (Plan.Instruments[0], Made(Hall.Nine, 5.2, "glass 4", 4));
        var state = new InstrumentState("photo", []).With(high).With(Made(Minutes(2), 1.0));
        InstrumentWord Word(int minutes) => InstrumentWatch.WordOf(plan, state, Measurand.FreeChlorine, Minutes(minutes));
        Assert.Equal((InstrumentWord.Failed, high), (Word(3), Assert.Single(state.Failed(Measurand.FreeChlorine, Minutes(3)))));
        // Read wrong again it is known by the newer reading.
        var again = Made(Minutes(4), 4.6, "glass 4", 4);
        state = state.With(again);
        Assert.Equal(again, Assert.Single(state.Failed(Measurand.FreeChlorine, Minutes(5))));
        // Another piece that stands for the same within its tolerance will do, one that is only near will not.
        Assert.Equal(InstrumentWord.Failed, InstrumentWatch.WordOf(plan, state.With(Made(Minutes(6), 3.8, "glass 5", 3.8)), Measurand.FreeChlorine, Minutes(6)));
        Assert.Equal(InstrumentWord.InOrder, InstrumentWatch.WordOf(plan, state.With(Made(Minutes(6), 4.0, "glass 5", 3.95)), Measurand.FreeChlorine, Minutes(6)));
        // A figure that was typed wrong is put right under the standard's own name.
        state = state.With(Made(Minutes(8), 4.1, "Glass 4", 4.1));
        Assert.Equal((InstrumentWord.Failed, InstrumentWord.InOrder), (Word(7), Word(8)));
        // No other quantity answers for it.
        Assert.Equal(InstrumentWord.Failed, InstrumentWatch.WordOf(plan, new InstrumentState("photo", []).With(Made(Hall.Nine, 9)).With(Made(Minutes(1), 1) with { Measurand = Measurand.Ph }), Measurand.FreeChlorine, Minutes(2)));
    }

    [Fact]
    public void Of_several_standards_read_wrong_the_worst_counts_for_a_result()
    {
        ImmutableArray<InstrumentState> states = [new InstrumentState("photo", []).With(Made(Hall.Nine, 1.4)).With(Made(Minutes(1), 4.2, "glass 4", 4))];
        Assert.Equal(0.8, InstrumentWatch.Against(Plan, states, Bench.Test(Measurand.FreeChlorine, 2), Minutes(2))!.Value.Shared, 9);
    }

    [Fact]
    public void A_thermometer_that_was_off_in_ice_water_is_off_by_as_much_in_the_pool()
    {
        var plan = Plan with { Instruments = [new() { Id = "thermo", Name = "Thermometer", Kind = InstrumentKind.Meter, Tests = [Measurand.Temperature] }] };
        ImmutableArray<InstrumentState> states = [new InstrumentState("thermo", []).With(Made(Hall.Nine, 0.5, "ice water", 0.1) with { Measurand = Measurand.Temperature })];
        // The nought of degrees Celsius is the ice's and no absence of heat: 0.4 off is 0.4 off at 28, and not 4 times 28.
        Assert.Equal(0.4, InstrumentWatch.Against(plan, states, new TestResult(Measurand.Temperature, 28, TestMethod.Meter), Minutes(1))!.Value.Shared, 9);
    }

    [Theory]
    // 0.4 off at five times the tolerance of 0.1 is 1.6 at 2; below that, and where the figure itself has no fifth of it, it is 0.4.
    [InlineData(0.5, 0.1, 1.6)]
    [InlineData(0.4, 0.1, 0.4)]
    [InlineData(0.0, 0.1, 0.4)]
    [InlineData(0.04, 0.001, 0.4)]
    public void A_share_is_told_only_by_a_standard_well_above_nothing(double nominal, double tolerance, double shared)
    {
        ImmutableArray<InstrumentState> states = [new InstrumentState("photo", []).With(Made(Hall.Nine, nominal + 0.4, "glass", nominal) with { Tolerance = tolerance })];
        Assert.Equal(shared, InstrumentWatch.Against(Plan, states, Bench.Test(Measurand.FreeChlorine, 2), Minutes(1))!.Value.Shared, 9);
    }

    [Fact]
    public void What_a_standard_said_last_is_never_forgotten_for_others_and_for_other_quantities()
    {
        var ph = Made(Hall.Nine, 7.9, "buffer 7", 7) with { Measurand = Measurand.Ph };
        var state = new InstrumentState("photo", []).With(ph).With(Made(Minutes(1), 5.2, "glass 4", 4));
        for (var i = 0; i < InstrumentState.Remembered * 2; i++) state = state.With(Made(Minutes(2 + i), 1.0));
        Assert.Equal(InstrumentWord.Failed, InstrumentWatch.WordOf(Plan.Instruments[0], state, Measurand.Ph, Minutes(99)));
        Assert.Equal(InstrumentWord.Failed, InstrumentWatch.WordOf(Plan.Instruments[0], state, Measurand.FreeChlorine, Minutes(99)));
        Assert.Equal(InstrumentState.Remembered + 1, state.Made.Length);
        Assert.Equal(Minutes(2 + InstrumentState.Remembered + 1), state.Made[2].VerifiedAt);
    }

    [Fact]
    public void A_new_circuit_is_tested_with_the_instruments_that_the_others_know()
    {
        var (old, added) = (Plan, Plan with { Id = "added", Pools = [Plan.Pools[0] with { Id = "added_pool" }], Probes = [], Pumps = [] });
        var bench = new Bench(old);
        Verify(bench, 1.4);
        PlantPlan Plant(params CircuitPlan[] circuits) => new(new SitePlan("Example", "Europe/London"), [], [.. circuits]);
        var arrival = Arrival.In(Plant(old), Plant(old, added), "added", id => id == old.Id ? bench.State : null);
        var fresh = CircuitState.Of(new CircuitPlan { Id = "added", Name = "Added", TimeZone = "Europe/London" });
        var loaded = new PlanLoaded(bench.Now, added) { Arrival = arrival };
        Assert.Equal(loaded.Arrival.Instruments[0].Made[0], ((PlanLoaded)JournalCodec.Read(JournalCodec.Write([loaded]))[0]).Arrival.Instruments[0].Made[0]);
        var state = Step.Run(fresh, [loaded]).Next;
        Assert.Equal(InstrumentWord.Failed, InstrumentWatch.WordOf(added.Instruments[0], state.Instruments[0], Measurand.FreeChlorine, bench.Now));
        // One that was there has its own.
        Assert.Same(Arrival.Nothing, Arrival.In(Plant(old, added), Plant(old, added), "added", id => id == old.Id ? bench.State : state));
    }

    [Fact]
    public void A_result_of_an_instrument_that_failed_is_kept_and_less_sure_by_what_it_was_off_and_says_so()
    {
        var bench = new Bench(Plan);
        Verify(bench, 1.4);
        var taken = Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 2), Bench.Test(Measurand.Ph, 7.4)));
        Assert.Equal(("results[0].value", "check.instrument_failed"), (Assert.Single(taken.Remarks).Field, taken.Remarks[0].Reason.Code));
        // 0.4 off at 1.0 is 0.8 at 2.0; beside the method's own 0.10 (5 %) that is 0.806 (GUM: root of the sum of squares).
        Assert.Equal(Math.Sqrt((0.1 * 0.1) + (0.8 * 0.8)), MethodUncertainty.Of(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Result).StandardUncertainty, 9);
        Assert.False(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Suspect);
        // The record says what it was judged with; sending it again without is no other check, and neither is telling it again from the record.
        var kept = bench.Entries.Select(e => e.Body).OfType<CheckEntry>().Last().Check;
        Assert.Equal(0.8, kept.Results[0].InstrumentDoubt!.Value, 9);
        Assert.Null(kept.Results[1].InstrumentDoubt);
        Assert.Equal(MethodUncertainty.Of(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Result), MethodUncertainty.Of(kept.Results[0]));
        Assert.Null(kept.AsSent().Results[0].InstrumentDoubt);
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => ((CheckEntered)bench.Events[^1]) with { At = at, Check = kept }));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => ((CheckEntered)bench.Events[^1]) with { At = at }));
    }

    [Fact]
    public void One_that_nobody_has_looked_at_for_too_long_doubles_the_variance_and_a_fresh_look_ends_it()
    {
        var bench = new Bench(Plan);
        Verify(bench, 1.0);
        bench.Skip(40 * Day);
        Assert.Equal("check.instrument_overdue", Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 2))).Remarks[0].Reason.Code);
        var usual = MethodUncertainty.Parts(Bench.Test(Measurand.FreeChlorine, 2)).Total;
        Assert.Equal(usual * Math.Sqrt(2), MethodUncertainty.Of(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Result).StandardUncertainty, 9);
        Verify(bench, 1.0);
        Assert.Empty(Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 2))).Remarks);
    }

    [Theory]
    [InlineData(TestMethod.Photometer, true), InlineData(TestMethod.Unknown, true), InlineData(TestMethod.Comparator, false), InlineData(TestMethod.Meter, false), InlineData(TestMethod.TabletCount, false)]
    public void Only_what_may_have_been_made_with_it_is_less_sure(TestMethod method, bool concerns) =>
        Assert.Equal(concerns, InstrumentWatch.Concerns(Plan.Instruments[0], new TestResult(Measurand.FreeChlorine, 1, method)));

    [Fact]
    public void What_a_phone_says_of_the_doubt_is_not_taken()
    {
        var bench = new Bench(Plan);
        bench.Check(Bench.Test(Measurand.FreeChlorine, 2) with { InstrumentDoubt = 9 });
        Assert.Null(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Result.InstrumentDoubt);
    }

    [Fact]
    public void A_verification_is_kept_once_by_name_with_figures_that_can_be_and_comes_back()
    {
        var bench = new Bench(Plan);
        var made = Made(bench.Now, 1.02);
        string? Code(string instrument, Verification said) => bench.Run(at => new InstrumentVerified(at, instrument, said)) is Outcome.TurnedDown no ? no.Remarks[0].Reason.Code : null;
        Assert.Null(Code("photo", made));
        Assert.IsType<Outcome.AlreadyDone>(bench.Run(at => new InstrumentVerified(at, "photo", made)));
        Assert.Equal("id.taken", Code("photo", made with { Reading = 2 }));
        var other = made with { Id = Guid.CreateVersion7() };
        Assert.Equal("instrument.unknown", Code("none", other));
        Assert.Equal("instrument.does_not_test", Code("meter", other));
        Assert.Equal("instrument.tolerance_astray", Code("photo", other with { Tolerance = 0 }));
        Assert.Equal("check.value_impossible", Code("photo", other with { Nominal = -1 }));
        Assert.Equal("field.required", Code("photo", other with { Standard = " " }));
        Assert.Equal("field.required", Code("photo", other with { By = "" }));
        Assert.Equal("instrument.verified_astray", Code("photo", other with { VerifiedAt = bench.Now + Day }));
        Assert.Equal(bench.Events[1], JournalCodec.Read(JournalCodec.Write(bench.Events))[1]);
        bench.Restart();
        bench.Load(Plan with { Instruments = [Plan.Instruments[1], Plan.Instruments[0] with { Name = "New name" }] });
        Assert.Equal((0, 1), (bench.State.Instruments[0].Made.Length, bench.State.Instruments[1].Made.Length));
        Assert.Contains(bench.Entries.Select(e => e.Body).OfType<PlanEntry>().Last().Effects, e => e.Code == "plan.instruments_changed");
    }

    private static Instant Minutes(int after) => Hall.Nine + TimeSpan.FromMinutes(after);

    private static Verification Made(Instant at, double reading, string standard = "glass 2", double nominal = 1.0) =>
        new(TimeOrderedId.Derive(at, $"made {reading}"), Measurand.FreeChlorine, standard, nominal, 0.1, reading, at, "R. Example");

    private static void Verify(Bench bench, double reading) => Assert.IsType<Outcome.Done>(bench.Run(at => new InstrumentVerified(at, "photo", Made(at, reading))));
}
