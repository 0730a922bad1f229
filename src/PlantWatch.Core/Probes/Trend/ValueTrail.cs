using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>How a value went of late: means over short blocks that follow one another without a hole. The default is a trail not begun.</summary>
public readonly record struct ValueTrail
{
    /// <summary>Blocks it holds.</summary>
    public const int Length = 15;

    /// <summary>Number of the block under way, counted from the epoch; 0 before the first reading.</summary>
    public long Block { get; init; }

    /// <summary>Sum of its readings, in the measurand's unit.</summary>
    public double Sum { get; init; }

    /// <summary>How many these are.</summary>
    public int Count { get; init; }

    /// <summary>Means of the blocks before it, oldest first.</summary>
    public ImmutableArray<double> Means
    {
        get => field.IsDefault ? [] : field;
        init;
    }

    /// <summary>True once there are as many blocks as it takes to tell a trend.</summary>
    public bool IsFull => Means.Length == Length;

    /// <summary>Takes the next reading in. After a block without a reading the trail begins anew.</summary>
    public ValueTrail Hear(Instant at, double value, TimeSpan block)
    {
        var number = at.UnixMicroseconds / (block.Ticks / TimeSpan.TicksPerMicrosecond);
        if (number == Block) return this with { Sum = Sum + value, Count = Count + 1 };
        var means = number == Block + 1 && Count > 0 ? Pushed(Sum / Count) : [];
        return new() { Block = number, Sum = value, Count = 1, Means = means };
    }

    /// <inheritdoc/>
    public bool Equals(ValueTrail other) => Block == other.Block && Sum.Equals(other.Sum) && Count == other.Count && Means.AsSpan().SequenceEqual(other.Means.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Block, Sum, Count, Means.Length);

    private ImmutableArray<double> Pushed(double mean) => Means.Length < Length ? Means.Add(mean) : [.. Means.AsSpan()[1..], mean];
}
