using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>What a signal may do by itself. All figures are common practice.</summary>
internal static class SignalLimits
{
    /// <summary>A leap between two readings is only judged when they lie no further apart than this; over a gap the water may have moved.</summary>
    public static readonly TimeSpan LeapWithin = TimeSpan.FromMinutes(2);

    /// <summary>A confirmed leap is shown for this long; then the checks have to say what it was.</summary>
    public static readonly TimeSpan LeapShown = TimeSpan.FromMinutes(30);

    /// <summary>A cell that stood still needs this long after the flow is back, beside the way from the pool.</summary>
    public static readonly TimeSpan Flushing = TimeSpan.FromMinutes(5);

    /// <summary>And for this long a leap is the pool's water arriving.</summary>
    public static readonly TimeSpan Settling = TimeSpan.FromMinutes(15);

    /// <summary>A value that did not move for this long may be stuck, if it usually moves much sooner.</summary>
    public static readonly TimeSpan StuckFrom = TimeSpan.FromHours(2);

    /// <summary>And for this many times as long as it usually stays the same.</summary>
    public const double StuckTimes = 30;

    /// <summary>And this many times as long as it ever stayed the same.</summary>
    public const double StuckTimesLongest = 3;

    /// <summary>Changes to be seen before it is known how long the value usually stays the same.</summary>
    public const int ChangesNeeded = 200;

    /// <summary>A signal that flickers in its last digit but wanders no more is judged by blocks of this length.</summary>
    public static readonly TimeSpan Block = TimeSpan.FromHours(4);

    /// <summary>Blocks to be seen before it is known how far the value usually wanders: two days, nights included.</summary>
    public const int BlocksNeeded = 12;

    /// <summary>A block is flat when it spans less than this share of the usual.</summary>
    public const double FlatShare = 0.3;

    /// <summary>Flat blocks in a row that no quiet night explains: a whole day.</summary>
    public const int FlatBlocksBad = 6;

    /// <summary>Broken glass shorts the electrode: it shows the isopotential pH within this.</summary>
    public const double AtSeven = 0.12;

    /// <summary>And for at least this long.</summary>
    public static readonly TimeSpan AtSevenFor = TimeSpan.FromMinutes(20);

    /// <summary>Spikes within about an hour that ask for maintenance: cable, earth, bubbles.</summary>
    public const double SpikesBad = 3;

    /// <summary>Half-life of the spike count.</summary>
    public static readonly TimeSpan SpikesHalve = TimeSpan.FromMinutes(30);

    /// <summary>A device clock ahead by more than this is wrong.</summary>
    public const double ClockAheadSeconds = 30;

    /// <summary>A device clock behind by more than this, reading after reading, is wrong or the way here is very slow.</summary>
    public const double ClockBehindSeconds = 300;

    /// <summary>
    /// The most that water in a cell can change within a reading or two and keep. For pH: acid poured into the pool mixes in with a time constant of about 20 minutes, so 0.5 pH moves 0.05 in two
    /// minutes; a stroke of the pump adds 0.03; display and noise of one reading 0.04 (four standard deviations). For ORP a shock of four times the chlorine is 50 mV.
    /// </summary>
    public static double LeapOf(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.12,
        Measurand.Orp => 80,
        Measurand.Temperature => 2,
        Measurand.FreeChlorine => 1,
        Measurand.Conductivity => 1000,
        _ => double.MaxValue,
    };

    /// <summary>A series is silent after this long without a reading: three of its intervals, and at least two minutes.</summary>
    public static TimeSpan SilentAfter(TimeSpan every) => every * 3 > TimeSpan.FromMinutes(2) ? every * 3 : TimeSpan.FromMinutes(2);
}
