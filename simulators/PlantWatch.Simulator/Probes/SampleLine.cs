using PlantWatch.Simulator.Water;

namespace PlantWatch.Simulator.Probes;

/// <summary>The pipe from a pool to a sample cell: what comes out is what went in some minutes ago. Without flow the cell keeps its old water.</summary>
internal sealed class SampleLine(double delaySeconds)
{
    private readonly Queue<(double At, WaterView Water)> pipe = new();
    private WaterView cell;
    private bool filled;

    /// <summary>Pushes the pool's water of now into the pipe and gives the water in the cell.</summary>
    public WaterView Flow(double seconds, in WaterView pool, bool flows)
    {
        if (!filled) (cell, filled) = (pool, true);
        // Standing water in the cell loses its chlorine slowly; the pipe is taken to do the same, so it is emptied.
        if (!flows)
        {
            pipe.Clear();
            return cell = cell with { Free = cell.Free * 0.9995, Hypochlorous = cell.Hypochlorous * 0.9995 };
        }
        pipe.Enqueue((seconds, pool));
        while (pipe.Count > 0 && pipe.Peek().At <= seconds - delaySeconds) cell = pipe.Dequeue().Water;
        return cell;
    }
}
