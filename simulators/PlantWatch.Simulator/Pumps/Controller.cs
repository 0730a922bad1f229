using PlantWatch.Simulator.Setup;

namespace PlantWatch.Simulator.Pumps;

/// <summary>Proportional control by pulses: once a cycle it looks at the panel and decides how long to dose. It has no other knowledge of the water.</summary>
/// <param name="setup">Its settings.</param>
/// <param name="phaseSeconds">When its first cycle starts; controllers do not all pulse at the same second.</param>
internal sealed class Controller(ControllerSetup setup, double phaseSeconds)
{
    private double _cycleStart = phaseSeconds - setup.CycleSeconds;
    private double _pulse;
    private double _owed;

    /// <summary>Seconds of dosing inside a step that starts at <paramref name="seconds"/>.</summary>
    public double On(double seconds, double stepSeconds, double panel, bool flows)
    {
        if (seconds >= _cycleStart + setup.CycleSeconds) Decide(seconds, panel, flows);
        if (!flows) return 0;
        return Math.Clamp(_cycleStart + _pulse - seconds, 0, stepSeconds);
    }

    private void Decide(double seconds, double panel, bool flows)
    {
        _cycleStart = seconds;
        var error = setup.DosesWhenAbove ? panel - setup.SetPoint : setup.SetPoint - panel;
        var share = double.IsFinite(error) ? Math.Clamp(error / setup.Band, 0, setup.MostOfCycle) : 0;
        var wanted = (share * setup.CycleSeconds) + (share > 0 ? _owed : 0);
        // A pulse too short for the pump is kept for the next cycle, else small deviations would never be dosed away.
        _pulse = flows && wanted >= setup.MinimumPulseSeconds ? Math.Min(wanted, setup.CycleSeconds) : 0;
        _owed = _pulse > 0 || share <= 0 ? 0 : wanted;
    }
}
