namespace PlantWatch.Core.Statistics;

/// <summary>What a statistical method found, or by name why it found nothing. The default was never worked out.</summary>
/// <typeparam name="T">The figures of the method.</typeparam>
public readonly record struct Finding<T> where T : class
{
    private readonly T? _figures;

    internal Finding(T figures)
    {
        _figures = figures;
        Lack = Lack.Nothing;
    }

    internal Finding(Lack lack) => Lack = lack;

    /// <summary>What lacks; <see cref="Statistics.Lack.Nothing"/> when there are figures.</summary>
    public Lack Lack { get; }

    /// <summary>True when there are figures.</summary>
    public bool IsKnown => _figures is not null;

    /// <summary>The figures, or null.</summary>
    public T? OrNull => _figures;

    /// <summary>The figures.</summary>
    /// <exception cref="InvalidOperationException">There are none.</exception>
    public T Figures => _figures ?? throw new InvalidOperationException($"no figures: {Lack}");
}
