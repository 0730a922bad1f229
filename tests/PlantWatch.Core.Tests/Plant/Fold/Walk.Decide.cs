using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Exceptions;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Core.Tests.Rules.Packs;

namespace PlantWatch.Core.Tests.Plant.Fold;

internal static partial class Walk
{
    private static CircuitPlan Picked => Hall.Plan with
    {
        Pack = PrintedRows.Pack(PrintedRows.IndoorMinimum, PrintedRows.RaisedAbove76, PrintedRows.PhBand, PrintedRows.PhClosure, PrintedRows.Ratio45, PrintedRows.HalfOfFree, PrintedRows.Orp720),
        Reagents = [new() { Id = "dpd", Name = "DPD", Tests = [Measurand.FreeChlorine, Measurand.TotalChlorine], LifeAfterOpening = TimeSpan.FromDays(90), IsWatchedHere = true }],
        Instruments = [new() { Id = "photo", Name = "Photometer", Tests = [Measurand.FreeChlorine, Measurand.Ph] }],
        People = [new("e", "E. Example", PersonRole.Engineer), new("o", "O. Example", PersonRole.Operator)],
    };

    // What was done about a breach, in words: of one that is there, or of none.
    private static void Say(Bench bench, Act act)
    {
        var lines = bench.State.Exceptions.AddRange(bench.State.ClosedExceptions);
        var line = lines.IsEmpty ? Guid.Empty : lines[act.A % lines.Length].Id;
        bench.Run(at => new ExceptionNoted(
            at, TimeOrderedId.Derive(Hall.Nine, $"note {act.B % 5}"), line, act.A % 7 == 0 ? "" : "R. Example", act.A % 5 == 0 ? " " : "fresh water in", act.A % 3 == 0 ? at - TimeSpan.FromMinutes(act.B % 90) : Instant.Never));
    }

    // What people decide of pools and limits, with sense and without.
    private static void Decide(Bench bench, Act act)
    {
        var who = (act.B % 4) switch { 0 => "", 1 => "O. Example", _ => "E. Example" };
        var rows = bench.State.Plan.Pack?.Rows ?? [];
        var row = rows.IsEmpty ? null : rows[act.B % rows.Length];
        var done = TimeOrderedId.Derive(Hall.Nine, $"state {act.B % 7}");
        if (act.A % 5 == 0)
            bench.Run(at => new ReagentOpened(at, act.B % 7 == 0 ? "none" : "dpd", new(TimeOrderedId.Derive(Hall.Nine, $"lot {act.B % 5}"), act.B % 6 == 0 ? " " : "26-41", new DateOnly(2026, 1 + (act.B % 12), 28), at - TimeSpan.FromDays(act.B % 120), who)));
        if (act.A % 5 == 1) bench.Run(at => new InstrumentVerified(at, act.B % 7 == 0 ? "none" : "photo", VerificationOf(act, at, who)));
        if (act.A % 5 == 2) bench.Run(at => new PlantRoundDone(at, RoundOf(act, at, who)));
        bench.Run(at => (act.A % 4) switch
        {
            2 => new PoolStateSet(at, done, act.B % 5 == 0 ? "learner" : "main", (OperatingState)(act.B % 6), who, act.B % 3 == 0 ? null : "as seen", act.B % 2 == 0, act.B % 11 == 0),
            0 => new PackRowConfirmed(at, "made-up", row?.Id ?? "none", act.B % 5 == 0 || row is null ? "0" : RowDigest.Of(row), who, "schedule 1"),
            _ => new PackRowRevoked(at, "made-up", row?.Id ?? "none", who, act.B % 3 == 0 ? "" : "the wrong schedule"),
        });
    }

    private static Verification VerificationOf(Act act, Instant at, string who) =>
        new(TimeOrderedId.Derive(Hall.Nine, $"standard {act.B % 5}"), act.B % 6 == 0 ? Measurand.Orp : Measurand.FreeChlorine, "glass 2", 1, act.B % 9 == 0 ? 0 : 0.1, 0.8 + (act.B % 5 * 0.1), at - TimeSpan.FromDays(act.B % 60), who);

    private static PlantRound RoundOf(Act act, Instant at, string who) => new(
        TimeOrderedId.Derive(Hall.Nine, $"round {act.B % 9}"), at - TimeSpan.FromHours(act.B % 30), who,
        [new("circulation", (act.B % 90) - 3, null, null), new(act.B % 5 == 0 ? "nothing" : "eyewash", null, act.B % 3 == 0 ? null : act.B % 2 == 0, null), new("make_up_meter", act.B, null, null)], null);
}
