using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Rules.Packs;

/// <summary>Works out which limits hold for a pool: the confirmed rows of the one pack that was picked, and the plant's own where they are tighter.</summary>
public static class LimitsMaker
{
    /// <summary>The limits of a pool now.</summary>
    /// <param name="plan">The circuit.</param>
    /// <param name="pool">The pool.</param>
    /// <param name="confirmations">What people confirmed.</param>
    /// <param name="water">What is known of the water.</param>
    public static LimitsInForce Of(CircuitPlan plan, PoolPlan pool, ImmutableArray<RowConfirmation> confirmations, WaterFacts water)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(pool);
        if (plan.Pack is not { } pack)
            return pool.Limits.IsEmpty ? LimitsInForce.None : new() { Word = LimitsWord.OwnOnly, Bounds = OwnAround([], pool, plan.People) };
        var concerning = pack.Rows.Where(r => IsLimit(r, pool)).Select(r => new Asked(r, ConditionCheck.Of(r.When, pool, water), Confirmation(pack, r, confirmations)))
            .Where(r => r.Holds != Holds.No && r.Confirmed is not { Applies: false }).ToArray();
        var known = concerning.Where(r => IsMeasured(r.Row, plan, pool)).ToArray();
        var confirmed = known.Where(r => r.Confirmed is not null).ToArray();
        ImmutableArray<string> waiting = [.. known.Where(r => r.Confirmed is null).Select(r => r.Row.Id)];
        var said = new Said([], []);
        var bounds = confirmed.GroupBy(r => (r.Row.Quantity, r.Row.Grade)).OrderBy(g => g.Key)
            .Select(g => Bound(g.Key.Quantity, g.Key.Grade, [.. g], plan, pool, water, said)).OfType<LimitBound>().ToArray();
        return new()
        {
            Word = waiting.IsEmpty ? LimitsWord.InForce : LimitsWord.Unconfirmed, Bounds = OwnAround([.. bounds], pool, plan.People), Unconfirmed = waiting,
            Undecided = [.. said.Undecided], Turned = [.. said.Turned], NotMeasured = [.. concerning.Except(known).Select(r => r.Row.Id)],
        };
    }

    /// <summary>What a person confirmed of the row as it stands now; null when nobody did.</summary>
    public static RowConfirmation? Confirmation(LimitPack pack, PackRow row, ImmutableArray<RowConfirmation> confirmations)
    {
        ArgumentNullException.ThrowIfNull(pack);
        ArgumentNullException.ThrowIfNull(row);
        if (confirmations.IsDefaultOrEmpty) return null;
        foreach (var said in confirmations)
            if (said.PackId == pack.Id && said.RowId == row.Id) return said.Digest == RowDigest.Of(row) ? said : null;
        return null;
    }

    /// <summary>True for a row that limits something in this pool: no sentence, no guide, and bromine only where it is used.</summary>
    public static bool IsLimit(PackRow row, PoolPlan pool)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(pool);
        return row.Quantity != PackQuantity.Sentence && row.Grade != RowGrade.Guide
            && (row.Quantity != PackQuantity.Bromine || pool.Disinfectant is Disinfectant.Bromine or Disinfectant.Unknown);
    }

    /// <summary>True where a figure can be had to hold the row against: everything that is tested by hand, and what only a probe tells where the pool has one or the authority demands it.</summary>
    public static bool IsMeasured(PackRow row, CircuitPlan plan, PoolPlan pool)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(pool);
        return row.MustBeMeasured || row.Quantity is not (PackQuantity.Orp or PackQuantity.Conductivity)
            || plan.Probes.Any(p => p.PoolId == pool.Id && p.Measurand.Limiting() == row.Quantity)
            || pool.Duties.Any(d => d.What.Any(m => m.Limiting() == row.Quantity));
    }

    private sealed record Said(List<UndecidedRow> Undecided, List<TurnedRow> Turned);

    private readonly record struct Asked(PackRow Row, Holds Holds, RowConfirmation? Confirmed);

    private static LimitBound? Bound(
        PackQuantity quantity, RowGrade grade, Asked[] rows, CircuitPlan plan, PoolPlan pool, WaterFacts water, Said said)
    {
        var ends = new Ends(null, "", null, "");
        if (quantity == PackQuantity.Orp) rows = AgainstOwnElectrode(rows, plan, pool, said);
        // Seen or not seen has no figure: the bound says that the bottom has to be seen, which the stop watches.
        if (quantity == PackQuantity.Clarity) rows = [.. rows.Select(r => r with { Row = r.Row with { Low = 1, High = null } })];
        foreach (var (row, _, _) in rows.Where(r => r.Holds == Holds.Yes && r.Row.RaisesLowBy is null)) ends = ends.Within(row);
        // What may hold is taken where it leaves something: the stricter of the two is the safe one.
        foreach (var (row, _, _) in rows.Where(r => r.Holds == Holds.Unknown && r.Row.RaisesLowBy is null))
            if (ends.Within(row) is { IsPossible: true } stricter) ends = stricter;
            else said.Undecided.Add(new(row.Id, quantity, Needs(row, pool, water)));
        // Where it surely holds the minimum rises whatever else stands; a rise that only may hold must leave something.
        foreach (var (row, holds, _) in rows.Where(r => r.Row.RaisesLowBy is not null))
            if (holds == Holds.Yes || ends.Raised(row).IsPossible) ends = ends.Raised(row);
            else said.Undecided.Add(new(row.Id, quantity, Needs(row, pool, water)));
        return ends.Low is null && ends.High is null ? null : new(quantity, grade, ends.Low, ends.LowFrom, ends.High, ends.HighFrom);
    }

    private static Asked[] AgainstOwnElectrode(Asked[] rows, CircuitPlan plan, PoolPlan pool, Said said)
    {
        var probe = plan.Probes.FirstOrDefault(p => p.Measurand == Measurand.Orp && p.PoolId == pool.Id);
        var taken = new List<Asked>();
        foreach (var row in OrpRows.Nearest([.. rows.Select(r => r.Row)], probe?.ReferenceElectrode))
        {
            var turned = OrpRows.Turn(row, probe?.ReferenceElectrode);
            if (turned is null) said.Undecided.Add(new(row.Id, PackQuantity.Orp, probe is null ? "orp_probe" : "reference_electrode"));
            else taken.Add(rows.First(r => r.Row == row) with { Row = row with { Low = turned.Low, High = turned.High } });
            if (turned is not null && !OrpRows.IsSame(row, turned.Own)) said.Turned.Add(turned);
        }

        return [.. taken];
    }

    private static string Needs(PackRow row, PoolPlan pool, WaterFacts water) => row.When switch
    {
        { PhAbove: not null } or { PhUpTo: not null } when water.Ph is null => "ph",
        { TemperatureAbove: not null } or { TemperatureUpTo: not null } when water.Temperature is null => "temperature",
        { CyanurateUsed: not null } when ConditionCheck.UsesCyanurate(pool, water) == Holds.Unknown => "cyanuric_acid",
        { CyanurateFrom: not null } or { CyanurateBelow: not null } when water.Cyanurate is null => "cyanuric_acid",
        _ => "plant_file",
    };

    // A plant may tighten. A looser end of its own counts only when someone who may set limits stands for it with a reason; a closure limit is never touched.
    private static ImmutableArray<LimitBound> OwnAround(ImmutableArray<LimitBound> bounds, PoolPlan pool, ImmutableArray<PersonPlan> people)
    {
        foreach (var own in pool.Limits)
        {
            var quantity = own.Measurand.Limiting();
            var at = Array.FindIndex([.. bounds], b => b.Quantity == quantity && b.Grade == RowGrade.Operating);
            var ends = at < 0 ? new Ends(null, "", null, "") : new Ends(bounds[at].Low, bounds[at].LowFrom, bounds[at].High, bounds[at].HighFrom);
            ends = MayLoosen(own, people) ? ends.Instead(own) : ends.Within(own);
            var bound = new LimitBound(quantity, RowGrade.Operating, ends.Low, ends.LowFrom, ends.High, ends.HighFrom);
            bounds = at < 0 ? bounds.Add(bound) : bounds.SetItem(at, bound);
        }

        return bounds;
    }

    private static bool MayLoosen(LimitPlan own, ImmutableArray<PersonPlan> people) =>
        !string.IsNullOrWhiteSpace(own.LoosenedWhy) && people.Named(own.LoosenedBy) is { MaySetLimits: true };

    private readonly record struct Ends(double? Low, string LowFrom, double? High, string HighFrom)
    {
        public bool IsPossible => !(Low > High);

        public Ends Within(PackRow row) => Within(row.Low, row.High, row.Id);

        public Ends Within(LimitPlan own) => Within(own.Low, own.High, "");

        public Ends Instead(LimitPlan own) => new(own.Low ?? Low, own.Low is null ? LowFrom : "", own.High ?? High, own.High is null ? HighFrom : "");

        public Ends Raised(PackRow row) => Low is { } low ? this with { Low = low + row.RaisesLowBy, LowFrom = row.Id } : this;

        private Ends Within(double? low, double? high, string from) => new(
            low > Low || Low is null ? low : Low, low is not null && (low > Low || Low is null) ? from : LowFrom,
            high < High || High is null ? high : High, high is not null && (high < High || High is null) ? from : HighFrom);
    }
}
