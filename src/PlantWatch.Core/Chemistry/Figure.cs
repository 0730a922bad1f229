using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>A computed figure, or the reason why there is none. The default was never computed.</summary>
public readonly record struct Figure
{
    private readonly double _value;

    private Figure(double value, Reason? why)
    {
        _value = value;
        IsKnown = why is null;
        Why = why;
    }

    /// <summary>True when there is a figure.</summary>
    public bool IsKnown { get; }

    /// <summary>Why there is none; null when there is one, and for the default.</summary>
    public Reason? Why { get; }

    /// <summary>The figure, in the unit that its function names.</summary>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public double Value => IsKnown ? _value : throw new InvalidOperationException($"no figure: {Why?.Code ?? "never computed"}");

    /// <summary>The figure, or null.</summary>
    public double? OrNull => IsKnown ? _value : null;

    internal static Figure Of(double value) => double.IsFinite(value) ? new(value, null) : Not(Reason.Of("input.no_finite_answer"));

    internal static Figure Not(Reason why) => new(0, why);
}

/// <summary>Looks the inputs of a formula over before it is used: the first that lies outside its range is named, with the range.</summary>
internal readonly record struct InputCheck
{
    /// <summary>Why the formula cannot be used; null when nothing stands against it.</summary>
    public Reason? Why { get; private init; }

    /// <summary>Asks for a value within a range, ends included. Not a number is outside every range.</summary>
    /// <param name="input">Key of the input's name in the words, such as <c>flow</c>.</param>
    /// <param name="value">The value.</param>
    /// <param name="range">Its range.</param>
    /// <param name="unit">Their unit.</param>
    public InputCheck Within(string input, double value, ValueRange range, string unit) =>
        Why is not null || range.Contains(value) ? this : new() { Why = Outside(input, value, range, unit) };

    /// <summary>Asks for something else.</summary>
    public InputCheck And(bool holds, Func<Reason> otherwise) => Why is not null || holds ? this : new() { Why = otherwise() };

    /// <summary>The figure when all inputs hold, else the reason.</summary>
    public Figure Then(Func<double> formula) => Why is { } why ? Figure.Not(why) : Figure.Of(formula());

    internal static Reason Outside(string input, double value, ValueRange range, string unit) =>
        Reason.Of("input.outside_range", "input_" + input, double.IsFinite(value) ? value : new Fact(null, "input_no_number"), range.Low, range.High, unit);
}
