namespace PlantWatch.Core.Chemistry;

/// <summary>How far pH, saturation and free chlorine may go on the way: never past the band, and where the water is past it already no further than it is.</summary>
internal sealed class StepLimits
{
    private readonly (PlannedFigure Figure, double Low, double High)[] _walls;
    private readonly StepCaps _caps;

    public StepLimits(Speciation start, IReadOnlyList<Aim> aims, StepCaps caps)
    {
        _caps = caps;
        _walls =
        [
            .. aims.Where(a => a.Now is not null && a.Figure is PlannedFigure.Ph or PlannedFigure.SaturationIndex or PlannedFigure.FreeChlorine).Select(a =>
            {
                var now = PlannedFigures.Of(start, a.Figure);
                var tolerance = PlannedFigures.Tolerance(a.Figure);
                return (a.Figure, Math.Min(now, a.Band.Low ?? double.NegativeInfinity) - tolerance, Math.Max(now, a.Band.High ?? double.PositiveInfinity) + tolerance);
            }),
        ];
    }

    /// <summary>True when a step keeps within all of them.</summary>
    public bool Allow(Speciation before, Speciation after)
    {
        foreach (var (figure, low, high) in _walls)
        {
            var value = PlannedFigures.Of(after, figure);
            if (!(value >= low && value <= high)) return false;
        }

        return _caps.Allow(before, after);
    }
}
