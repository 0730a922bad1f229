using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Probes;

/// <summary>How far a signal scatters from reading to reading, now and usually. The default has seen nothing.</summary>
/// <param name="Now">Variance over about an hour of readings a minute, in the square of the measurand's unit.</param>
/// <param name="Usual">Its running mean.</param>
/// <param name="Blocks">Blocks this rests on, counted up to what is enough.</param>
public readonly record struct SignalNoise(float Now, float Usual, int Blocks)
{
    // A second difference of white noise has six times its variance and sees neither level nor slope of the water.
    internal SignalNoise Hear(double raw, in SignalTail tail)
    {
        if (tail.Count < 2) return this;
        var bend = raw - (2 * tail.A) + tail.B;
        var square = bend * bend / 6;
        // One spike makes three great bends: none counts for more than 50 times what is usual, or a single spike would be noise.
        if (Usual > 0) square = Math.Min(square, 50 * Usual);
        return this with { Now = Now == 0 ? (float)square : (float)(Now + ((square - Now) / SignalLimits.NoiseReadings)) };
    }

    internal SignalNoise Close() => Now == 0 || (Blocks >= SignalLimits.NoiseEnough && Now > SignalLimits.NoiseHeld * Usual)
        ? this
        : new(Now, Usual + ((Now - Usual) / Math.Min(Blocks + 1, SignalLimits.NoiseMost)), Math.Min(Blocks + 1, SignalLimits.NoiseMost));

    /// <summary>True when it has grown several times; once said it holds until it is less than twice the usual.</summary>
    internal bool IsGrown(ProbePlan probe, bool said) => Blocks >= SignalLimits.NoiseEnough
        && Now > (said ? SignalLimits.NoiseHeld : SignalLimits.NoiseGrown) * Usual && Now > Math.Pow(SignalLimits.NoiseMatters(probe.Measurand), 2);
}
