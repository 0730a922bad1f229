using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>The water that a dose ends up in, and the water that it goes into first.</summary>
/// <param name="Whole">All pools of the circuit and the balance tank, m3: what the amount is worked out for.</param>
/// <param name="First">What it is poured into, m3: what must bear it until it has mixed.</param>
/// <param name="Against">Why the volume cannot be relied on; empty when it is confirmed.</param>
public sealed record DoseVolume(double Whole, double First, ImmutableArray<Reason> Against)
{
    /// <summary>Works it out.</summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="pool">The pool it is asked for.</param>
    /// <param name="product">The product, which says where it is added.</param>
    public static DoseVolume Of(CircuitPlan circuit, PoolPlan pool, ProductAtHand product)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(pool);
        ArgumentNullException.ThrowIfNull(product);
        var whole = WholeOf(circuit);
        return new(whole, product.GoesIntoThePool ? pool.VolumeCubicMetres : whole, Unconfirmed(circuit));
    }

    /// <summary>All the water of a circuit, m3.</summary>
    public static double WholeOf(CircuitPlan circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return circuit.Pools.Sum(p => p.VolumeCubicMetres) + (circuit.BalanceTankCubicMetres ?? 0);
    }

    /// <summary>Why the volumes of a circuit cannot be relied on; empty when all are confirmed.</summary>
    public static ImmutableArray<Reason> Unconfirmed(CircuitPlan circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var against = ImmutableArray.CreateBuilder<Reason>();
        foreach (var pool in circuit.Pools)
            if (pool.VolumeConfirmed is null) against.Add(Reason.Of("dose.volume_unconfirmed", pool.Name, pool.VolumeCubicMetres));
        if (circuit.BalanceTankConfirmed is null)
            against.Add(circuit.BalanceTankCubicMetres is { } tank ? Reason.Of("dose.tank_unconfirmed", tank) : Reason.Of("dose.tank_not_known"));
        return against.ToImmutable();
    }
}
