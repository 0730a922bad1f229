using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>pH of the buffers that electrodes are calibrated in, at the temperature of the buffer.</summary>
/// <remarks>
/// Phthalate, phosphate, borax and carbonate: reference solutions of JIS Z 8802:2011 (published), the family sold as 4.01, 6.86, 9.18 and 10.01. Technical buffers: the table of a process
/// analyser's manual (published), the family sold as 4.00, 7.00 and 10.01. The trap: 7.00 and 6.86 are two buffers, 0.14 apart; a bottle is known by the pH printed on it for 25 degC.
/// Between two rows a straight line is drawn: rows lie at most 0.08 apart.
/// </remarks>
public static class PhBuffers
{
    private static readonly FactorTable Phthalate =
        new([(0, 4.01), (5, 4.01), (10, 4.00), (15, 4.00), (20, 4.00), (25, 4.01), (30, 4.01), (35, 4.02), (40, 4.03), (45, 4.04), (50, 4.06)]);

    private static readonly FactorTable Phosphate =
        new([(0, 6.98), (5, 6.95), (10, 6.92), (15, 6.90), (20, 6.88), (25, 6.86), (30, 6.85), (35, 6.84), (40, 6.84), (45, 6.83), (50, 6.83)]);

    private static readonly FactorTable Borax =
        new([(0, 9.46), (5, 9.39), (10, 9.33), (15, 9.27), (20, 9.22), (25, 9.18), (30, 9.14), (35, 9.10), (40, 9.07), (45, 9.04), (50, 9.01)]);

    private static readonly FactorTable Carbonate =
        new([(0, 10.32), (5, 10.25), (10, 10.18), (15, 10.12), (20, 10.07), (25, 10.02), (30, 9.97), (35, 9.93), (38, 9.91)]);

    private static readonly FactorTable Technical4 =
        new([(0, 4.00), (5, 4.00), (10, 4.00), (15, 4.00), (20, 4.00), (25, 4.00), (30, 4.01), (35, 4.02), (40, 4.03), (45, 4.04), (50, 4.06)]);

    private static readonly FactorTable Technical7 =
        new([(0, 7.12), (5, 7.09), (10, 7.06), (15, 7.04), (20, 7.02), (25, 7.00), (30, 6.99), (35, 6.99), (40, 6.98), (45, 6.98), (50, 6.97)]);

    private static readonly FactorTable Technical10 =
        new([(0, 10.32), (5, 10.25), (10, 10.18), (15, 10.12), (20, 10.06), (25, 10.01), (30, 9.97), (35, 9.93), (40, 9.89), (45, 9.86), (50, 9.83)]);

    /// <summary>pH of a buffer.</summary>
    /// <param name="buffer">Which.</param>
    /// <param name="celsius">Its temperature, 0 to 50 degC (carbonate 0 to 38).</param>
    public static Figure Value(PhBuffer buffer, double celsius)
    {
        if (TableOf(buffer) is not { } table) return Figure.Not(Reason.Of("buffer.unknown"));
        return new InputCheck().Within("temperature", celsius, table.Range, "degC").Then(() => table.At(celsius));
    }

    /// <summary>The family a buffer belongs to.</summary>
    public static BufferFamily FamilyOf(PhBuffer buffer) => buffer switch
    {
        PhBuffer.Unknown => BufferFamily.Unknown,
        PhBuffer.Technical4 or PhBuffer.Technical7 or PhBuffer.Technical10 => BufferFamily.Technical,
        _ => BufferFamily.Reference,
    };

    private static FactorTable? TableOf(PhBuffer buffer) => buffer switch
    {
        PhBuffer.Phthalate => Phthalate,
        PhBuffer.Phosphate => Phosphate,
        PhBuffer.Borax => Borax,
        PhBuffer.Carbonate => Carbonate,
        PhBuffer.Technical4 => Technical4,
        PhBuffer.Technical7 => Technical7,
        PhBuffer.Technical10 => Technical10,
        _ => null,
    };
}
