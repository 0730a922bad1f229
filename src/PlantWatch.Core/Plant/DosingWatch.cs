using System.Collections.Immutable;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plant;

/// <summary>The supervision of the two dosing pumps of one water, as far as it has come. The default has not begun.</summary>
public sealed record DosingWatch
{
    /// <summary>Since when it runs; never while it has not begun.</summary>
    public Instant Since { get; init; }

    /// <summary>What it has learned and believes; null while it has not begun. Never told anything more once it is part of a state.</summary>
    public PoolSupervisor? Supervisor { get; init; }

    /// <summary>What watched the same pumps before the water or the plant file changed, until the next begins; null at any other time, and where nothing did.</summary>
    public PoolSupervisor? Former { get; init; }

    /// <summary>Minutes of which more may come, oldest first.</summary>
    public ImmutableArray<HeardMinute> Minutes { get; init; } = [];

    /// <summary>Up to when minutes are closed: what is older comes too late.</summary>
    public Instant ClosedTo { get; init; }

    /// <summary>Water flows, as last heard; null when it never was.</summary>
    public bool? Circulates { get; init; }

    /// <summary>Strokes of the acid pump.</summary>
    public StrokeBook Acid { get; init; } = new();

    /// <summary>Strokes of the chlorine pump.</summary>
    public StrokeBook Chlorine { get; init; } = new();

    /// <summary>Tests of free chlorine that the supervisor has not been told of, in mg/L.</summary>
    public ImmutableArray<ChlorineTest> Tests { get; init; } = [];

    /// <summary>Troubles that hold, in the order they were said.</summary>
    public ImmutableArray<PumpVerdict> Standing { get; init; } = [];

    /// <summary>Since when the acid pump runs flat out, and pH then.</summary>
    public FlatOut AcidFlatOut { get; init; }

    /// <summary>Since when the chlorine pump runs flat out, and ORP then.</summary>
    public FlatOut ChlorineFlatOut { get; init; }

    /// <summary>Strokes of a pump.</summary>
    public StrokeBook Book(DosedProduct pump) => pump == DosedProduct.Acid ? Acid : Chlorine;

    /// <summary>How long a pump runs flat out.</summary>
    public FlatOut Flat(DosedProduct pump) => pump == DosedProduct.Acid ? AcidFlatOut : ChlorineFlatOut;

    /// <summary>Nothing learned of the water holds any more. What stands against a pump that is still the same stands on, and so do its books: other water mends no pump.</summary>
    /// <param name="acid">What stayed of the acid pump.</param>
    /// <param name="chlorine">What stayed of the chlorine pump.</param>
    public DosingWatch LearningAnew(PumpKept acid, PumpKept chlorine) => this with
    {
        Since = Instant.Never,
        Supervisor = null,
        Former = (Supervisor ?? Former) is { } before ? before.Anew(before.Pool, acid, chlorine) : null,
        Acid = acid == PumpKept.Strokes ? Acid : new(),
        Chlorine = chlorine == PumpKept.Strokes ? Chlorine : new(),
        AcidFlatOut = acid == PumpKept.Strokes ? AcidFlatOut : default,
        ChlorineFlatOut = chlorine == PumpKept.Strokes ? ChlorineFlatOut : default,
        Standing = Standing.RemoveAll(v => (v.Pump == DosedProduct.Acid ? acid : chlorine) == PumpKept.Nothing),
    };

    /// <summary>The trouble of a kind, while it holds.</summary>
    public PumpVerdict? Find(DosedProduct pump, PumpTrouble trouble)
    {
        foreach (var verdict in Standing)
            if (verdict.Pump == pump && verdict.Trouble == trouble) return verdict;
        return null;
    }
}

/// <summary>A test of free chlorine.</summary>
/// <param name="At">When it was sampled.</param>
/// <param name="MilligramsPerLitre">What it found.</param>
public readonly record struct ChlorineTest(Instant At, double MilligramsPerLitre);

/// <summary>A pump runs as fast as it ever does.</summary>
/// <param name="Since">Since when; never while it does not.</param>
/// <param name="Then">The value its controller holds, at that time; null where it was not seen.</param>
/// <param name="Now">The same, newest.</param>
public readonly record struct FlatOut(Instant Since, double? Then, double? Now);
