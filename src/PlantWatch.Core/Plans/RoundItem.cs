using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans;

/// <summary>What is looked at on a round through the plant room. The default is anything that the plant names itself.</summary>
public enum RoundItem
{
    /// <summary>Anything else; the plant file says how it is read.</summary>
    Other = 0,
    /// <summary>Pressure before a filter.</summary>
    FilterInlet,
    /// <summary>Pressure behind a filter.</summary>
    FilterOutlet,
    /// <summary>Circulation as the plant's own meter shows it.</summary>
    Circulation,
    /// <summary>A strainer, looked into.</summary>
    Strainer,
    /// <summary>Level of the balance tank.</summary>
    BalanceTank,
    /// <summary>Meter of the make-up water.</summary>
    MakeUpMeter,
    /// <summary>Flow of sample water past the probes.</summary>
    SampleFlow,
    /// <summary>Intensity of an ultraviolet lamp, of that of a new one.</summary>
    UltravioletIntensity,
    /// <summary>Coagulant dosed since the last round.</summary>
    Coagulant,
    /// <summary>Eyewash and emergency shower, run.</summary>
    Eyewash,
    /// <summary>Alarm of dangerous gas, tested.</summary>
    GasAlarm,
}

/// <summary>How something is read on a round. The default is a look: in order or not.</summary>
public enum RoundReadingKind
{
    /// <summary>In order, or not.</summary>
    Works = 0,
    /// <summary>Gauge pressure in kPa.</summary>
    Pressure,
    /// <summary>Flow in m3/h.</summary>
    Flow,
    /// <summary>Flow of sample water in L/h.</summary>
    SmallFlow,
    /// <summary>Level or intensity in per cent.</summary>
    Percent,
    /// <summary>A meter that only counts up, in m3.</summary>
    Meter,
    /// <summary>An amount in L.</summary>
    Amount,
}

/// <summary>How items are read, in what unit, and what a gauge can show.</summary>
public static class RoundReadings
{
    /// <summary>How an item is read when the plant file does not say.</summary>
    public static RoundReadingKind Kind(this RoundItem item) => item switch
    {
        RoundItem.FilterInlet or RoundItem.FilterOutlet => RoundReadingKind.Pressure,
        RoundItem.Circulation => RoundReadingKind.Flow,
        RoundItem.SampleFlow => RoundReadingKind.SmallFlow,
        RoundItem.BalanceTank or RoundItem.UltravioletIntensity => RoundReadingKind.Percent,
        RoundItem.MakeUpMeter => RoundReadingKind.Meter,
        RoundItem.Coagulant => RoundReadingKind.Amount,
        _ => RoundReadingKind.Works,
    };

    /// <summary>Unit of a reading; empty for a look.</summary>
    public static string Unit(this RoundReadingKind kind) => kind switch
    {
        RoundReadingKind.Pressure => "kPa",
        RoundReadingKind.Flow => "m3/h",
        RoundReadingKind.SmallFlow => "L/h",
        RoundReadingKind.Percent => "%",
        RoundReadingKind.Meter => "m3",
        RoundReadingKind.Amount => "L",
        _ => "",
    };

    /// <summary>What a gauge of that kind can show: beyond it a digit slipped. A suction gauge shows less than nil.</summary>
    /// <remarks>Our choice, deliberately wide, because it is to catch a slip of the finger and nothing else: from vacuum to twenty bar; a flow as of <see cref="Measurands.Possible"/>, and of sample water up to 5 m3/h; twice full, as sensors are set wrong; a meter of eight digits; ten cubic metres.</remarks>
    public static ValueRange Possible(this RoundReadingKind kind) => kind switch
    {
        RoundReadingKind.Pressure => new(-100, 2_000),
        RoundReadingKind.Flow => new(0, 10_000),
        RoundReadingKind.SmallFlow => new(0, 5_000),
        RoundReadingKind.Percent => new(0, 200),
        RoundReadingKind.Meter => new(0, 100_000_000),
        _ => new(0, 10_000),
    };
}
