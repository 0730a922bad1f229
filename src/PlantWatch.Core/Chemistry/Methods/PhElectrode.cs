using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>A pH electrode as two buffers found it.</summary>
/// <param name="OffsetMillivolts">mV at pH 7, its isopotential point.</param>
/// <param name="SlopePercent">Slope in per cent of theory.</param>
public readonly record struct PhElectrode(double OffsetMillivolts, double SlopePercent)
{
    /// <summary>pH at which temperature does not matter: 7, as electrodes are made.</summary>
    public const double Isopotential = 7;

    /// <summary>Least distance of two buffers (common practice).</summary>
    public const double LeastApart = 2;

    /// <summary>Offsets in mV that a sound electrode shows (makers' usual limits, common practice).</summary>
    public static ValueRange SoundOffset { get; } = new(-30, 30);

    /// <summary>Slopes in per cent that a sound electrode shows; new ones have 95 to 102 (common practice).</summary>
    public static ValueRange SoundSlope { get; } = new(85, 105);

    /// <summary>Below this slope in per cent a new electrode is near (common practice).</summary>
    public const double SlopeWearsOut = 90;

    /// <summary>True when offset and slope are those of a sound electrode.</summary>
    public bool IsSound => SoundOffset.Contains(OffsetMillivolts) && SoundSlope.Contains(SlopePercent);

    /// <summary>pH of a reading with temperature compensation: 7 - (E - offset)/slope at the temperature. It corrects the electrode, never the water.</summary>
    /// <param name="millivolts">Reading in mV.</param>
    /// <param name="celsius">Temperature, 0 to 60 degC.</param>
    public Figure Ph(double millivolts, double celsius)
    {
        var electrode = this;
        return new InputCheck().Within("millivolts", millivolts, new(-1000, 1000), "mV").Within("temperature", celsius, Temperatures, "degC")
            .Within("slope", SlopePercent, new(10, 200), "%").Within("offset", OffsetMillivolts, new(-500, 500), "mV")
            .Then(() => Isopotential - ((millivolts - electrode.OffsetMillivolts) / (electrode.SlopePercent / 100 * Nernst.Slope(celsius))));
    }

    /// <summary>Offset and slope from two buffers at one temperature; the default when they are closer than two pH or no numbers.</summary>
    /// <param name="first">pH of the buffer at its temperature, and mV in it.</param>
    /// <param name="second">The other.</param>
    /// <param name="celsius">Temperature of both, 0 to 60 degC.</param>
    public static PhElectrode FromBuffers((double Ph, double Millivolts) first, (double Ph, double Millivolts) second, double celsius)
    {
        if (!(Math.Abs(first.Ph - second.Ph) >= LeastApart) || !Temperatures.Contains(celsius) || !double.IsFinite(first.Millivolts + second.Millivolts)) return default;
        var slope = (second.Millivolts - first.Millivolts) / (first.Ph - second.Ph);
        return new(first.Millivolts + (slope * (first.Ph - Isopotential)), 100 * slope / Nernst.Slope(celsius));
    }

    /// <summary>How far a meter that takes the water for another temperature is off, pH: little near 7.</summary>
    /// <param name="ph">True pH.</param>
    /// <param name="celsius">Temperature of the water.</param>
    /// <param name="assumed">Temperature the meter takes it for.</param>
    public static double ErrorUncompensated(double ph, double celsius, double assumed = 25) =>
        (ph - Isopotential) * ((Nernst.Slope(celsius) / Nernst.Slope(assumed)) - 1);

    private static readonly ValueRange Temperatures = new(0, 60);
}
