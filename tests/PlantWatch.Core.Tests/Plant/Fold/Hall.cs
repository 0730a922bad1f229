using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Plant.Fold;

/// <summary>An invented hall: two pools on one circuit, every kind of probe, two dosing pumps.</summary>
internal static class Hall
{
    /// <summary>A Tuesday morning in British Summer Time; the site's clock shows 09:00.</summary>
    public static readonly Instant Nine = Instant.FromUtc(2026, 5, 5, 8);

    public const string Ph = "hall/main/ph";
    public const string Orp = "hall/main/orp";
    public const string Temperature = "hall/main/temperature";
    public const string Chlorine = "hall/main/chlorine";
    public const string Flow = "hall/main/flow";
    public const string Learner = "hall/learner";
    public const string AcidState = "hall/acid/state";
    public const string AcidTank = "hall/acid/tank";

    public static CircuitPlan Plan { get; } = new()
    {
        Id = "hall",
        Name = "Hall",
        TimeZone = "Europe/London",
        Pools = [Main, LearnerPool],
        Probes =
        [
            Probe("main-flow", Measurand.SampleFlow, Flow, new(0, 1), null),
            Probe("main-ph", Measurand.Ph, Ph, new(0, 14), "main-flow"),
            Probe("main-orp", Measurand.Orp, Orp, new(0, 1200), "main-flow") with { ReferenceElectrode = "Ag/AgCl 3 M" },
            Probe("main-temperature", Measurand.Temperature, Temperature, new(0, 60), "main-flow"),
            Probe("main-chlorine", Measurand.FreeChlorine, Chlorine, new(0, 20), "main-flow") with { Origin = SignalOrigin.PanelScaled },
            Senml("learner-ph", Measurand.Ph, "learner:ph", new(0, 14)),
            Senml("learner-temperature", Measurand.Temperature, "learner:temperature", new(0, 60)),
        ],
        Pumps =
        [
            new() { Id = "acid-pump", Name = "Acid pump", PoolId = "main", ProductId = "acid", StateTopic = AcidState, TankTopic = AcidTank },
            new() { Id = "hypo-pump", Name = "Hypochlorite pump", ProductId = "hypo", StateTopic = "hall/hypo/state" },
        ],
    };

    private static PoolPlan Main => new()
    {
        Id = "main",
        Name = "Main pool",
        Kind = PoolKind.Swimming,
        Setting = Setting.Indoor,
        Disinfectant = Disinfectant.Chlorine,
        VolumeCubicMetres = 420,
        Limits =
        [
            new(Measurand.Ph, 7.2, 7.6, "the hall's own sheet"),
            new(Measurand.FreeChlorine, 1, 3, "the hall's own sheet"),
            new(Measurand.CombinedChlorine, null, 1, "the hall's own sheet"),
            new(Measurand.Temperature, null, 30, "the hall's own sheet"),
        ],
        Duties = [new([Measurand.FreeChlorine, Measurand.Ph], [new(7, 0), new(13, 0)])],
    };

    private static PoolPlan LearnerPool => new()
    {
        Id = "learner",
        Name = "Learner pool",
        Kind = PoolKind.Teaching,
        Setting = Setting.Indoor,
        Disinfectant = Disinfectant.Chlorine,
        VolumeCubicMetres = 60,
        Limits = [new(Measurand.Ph, 7.2, 7.6, "the hall's own sheet")],
    };

    public static CircuitPlan With(this CircuitPlan plan, string probe, Func<ProbePlan, ProbePlan> change) =>
        plan with { Probes = [.. plan.Probes.Select(p => p.Id == probe ? change(p) : p)] };

    public static CircuitPlan WithPool(this CircuitPlan plan, string pool, Func<PoolPlan, PoolPlan> change) =>
        plan with { Pools = [.. plan.Pools.Select(p => p.Id == pool ? change(p) : p)] };

    public static CircuitPlan Without(this CircuitPlan plan, string id) => plan with
    {
        Probes = [.. plan.Probes.Where(p => p.Id != id)],
        Pools = [.. plan.Pools.Where(p => p.Id != id)],
        Pumps = [.. plan.Pumps.Where(p => p.Id != id)],
    };

    private static ProbePlan Probe(string id, Measurand measurand, string topic, ValueRange range, string? flow) =>
        new() { Id = id, Name = id, PoolId = "main", Measurand = measurand, Topic = topic, Range = range, FlowSwitchId = flow };

    private static ProbePlan Senml(string id, Measurand measurand, string record, ValueRange range) => new()
    {
        Id = id,
        Name = id,
        PoolId = "learner",
        Measurand = measurand,
        Topic = Learner,
        Format = PayloadFormat.SenmlJson,
        RecordName = record,
        Range = range,
        Every = TimeSpan.FromSeconds(30),
    };
}
