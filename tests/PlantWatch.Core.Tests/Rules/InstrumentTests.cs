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
    public void A_result_of_an_instrument_that_failed_is_kept_and_less_sure_by_what_it_was_off_and_says_so()
    {
        var bench = new Bench(Plan);
        Verify(bench, 1.4);
        var taken = Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 2), Bench.Test(Measurand.Ph, 7.4)));
        Assert.Equal(("results[0].value", "check.instrument_failed"), (Assert.Single(taken.Remarks).Field, taken.Remarks[0].Reason.Code));
        // 0.4 off at 1.0 is 0.8 at 2.0; beside the method's own 0.10 (5 %) that is 0.806 (GUM: root of the sum of squares).
        Assert.Equal(Math.Sqrt((0.1 * 0.1) + (0.8 * 0.8)), MethodUncertainty.Of(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Result).StandardUncertainty, 9);
        Assert.False(bench.State.Pools[0].Manual[Measurand.FreeChlorine].Suspect);
        // What was sent is kept as it was sent: sending it again is no other check.
        Assert.Null(bench.Entries.Select(e => e.Body).OfType<CheckEntry>().Last().Check.Results[0].InstrumentDoubt);
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

    private static Verification Made(Instant at, double reading) => new(TimeOrderedId.Derive(at, $"made {reading}"), Measurand.FreeChlorine, "glass 2", 1.0, 0.1, reading, at, "R. Example");

    private static void Verify(Bench bench, double reading) => Assert.IsType<Outcome.Done>(bench.Run(at => new InstrumentVerified(at, "photo", Made(at, reading))));
}
