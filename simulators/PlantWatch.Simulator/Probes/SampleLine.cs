using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.Probes;

/// <summary>The pipe from a pool to a sample cell: what comes out is what went in some minutes ago. Without flow the cell keeps its old water.</summary>
internal sealed class SampleLine(double delaySeconds)
{
    private readonly Queue<(double At, WaterView Water)> _pipe = new();
    private WaterView _cell;
    private bool _filled;

    /// <summary>Pushes the pool's water of now into the pipe and gives the water in the cell.</summary>
    public WaterView Flow(double seconds, in WaterView pool, bool flows)
    {
        if (!_filled) (_cell, _filled) = (pool, true);
        // Standing water in the cell loses its chlorine slowly; the pipe is taken to do the same, so it is emptied.
        if (!flows)
        {
            _pipe.Clear();
            return _cell = _cell with { Free = _cell.Free * 0.9995, Hypochlorous = _cell.Hypochlorous * 0.9995 };
        }
        _pipe.Enqueue((seconds, pool));
        while (_pipe.Count > 0 && _pipe.Peek().At <= seconds - delaySeconds) _cell = _pipe.Dequeue().Water;
        return _cell;
    }
}
