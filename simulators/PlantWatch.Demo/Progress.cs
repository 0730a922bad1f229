using PlantWatch.Simulator.Plant;

namespace PlantWatch.Demo;

/// <summary>Says how far the history has come: a line a day.</summary>
internal sealed class Progress(SimulatedPlant plant)
{
    private int _day;

    /// <summary>Shows a share of 0 to 1.</summary>
    public void Show(double share)
    {
        var today = (int)(plant.Now - plant.Start).TotalDays;
        if (today <= _day) return;
        _day = today;
        Console.WriteLine($"  history: day {_day}, {plant.Now:d MMM}, {share:P0}");
    }
}
