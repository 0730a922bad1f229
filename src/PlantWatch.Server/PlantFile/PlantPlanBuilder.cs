using System.Collections.Immutable;
using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Telling;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.LimitPacks;

namespace PlantWatch.Server.PlantFile;

/// <summary>Makes the plan from a file that has passed every check; it asks nothing again.</summary>
internal sealed class PlantPlanBuilder(Place root, PackShelf packs)
{
    private readonly string _timeZone = root["site"]["time_zone"].String!;

    public PlantPlan Build() => new(
        new SitePlan(root["site"]["name"].String!, _timeZone, EnumWords<UnitSystem>.Find(root["site"]["units"].String) ?? UnitSystem.Metric) { Language = root["site"]["language"].String ?? "en" },
        Each(root["products"], Product),
        Each(root["circuits"], Circuit))
    {
        People = People,
        Telling = Telling,
    };

    private TellingPlan Telling => TellingBuilder.Build(root["telling"]);

    private ImmutableArray<PersonPlan> People => Each(root["people"], at => new PersonPlan(Id(at), Name(at), EnumWords<PersonRole>.Find(at["role"].String) ?? PersonRole.Operator)
    {
        Email = at["email"].String,
    });

    private static ProductPlan Product(Place at) => new(Id(at), Name(at), Word<ProductKind>(at["kind"]), at["strength_percent"].Number)
    {
        Means = EnumWords<StrengthMeaning>.Find(at["strength_means"].String) ?? StrengthMeaning.Unknown,
        StrengthOn = Day(at["strength_on"]),
        Assay = at["assay_percent"].Number,
        AssayedOn = Day(at["assayed_on"]),
        Density = at["density_kg_per_l"].Number,
        StoredAt = at["stored_at_c"].Number,
        PricePerKilogram = at["price_per_kg"].Number,
        PricePerLitre = at["price_per_l"].Number,
        Form = EnumWords<ProductForm>.Find(at["form"].String) ?? ProductForm.Unknown,
        AddedTo = EnumWords<DosingPlace>.Find(at["added_to"].String) ?? DosingPlace.Unknown,
        AddedBy = EnumWords<DosingWay>.Find(at["added_by"].String) ?? DosingWay.Unknown,
        DeliveryDays = at["delivery_days"].Number,
        Store = at["store"].String,
    };

