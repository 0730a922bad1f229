namespace PlantWatch.Core.Chemistry;

/// <summary>The buffer that quinhydrone is dissolved in, which fixes its potential.</summary>
public enum QuinhydroneBuffer
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Phthalate, pH 4.</summary>
    Phthalate,
    /// <summary>Neutral phosphate, pH 7.</summary>
    Phosphate,
}

/// <summary>What an ORP probe should show in quinhydrone, the solution it is checked in. ORP has no slope worth adjusting, only an offset that is looked at.</summary>
/// <remarks>mV against Ag/AgCl in 3.33 mol/L potassium chloride: a laboratory meter's manual (published). Other solutions are sold with a figure against their own electrode: that one counts.</remarks>
public static class OrpCheckSolution
{
    /// <summary>How far a sound probe may be off, mV (published, the same manual).</summary>
    public const double Acceptance = 15;

    private static readonly FactorTable Phthalate =
        new([(5, 274.2), (10, 270.9), (15, 266.8), (20, 262.5), (25, 257.6), (30, 253.5), (35, 248.6), (40, 243.6)]);

    private static readonly FactorTable Phosphate =
        new([(5, 111.9), (10, 106.9), (15, 101.0), (20, 95.0), (25, 89.0), (30, 82.7), (35, 76.2), (40, 69.0)]);

    /// <summary>mV that the probe should show.</summary>
    /// <param name="buffer">The buffer.</param>
    /// <param name="celsius">Temperature of the solution, 5 to 40 degC.</param>
    public static Figure Expected(QuinhydroneBuffer buffer, double celsius)
    {
        var table = buffer == QuinhydroneBuffer.Phthalate ? Phthalate : Phosphate;
        return new InputCheck().And(buffer != QuinhydroneBuffer.Unknown, () => Reasons.Reason.Of("orp.check_solution_unknown"))
            .Within("temperature", celsius, table.Range, "degC")
            .Then(() => table.TryAt(celsius, out var millivolts) ? millivolts : double.NaN);
    }
}
