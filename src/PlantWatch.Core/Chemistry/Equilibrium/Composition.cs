namespace PlantWatch.Core.Chemistry;

/// <summary>What a water is made of, in mol per kg of water (1 L of pool water is taken as 1 kg). Every amount is conservative: it changes only by what is added, drained, spent or precipitated.</summary>
/// <remarks>
/// pH is not among them. It follows from these amounts by electroneutrality, and so does alkalinity: adding hydrochloric acid is adding
/// <see cref="Chloride"/> alone, adding soda is adding <see cref="Sodium"/> and <see cref="Carbon"/>. Spent chlorine turns <see cref="Chlorine"/> into <see cref="Chloride"/>.
/// The default is pure water. A difference of two compositions may be negative; a water may not.
/// </remarks>
/// <param name="Carbon">Inorganic carbon: CO2, bicarbonate, carbonate and their pairs.</param>
/// <param name="Calcium">Calcium, ion pairs included.</param>
/// <param name="Sodium">Sodium, and every other strong cation beside calcium that is not measured on its own.</param>
/// <param name="Chloride">Chloride, and every other strong anion that is not measured on its own.</param>
/// <param name="Sulfate">Sulfate.</param>
/// <param name="Cyanurate">Cyanuric acid in all forms, chlorinated ones included.</param>
/// <param name="Chlorine">Free chlorine in all forms (HOCl, OCl- and chlorine bound to cyanurate), in mol of Cl2 equivalent.</param>
/// <param name="Boron">Boric acid and borate.</param>
public readonly record struct Composition(
    double Carbon = 0, double Calcium = 0, double Sodium = 0, double Chloride = 0, double Sulfate = 0, double Cyanurate = 0, double Chlorine = 0, double Boron = 0)
{
    /// <summary>Charge of the ions of strong acids and bases in eq/kg: what the weak ones must balance. Alkalinity in the sense of conservation.</summary>
    public double StrongCharge => Sodium + (2 * Calcium) - Chloride - (2 * Sulfate);

    /// <summary>Both together.</summary>
    public static Composition operator +(Composition a, Composition b) => new(
        a.Carbon + b.Carbon, a.Calcium + b.Calcium, a.Sodium + b.Sodium, a.Chloride + b.Chloride, a.Sulfate + b.Sulfate, a.Cyanurate + b.Cyanurate,
        a.Chlorine + b.Chlorine, a.Boron + b.Boron);

    /// <summary>One without the other.</summary>
    public static Composition operator -(Composition a, Composition b) => a + (-1 * b);

    /// <summary>So many times as much.</summary>
    public static Composition operator *(double times, Composition a) => new(
        times * a.Carbon, times * a.Calcium, times * a.Sodium, times * a.Chloride, times * a.Sulfate, times * a.Cyanurate, times * a.Chlorine, times * a.Boron);

    /// <summary>So many times as much.</summary>
    public static Composition operator *(Composition a, double times) => times * a;

    /// <summary>Both together.</summary>
    public static Composition Add(Composition a, Composition b) => a + b;

    /// <summary>One without the other.</summary>
    public static Composition Subtract(Composition a, Composition b) => a - b;

    /// <summary>So many times as much.</summary>
    public static Composition Multiply(double times, Composition a) => times * a;

    /// <summary>The water after a part of it is drained and filled up again with another.</summary>
    /// <param name="fraction">The part replaced, 0 to 1.</param>
    /// <param name="makeUp">The water that comes in.</param>
    /// <exception cref="ArgumentOutOfRangeException">The part is not from 0 to 1.</exception>
    public Composition Mixed(double fraction, Composition makeUp) => fraction is >= 0 and <= 1
        ? ((1 - fraction) * this) + (fraction * makeUp)
        : throw new ArgumentOutOfRangeException(nameof(fraction), fraction, "the part replaced is from 0 to 1");

    /// <summary>The water after a part of its free chlorine has done its work and become chloride.</summary>
    /// <param name="part">The part spent, 0 to 1.</param>
    public Composition ChlorineSpent(double part = 1) => this with { Chlorine = Chlorine * (1 - part), Chloride = Chloride + (part * Chlorine) };
}
