using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings;

/// <summary>What a verification says. The default says nothing.</summary>
public enum VerificationWord
{
    /// <summary>None was made.</summary>
    None = 0,
    /// <summary>The instrument read the standard within its tolerance.</summary>
    Within,
    /// <summary>It did not.</summary>
    Outside,
}

/// <summary>An instrument held against a standard.</summary>
/// <param name="Id">UUIDv7 made where it was entered.</param>
/// <param name="Measurand">What the standard stands for.</param>
/// <param name="Standard">Which standard, with its number.</param>
/// <param name="Nominal">What it should read, in the measurand's unit.</param>
/// <param name="Tolerance">How far it may be off on either side, as the standard's certificate says.</param>
/// <param name="Reading">What it read.</param>
/// <param name="VerifiedAt">When.</param>
/// <param name="By">Who.</param>
public sealed record Verification(Guid Id, Measurand Measurand, string Standard, double Nominal, double Tolerance, double Reading, Instant VerifiedAt, string By)
{
    /// <summary>How far it was off; the sign is that of reading too much.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double Off => Reading - Nominal;

    // A reading at the very edge is inside: 1.10 against 1.00 within 0.10 must not fail by a rounding of the machine.
    /// <summary>What it says.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public VerificationWord Word => Math.Abs(Off) <= Tolerance + 1e-9 ? VerificationWord.Within : VerificationWord.Outside;

    /// <summary>True when it was made with the same standard as another, or with one that stands for the same within the tolerance of both.</summary>
    public bool IsOfSameStandard(Verification other) => other is not null && InstrumentState.Channel(Measurand) == InstrumentState.Channel(other.Measurand)
        && (string.Equals(Standard, other.Standard, StringComparison.OrdinalIgnoreCase) || Math.Abs(Nominal - other.Nominal) <= Math.Min(Tolerance, other.Tolerance) + 1e-9);

    /// <summary>True when an earlier one says nothing more beside it. What was read wrong is ended by a standard of the same kind that was read right; read wrong again it is only taken over by the very same one.</summary>
    public bool Settles(Verification earlier) =>
        IsOfSameStandard(earlier) && (Word == VerificationWord.Within || (Nominal == earlier.Nominal && string.Equals(Standard, earlier.Standard, StringComparison.OrdinalIgnoreCase)));
}

/// <summary>What is known of an instrument.</summary>
/// <param name="Id">The instrument's id.</param>
/// <param name="Made">Its verifications, in the order of their times: a check that is told late is judged by those of its time.</param>
public sealed record InstrumentState(string Id, ImmutableArray<Verification> Made)
{
    /// <summary>How many are remembered of each quantity. What a standard said last is remembered beyond it. Our choice, because at the usual month between two that is two years, as far back as one can be told.</summary>
    public const int Remembered = 24;

    /// <summary>The newest verification of what a measurand is read by, made by an instant; null when there is none.</summary>
    public Verification? NewestOf(Measurand measurand, Instant at)
    {
        Verification? newest = null;
        foreach (var made in Made)
            if (made.VerifiedAt <= at && Channel(made.Measurand) == Channel(measurand)) newest = made;
        return newest;
    }

    /// <summary>Standards that it read wrong and that have not been read right since, as they were read last; by an instant, of what a measurand is read by.</summary>
    public IReadOnlyList<Verification> Failed(Measurand measurand, Instant at)
    {
        var failed = new List<Verification>();
        foreach (var made in Made)
        {
            if (made.VerifiedAt > at || Channel(made.Measurand) != Channel(measurand)) continue;
            failed.RemoveAll(made.Settles);
            if (made.Word == VerificationWord.Outside) failed.Add(made);
        }

        return failed;
    }

    /// <summary>With one more.</summary>
    public InstrumentState With(Verification made)
    {
        ArgumentNullException.ThrowIfNull(made);
        // Of two at the same moment the one that was told last holds: it is the correction.
        ImmutableArray<Verification> all = [.. Made.Where(v => v.VerifiedAt <= made.VerifiedAt), made, .. Made.Where(v => v.VerifiedAt > made.VerifiedAt)];
        return this with { Made = all.Count(v => Channel(v.Measurand) == Channel(made.Measurand)) > Remembered ? WithoutOldest(all, Channel(made.Measurand)) : all };
    }

    // The oldest that a newer one says all of. Where there is none, each is the last word of a standard.
    private static ImmutableArray<Verification> WithoutOldest(ImmutableArray<Verification> all, Measurand channel)
    {
        for (var i = 0; i < all.Length; i++)
            if (Channel(all[i].Measurand) == channel && all.Skip(i + 1).Any(newer => newer.Settles(all[i]))) return all.RemoveAt(i);
        return all;
    }

    // One colour, one lamp: free and total chlorine and bromine are read the same way.
    internal static Measurand Channel(Measurand measurand) => measurand is Measurand.TotalChlorine or Measurand.Bromine ? Measurand.FreeChlorine : measurand;
}