    private CircuitPlan Circuit(Place at) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Was = at["was"].String,
        TimeZone = _timeZone,
        BalanceTankCubicMetres = at["balance_tank_m3"].Number,
        BalanceTankConfirmed = Confirmed(at["balance_tank_confirmed"]),
        TurnoverHours = at["turnover_hours"].Number,
        People = People,
        Telling = Telling,
        Stops = Each(root["stops"], at => new StopPlan(Word<Measurand>(at["measurand"]), at["low"].Number, at["high"].Number, at["why"].String!, at["by"].String)),
        Pack = packs.Find(root["limit_pack"].String),
        Products = Each(root["products"], Product),
        Reagents = Each(root["reagents"], reagent => Reagent(reagent, isFirst: at["id"].String == root["circuits"].Items.First()["id"].String)),
        Instruments = Each(root["instruments"], Instrument),
        Round = Round(at["plant_round"]),
        Filters = Each(at["filters"], Filter),
        Tasks = Each(at["tasks"], task => new TaskPlan(Id(task), Name(task), task["asset"].String!, TimeSpan.FromDays(task["every_days"].Number!.Value)) { LastDone = Day(task["last_done"]) }),
        CirculationLowStated = at["circulation_low_m3h"].Number,
        Pools = Each(at["pools"], Pool),
        Probes = Each(at["probes"], Probe),
        Pumps = Each(at["pumps"], Pump),
    };

    // One kit serves the plant: every circuit judges its tests by it, the first one tells when it is out of date.
    private static ReagentPlan Reagent(Place at, bool isFirst) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Tests = Each(at["tests"], Word<Measurand>),
        Use = EnumWords<ReagentUse>.Find(at["method"].String) ?? ReagentUse.Any,
        LifeAfterOpening = Days(at["days_after_opening"]),
        IsWatchedHere = isFirst,
    };

    private static InstrumentPlan Instrument(Place at) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Kind = EnumWords<InstrumentKind>.Find(at["kind"].String) ?? InstrumentKind.Photometer,
        Tests = Each(at["tests"], Word<Measurand>),
        Every = Days(at["verify_every_days"]) ?? InstrumentPlan.UsualEvery,
    };

    private static RoundPlan? Round(Place at) => !at.Exists ? null : new(
        at["at"].String is { } time ? TimeOnly.ParseExact(time, "HH:mm", CultureInfo.InvariantCulture) : RoundPlan.UsualAt, Each(at["items"], RoundItemOf));

    private static RoundItemPlan RoundItemOf(Place at)
    {
        var what = EnumWords<RoundItem>.Find(at["what"].String) ?? RoundItem.Other;
        return new(Id(at), what, EnumWords<RoundReadingKind>.Find(at["reading"].String) ?? what.Kind())
        {
            Name = at["name"].String, Of = at["of"].String, Low = at["low"].Number, High = at["high"].Number, Every = Days(at["every_days"]),
        };
    }

    private static FilterPlan Filter(Place at) => new(Id(at), Name(at), at["area_m2"].Number)
    {
        Kind = EnumWords<FilterKind>.Find(at["kind"].String) ?? FilterKind.Media,
        WashCubicMetres = at["wash_m3"].Number,
        CleanKilopascals = at["clean_kpa"].Number,
        BackwashRise = at["backwash_rise_kpa"].Number ?? FilterPlan.UsualRise,
        BackwashEvery = at["backwash_every_days"].Number is { } days ? TimeSpan.FromDays(days) : null,
    };

    private static PoolPlan Pool(Place at) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Was = at["was"].String,
        Kind = Word<PoolKind>(at["kind"]),
        Setting = Word<Setting>(at["setting"]),
        Disinfectant = Word<Disinfectant>(at["disinfectant"]),
        Secondary = Each(at["secondary"], Word<SecondaryTreatment>),
        VolumeCubicMetres = at["volume_m3"].Number!.Value,
        VolumeConfirmed = Confirmed(at["volume_confirmed"]),
        Limits = Each(at["limits"], Limit),
        Duties = Each(at["checks"], Duty),
        Laboratory = Laboratory(at["laboratory"]),
    };

    private static LabPlan Laboratory(Place at) => !at.Exists ? LabPlan.None : new()
    {
        Limits = Each(at["limits"], limit => new LabLimit(Word<Organism>(limit["organism"]), limit["high"].Number!.Value, limit["source"].String!)),
        Every = Days(at["every_days"]),
        ResampleWithin = Days(at["resample_days"]) ?? LabPlan.None.ResampleWithin,
    };

    private static VolumeConfirmation? Confirmed(Place at) => at.Exists ? new(at["by"].String!, Day(at["on"])!.Value) : null;

    private static LimitPlan Limit(Place at) => new(
        Word<Measurand>(at["measurand"]), at["low"].Number, at["high"].Number, at["source"].String!, at["reference_electrode"].String,
        at["loosened_by"].String, at["loosened_why"].String)
    {
        Deadband = at["deadband"].Number,
        OnDelay = Seconds(at["on_delay_seconds"]),
        OffDelay = Seconds(at["off_delay_seconds"]),
    };

    private static CheckDuty Duty(Place at) => new(
        Each(at["what"], Word<Measurand>),
        [.. at["at"].Items.Select(time => TimeOnly.ParseExact(time.String!, "HH:mm", CultureInfo.InvariantCulture)).Order()]);

    private static ProbePlan Probe(Place at) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Was = at["was"].String,
        PoolId = at["pool"].String,
        Measurand = Word<Measurand>(at["measurand"]),
        Origin = EnumWords<SignalOrigin>.Find(at["origin"].String) ?? SignalOrigin.Raw,
        Topic = at["topic"].String!,
        Format = Word<PayloadFormat>(at["format"]),
        RecordName = at["record"].String,
        Unit = at["unit"].String,
        Range = at["range"].Items.Select(end => end.Number!.Value).ToArray() is [var low, var high] ? new(low, high) : default,
        Every = Seconds(at["every_seconds"]) ?? TimeSpan.FromSeconds(10),
        SampleDelay = Seconds(at["sample_delay_seconds"]) ?? TimeSpan.Zero,
        FilterLag = Seconds(at["filter_lag_seconds"]) ?? TimeSpan.Zero,
        DosingCycle = Seconds(at["dosing_cycle_seconds"]) ?? TimeSpan.Zero,
        ReferenceElectrode = at["reference_electrode"].String,
        FlowSwitchId = at["flow_switch"].String,
        FilterId = at["filter"].String,
        Care = Care(at["calibration"]),
    };

    private static CarePlan Care(Place at) => !at.Exists ? CarePlan.Usual : new()
    {
        Every = at["every_days"].Number is { } days ? TimeSpan.FromDays(days) : CarePlan.Usual.Every,
        SlopePercent = at["slope_percent"].Items.Select(end => end.Number!.Value).ToArray() is [var low, var high] ? new(low, high) : CarePlan.Usual.SlopePercent,
        OffsetMillivolts = at["offset_mv"].Number ?? CarePlan.Usual.OffsetMillivolts,
        OrpMillivolts = at["orp_mv"].Number ?? CarePlan.Usual.OrpMillivolts,
        SecondPerson = at["second_person"].Boolean ?? CarePlan.Usual.SecondPerson,
    };

    private PumpPlan Pump(Place at) => new()
    {
        Id = Id(at),
        Name = Name(at),
        Was = at["was"].String,
        PoolId = at["pool"].String,
        ProductId = at["product"].String!,
        Doses = EnumWords<ProductKind>.Find(root["products"].Items.FirstOrDefault(p => p["id"].String == at["product"].String)["kind"].String) ?? ProductKind.Unknown,
        FollowsProbeId = at["follows"].String,
        StateTopic = at["state_topic"].String!,
        TankTopic = at["tank_topic"].String,
        TankLitres = at["tank_litres"].Number,
        TankLowPercent = at["tank_low_percent"].Number ?? 15,
        LitresPerHour = at["litres_per_hour"].Number,
        StrokesTopic = at["strokes_topic"].String,
        StrokesAre = EnumWords<StrokeCount>.Find(at["strokes_are"].String) ?? StrokeCount.Total,
        MillilitresPerStroke = at["millilitres_per_stroke"].Number,
        PulsesTold = at["pulses_told"].Boolean ?? false,
        DailyLimitLitres = at["daily_limit_litres"].Number,
        Product = root["products"].Items.Where(p => p["id"].String == at["product"].String).Select(Product).FirstOrDefault() is { } product
            ? product with { Name = product.Id, PricePerKilogram = null, PricePerLitre = null, DeliveryDays = null, Store = null } : null,
        TankFootPercent = at["tank_foot_percent"].Number ?? 5,
    };

    private static string Id(Place at) => at["id"].String!;

    private static string Name(Place at) => at["name"].String!;

    private static T Word<T>(Place at) where T : struct, Enum => EnumWords<T>.Find(at.String)!.Value;

    private static ImmutableArray<T> Each<T>(Place list, Func<Place, T> make) => [.. list.Items.Select(make)];

    private static DateOnly? Day(Place at) => Dates.Find(at.String);

    private static TimeSpan? Days(Place at) => at.Number is { } days ? TimeSpan.FromDays(days) : null;

    private static TimeSpan? Seconds(Place at) => at.Number is { } seconds ? TimeSpan.FromSeconds(seconds) : null;
}
