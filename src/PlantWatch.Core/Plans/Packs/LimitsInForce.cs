using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Plans.Packs;

/// <summary>What can be said of a pool's limits. The default is that there are none.</summary>
public enum LimitsWord
{
    /// <summary>Neither a pack nor limits of the plant's own.</summary>
    None = 0,
    /// <summary>A pack is picked and rows that concern the pool wait to be confirmed: no limits in force, whatever else is watched.</summary>
    Unconfirmed,
    /// <summary>No pack is picked; the plant's own limits are watched.</summary>
    OwnOnly,
    /// <summary>Every row of the pack that concerns the pool is confirmed.</summary>
    InForce,
}

/// <summary>A limit that is watched, with where each end comes from. Several rows give their strictest ends.</summary>
/// <param name="Quantity">What is limited.</param>
/// <param name="Grade">Operating or closure.</param>
/// <param name="Low">Lowest value; null when it has none. Of clarity 1: the bottom is seen.</param>
/// <param name="LowFrom">The row it comes from; empty for the plant's own.</param>
/// <param name="High">Highest value; null when it has none.</param>
/// <param name="HighFrom">The row it comes from; empty for the plant's own.</param>
public sealed record LimitBound(PackQuantity Quantity, RowGrade Grade, double? Low, string LowFrom, double? High, string HighFrom);

/// <summary>A row whose condition hangs on something unknown, and which would contradict the rows that do hold: a person has to say, by a test.</summary>
/// <param name="RowId">The row.</param>
/// <param name="Quantity">What it limits.</param>
/// <param name="Needs">What is not known: ph, cyanuric_acid, temperature, reference_electrode, orp_probe or plant_file.</param>
public sealed record UndecidedRow(string RowId, PackQuantity Quantity, string Needs);

/// <summary>A row in mV that is watched against the electrode of the pool's own probe.</summary>
/// <param name="RowId">The row.</param>
/// <param name="Against">The electrode that the row names; empty where it names none.</param>
/// <param name="Own">The electrode of the probe.</param>
/// <param name="Low">Lowest value against the probe's electrode, mV; null when it has none.</param>
/// <param name="High">Highest value against the probe's electrode, mV; null when it has none.</param>
/// <param name="Spread">How far apart the readings of the row lie where a name leaves the filling out, mV; the stricter end is taken. 0 where both are told apart.</param>
public sealed record TurnedRow(string RowId, string Against, string Own, double? Low, double? High, double Spread);

/// <summary>The limits of one pool as they hold now. The default holds none.</summary>
public sealed record LimitsInForce
{
    /// <summary>None.</summary>
    public static LimitsInForce None { get; } = new();

    /// <summary>What can be said of them.</summary>
    public LimitsWord Word { get; init; }

    /// <summary>What is watched.</summary>
    public ImmutableArray<LimitBound> Bounds { get; init; } = [];

    /// <summary>Rows that concern the pool, or may, and are not confirmed: they alarm nothing.</summary>
    public ImmutableArray<string> Unconfirmed { get; init; } = [];

    /// <summary>Rows that cannot be decided.</summary>
    public ImmutableArray<UndecidedRow> Undecided { get; init; } = [];

    /// <summary>Rows about a quantity that is only known by a probe, which the pool has none of and the authority does not demand: listed, and waited for by nothing.</summary>
    public ImmutableArray<string> NotMeasured { get; init; } = [];

    /// <summary>Rows in mV whose figures were turned to the electrode of the pool's probe.</summary>
    public ImmutableArray<TurnedRow> Turned { get; init; } = [];

    /// <summary>The bound on a quantity; null when there is none.</summary>
    public LimitBound? Find(PackQuantity quantity, RowGrade grade)
    {
        foreach (var bound in Bounds)
            if (bound.Quantity == quantity && bound.Grade == grade) return bound;
        return null;
    }

    /// <summary>The ends that a measurand has to lie within, operating and closure together; null ends where there are none.</summary>
    public (double? Low, double? High) Ends(Measurand measurand)
    {
        (double? low, double? high) = (null, null);
        foreach (var bound in Bounds)
        {
            if (measurand.Limiting() == PackQuantity.Sentence || bound.Quantity != measurand.Limiting()) continue;
            if (low is null || bound.Low > low) low = bound.Low ?? low;
            if (high is null || bound.High < high) high = bound.High ?? high;
        }

        return (low, high);
    }

    /// <inheritdoc/>
    public bool Equals(LimitsInForce? other) =>
        other is not null && Word == other.Word && Bounds.AsSpan().SequenceEqual(other.Bounds.AsSpan())
        && Unconfirmed.AsSpan().SequenceEqual(other.Unconfirmed.AsSpan()) && Undecided.AsSpan().SequenceEqual(other.Undecided.AsSpan())
        && NotMeasured.AsSpan().SequenceEqual(other.NotMeasured.AsSpan()) && Turned.AsSpan().SequenceEqual(other.Turned.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Word, Bounds.Length, Unconfirmed.Length);
}

/// <summary>The quantities of packs and the measurands of probes and tests.</summary>
public static class PackQuantities
{
    /// <summary>The quantity that limits a measurand; a sentence where none does.</summary>
    public static PackQuantity Limiting(this Measurand measurand) => measurand switch
    {
        Measurand.Ph => PackQuantity.Ph,
        Measurand.Orp => PackQuantity.Orp,
        Measurand.Temperature => PackQuantity.Temperature,
        Measurand.Conductivity => PackQuantity.Conductivity,
        Measurand.FreeChlorine => PackQuantity.FreeChlorine,
        Measurand.TotalChlorine => PackQuantity.TotalChlorine,
        Measurand.CombinedChlorine => PackQuantity.CombinedChlorine,
        Measurand.TotalAlkalinity => PackQuantity.TotalAlkalinity,
        Measurand.CalciumHardness => PackQuantity.CalciumHardness,
        Measurand.CyanuricAcid => PackQuantity.CyanuricAcid,
        Measurand.DissolvedSolids => PackQuantity.DissolvedSolids,
        Measurand.Turbidity => PackQuantity.Turbidity,
        Measurand.Bromine => PackQuantity.Bromine,
        _ => PackQuantity.Sentence,
    };

    /// <summary>Its word in keys and files, such as <c>free_chlorine</c>.</summary>
    public static string Key(this PackQuantity quantity) => System.Text.Json.JsonNamingPolicy.SnakeCaseLower.ConvertName(quantity.ToString());
}
