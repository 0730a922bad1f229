using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules.Packs;

/// <summary>Rows in mV, taken against the electrode of the pool's own probe: mV against two electrodes are not compared.</summary>
/// <remarks>Figures are turned with the potentials at 25 degC. Where a name leaves the filling out, or the row names no electrode, the stricter end of all that it may mean is taken.</remarks>
internal static class OrpRows
{
    /// <summary>The rows to be asked: where a pack prints a figure for each of several electrodes, only those that come nearest to the probe's own. One that names none is always asked.</summary>
    public static IEnumerable<PackRow> Nearest(ImmutableArray<PackRow> rows, string? own)
    {
        var named = rows.Where(r => r.When.ReferenceElectrode is not null).ToArray();
        var nearest = named.Length == 0 ? 0 : named.Min(r => Distance(r, own));
        return rows.Where(r => r.When.ReferenceElectrode is null || Distance(r, own) == nearest);
    }

    /// <summary>The row against the probe's electrode; null where one of the two is not known.</summary>
    public static TurnedRow? Turn(PackRow row, string? own)
    {
        var against = row.When.ReferenceElectrode;
        if (own is not null && IsSame(row, own)) return new(row.Id, against!, own, row.Low, row.High, 0);
        ReadOnlySpan<ReferenceElectrode> from = (against is null ? ReferenceElectrodeNames.OfProbes : ReferenceElectrodeNames.Possible(against)).AsSpan(), to = ReferenceElectrodeNames.Possible(own).AsSpan();
        if (own is null || from.IsEmpty || to.IsEmpty) return null;
        var (least, most) = Offsets(from, to);
        return new(row.Id, against ?? "", own, row.Low + most, row.High + least, most - least);
    }

    /// <summary>True where the row is against the very electrode of the probe.</summary>
    public static bool IsSame(PackRow row, string? own) => row.When.ReferenceElectrode is { } named && own is not null
        && (ReferenceElectrodeNames.Read(own) is not ReferenceElectrode.Unknown and var known ? ReferenceElectrodeNames.Read(named) == known : named == own);

    private static int Distance(PackRow row, string? own) =>
        IsSame(row, own) ? 0 : ReferenceElectrodeNames.Possible(row.When.ReferenceElectrode).Intersect(ReferenceElectrodeNames.Possible(own)).Any() ? 1 : 2;

    // What is added to a figure of the row: the least and the most that it may be.
    private static (double Least, double Most) Offsets(ReadOnlySpan<ReferenceElectrode> from, ReadOnlySpan<ReferenceElectrode> to)
    {
        var (least, most) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var one in from)
            foreach (var other in to)
            {
                var offset = ReferencePotential.Convert(Millivolts.From(0), one, other, Celsius.From(25)).Reading.Value;
                (least, most) = (Math.Min(least, offset), Math.Max(most, offset));
            }

        return (least, most);
    }
}
