using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>The instruments of a plant as they stand now.</summary>
internal static class InstrumentViews
{
    private const int Shown = 12;

    public static IReadOnlyList<InstrumentView> Of(CircuitState state, Instant now) => [.. state.Instruments.Select((s, i) => One(state.Plan.Instruments[i], s, now))];

    public static VerificationView Of(string instrument, Verification v) => new(v.Id, instrument, v.Measurand, v.Measurand.Unit(), v.Standard, v.Nominal, v.Tolerance, v.Reading, v.VerifiedAt, v.By, v.Word);

    private static InstrumentView One(InstrumentPlan plan, InstrumentState state, Instant now) => new(
        plan.Id, plan.Name, plan.Kind, plan.Every.TotalDays, [.. plan.Tests.Select(m => Test(plan, state, m, now))], [.. state.Made.Reverse().Take(Shown).Select(v => Of(plan.Id, v))]);

    private static InstrumentTestView Test(InstrumentPlan plan, InstrumentState state, Measurand measurand, Instant now) =>
        new(measurand, InstrumentWatch.WordOf(plan, state, measurand, now), state.NewestOf(measurand, now) is { } newest ? newest.VerifiedAt + plan.Every : Instant.Never);
}
