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

    /// <summary>Readings are taken together in blocks of at least this length: the flicker of the last digit averages out, water hardly moves within it.</summary>
    public static readonly TimeSpan Block = TimeSpan.FromMinutes(5);

    /// <summary>Blocks over which it is asked whether a signal still moves: two hours, several strokes of a pump that works every quarter of an hour.</summary>
    public const int Window = 24;

    /// <summary>And how many of them have to be there: one doubted leap takes three.</summary>
    public const int WindowSeen = 20;

    /// <summary>Windows a day.</summary>
    public const int WindowsADay = 12;

    /// <summary>
    /// Two hours are still below a twelfth of the usual: a random walk shows a share r of its usual mean square about its mean with a probability near exp(-1.5/r) (small deviations of the
    /// Brownian bridge: Watson's statistic), 1.5e-8 here, with 360 windows a month once in 180 000 months. And below a quarter of the least ever, since nights are calmer than a random walk
    /// foresees; so three days and nights have to be seen first. Remembered for two weeks.
    /// </summary>
    public static readonly CalmLimits HoursCalm = new(1 / 12.0, 0.25, 36, 168, LivelyAgain);

    /// <summary>Three tenths of the least ever are enough, when a week was seen and the block means also scatter as independent numbers: water, however calm, has a memory.</summary>
    public static readonly CalmLimits ScatterCalm = HoursCalm with { OfLowest = 0.3, Enough = 84 };

    /// <summary>They do above this ratio of von Neumann: for 24 independent numbers it is 2 with a standard deviation of 0.4, so nine times in ten.</summary>
    public const double Scatter = 1.5;

    /// <summary>The same of whole days: a week has to be seen first, with the day on which a house is closed. Remembered for a month.</summary>
    public static readonly CalmLimits DaysCalm = new(1 / 12.0, 0.25, 8, 28, LivelyAgain);

    /// <summary>
    /// What a day shows at the shortest lag (ten minutes) is called slow below a quarter of the usual and six tenths of the least ever, seen every six hours: a time constant of 30 minutes leaves about
    /// a tenth. A week has to be seen first.
    /// </summary>
    public static readonly CalmLimits PaceCalm = new(0.25, 0.6, 28, 56, 0.4);

    /// <summary>A slow response has to explain the day better by this difference of chi squares: one parameter more gains it by itself once in 600 days, beside what <see cref="PaceCalm"/> asks of the same day.</summary>
    public const double PaceGain = 10;

    /// <summary>Even a time constant of six hours leaves a tenth of the changes within 160 minutes; broken glass leaves a hundredth of all.</summary>
    public const double LongKept = 0.03;

    /// <summary>Minutes from which a response is called slow: ten times the couple of minutes of a fouled but usable probe.</summary>
    public const double SlowFrom = 20;

    /// <summary>A signal is lively (again) from this share of the usual.</summary>
    public const double LivelyAgain = 0.25;

    /// <summary>No window counts for more than this many times the usual: a shock or a refill is not what the water usually does.</summary>
    public const double MostOfUsual = 8;

    /// <summary>Broken glass shorts the electrode: it shows the isopotential pH within this.</summary>
    public const double AtSeven = 0.12;

    /// <summary>And stays there within this: a broken glass still follows the water by a tenth or so, and keeps its offset.</summary>
    public const double StaysAtSeven = 0.25;

    /// <summary>And for at least this long.</summary>
    public static readonly TimeSpan AtSevenFor = TimeSpan.FromMinutes(20);

    /// <summary>From here on after the leap its wandering can be told: two hours after the quarter of an hour of doubt.</summary>
    public static readonly TimeSpan MovesAgainFrom = TimeSpan.FromMinutes(140);

    /// <summary>What sat there for so long is taken back only when it moves as much as usual.</summary>
    public static readonly TimeSpan SitsSurely = TimeSpan.FromHours(8);

    /// <summary>Spikes within about an hour that ask for maintenance: cable, earth, bubbles.</summary>
    public const double SpikesBad = 3;

    /// <summary>Half-life of the spike count.</summary>
    public static readonly TimeSpan SpikesHalve = TimeSpan.FromMinutes(30);

    /// <summary>Readings over which the noise of now is taken.</summary>
    public const double NoiseReadings = 60;

    /// <summary>Blocks to be seen before the usual noise is known: a day, with its strokes and bathers.</summary>
    public const int NoiseEnough = 288;

    /// <summary>Blocks over which it is remembered: a week.</summary>
    public const int NoiseMost = 2016;

    /// <summary>Noise has grown when its variance is nine times the usual: three times the scatter. Of 60 readings the variance scatters by a fifth, so chance does not do it.</summary>
    public const double NoiseGrown = 9;

    /// <summary>It is still grown, and not learned from, above four times.</summary>
    public const double NoiseHeld = 4;

    /// <summary>And it has to matter: the scatter of one reading at which a control loop begins to dose for noise (common practice).</summary>
    public static double NoiseMatters(Measurand measurand) => measurand switch
    {
        Measurand.Ph => 0.02,
        Measurand.Orp => 5,
        Measurand.Temperature => 0.1,
        Measurand.FreeChlorine => 0.05,
        _ => double.MaxValue,
    };

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

    /// <summary>Length of a block: one reading where they come less often.</summary>
    public static TimeSpan BlockOf(TimeSpan every) => every > Block ? every : Block;

    /// <summary>A series is silent after this long without a reading: three of its intervals, and at least two minutes.</summary>
    public static TimeSpan SilentAfter(TimeSpan every) => TimeSpan.FromTicks(Math.Max(3 * every.Ticks, 2 * TimeSpan.TicksPerMinute));
}
