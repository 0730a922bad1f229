using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Water;

/// <summary>A bed of sand. Water passes it slowly, so that its resistance is proportional to flow (Darcy's law), and grows with what it has caught.</summary>
internal sealed class FilterBed(FilterSetup setup)
{
    // What a wash leaves in the bed, share of the clean resistance (assumption).
    private const double LeftBehind = 0.03;

    /// <summary>Fixed facts.</summary>
    public FilterSetup Setup { get; } = setup;

    /// <summary>Resistance over that of the clean bed, in shares of it.</summary>
    public double Caught { get; private set; } = setup.Caught;

    /// <summary>Resistance, 1 when clean.</summary>
    public double Resistance => 1 + Caught;

    /// <summary>Takes its part of what the water brings.</summary>
    public void Catch(double batherHours, double hours, double partOfFlow) =>
        Caught += ((batherHours * Setup.CaughtPerBatherHour) + (hours / 24 * Setup.CaughtPerDay)) * partOfFlow;

    /// <summary>It was washed.</summary>
    public void Wash() => Caught = LeftBehind;
}
