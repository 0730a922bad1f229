namespace PlantWatch.Simulator;

/// <summary>Random numbers of one actor. Each probe, pool and person has its own stream, so that adding one does not change what the others do.</summary>
/// <remarks>SplitMix64 (Steele, Lea, Flood 2014): short, and the same on every platform and version, which a seed in a scenario file relies on.</remarks>
internal sealed class Chance
{
    private ulong _state;
    private double _spare = double.NaN;

    /// <summary>A stream for an actor of a scenario.</summary>
    public Chance(int seed, string actor)
    {
        _state = (ulong)seed * 0x9E3779B97F4A7C15UL;
        foreach (var letter in actor) _state = ((_state ^ letter) * 0x100000001B3UL) + 1;
    }

    /// <summary>64 random bits.</summary>
    public ulong Bits()
    {
        var z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Even in [0, 1).</summary>
    public double Even() => (Bits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Even between two ends.</summary>
    public double Between(double low, double high) => low + ((high - low) * Even());

    /// <summary>True with the given probability.</summary>
    public bool Happens(double probability) => Even() < probability;

    /// <summary>Normal with mean 0 and standard deviation 1 (Box and Muller 1958).</summary>
    public double Normal()
    {
        if (!double.IsNaN(_spare))
        {
            var kept = _spare;
            _spare = double.NaN;
            return kept;
        }
        var radius = Math.Sqrt(-2 * Math.Log(1 - Even()));
        var (sine, cosine) = Math.SinCos(2 * Math.PI * Even());
        _spare = radius * sine;
        return radius * cosine;
    }

    /// <summary>A UUID version 7 (RFC 9562) whose random part comes from this stream.</summary>
    public Guid TimeOrderedId(DateTimeOffset at)
    {
        Span<byte> bytes = stackalloc byte[16];
        BitConverter.TryWriteBytes(bytes, Bits());
        BitConverter.TryWriteBytes(bytes[8..], Bits());
        var milliseconds = at.ToUnixTimeMilliseconds();
        for (var i = 5; i >= 0; i--, milliseconds >>= 8) bytes[i] = (byte)milliseconds;
        bytes[6] = (byte)(0x70 | (bytes[6] & 0x0F));
        bytes[8] = (byte)(0x80 | (bytes[8] & 0x3F));
        return new Guid(bytes, bigEndian: true);
    }
}
