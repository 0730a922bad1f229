using System.Collections.Immutable;

namespace PlantWatch.Core.Reasons;

/// <summary>A reason with its figures, put into words at the edge so that it can be said in any language.</summary>
/// <param name="Code">Stable key of the sentence, such as <c>probe.reads_high</c>; every code has words in the server's resource file.</param>
/// <param name="Facts">Figures and names the sentence needs, in the order it needs them.</param>
public sealed record Reason(string Code, ImmutableArray<Fact> Facts)
{
    /// <summary>A reason with its figures.</summary>
    public static Reason Of(string code, params ReadOnlySpan<Fact> facts) => new(code, [.. facts]);

    /// <inheritdoc/>
    public bool Equals(Reason? other) => other is not null && Code == other.Code && Facts.AsSpan().SequenceEqual(other.Facts.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Code, Facts.Length);
}

/// <summary>One figure or name of a reason.</summary>
/// <param name="Number">The figure; null for a name.</param>
/// <param name="Text">The name or unit; null for a bare figure.</param>
public readonly record struct Fact(double? Number, string? Text)
{
    /// <summary>A figure.</summary>
    public static implicit operator Fact(double number) => new(number, null);

    /// <summary>A name.</summary>
    public static implicit operator Fact(string text) => new(null, text);

    /// <summary>A figure.</summary>
    public static Fact From(double number) => number;

    /// <summary>A name.</summary>
    public static Fact From(string text) => text;
}
