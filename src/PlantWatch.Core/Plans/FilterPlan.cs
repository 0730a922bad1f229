namespace PlantWatch.Core.Plans;

/// <summary>What holds the dirt back.</summary>
public enum FilterKind
{
    /// <summary>A bed that is washed by water going backwards.</summary>
    Media = 0,
    /// <summary>A basket before the pump that is lifted out and emptied by hand.</summary>
    Strainer,
}

/// <summary>A filter or a strainer.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">What people call it.</param>
/// <param name="AreaSquareMetres">Filter area in m2.</param>
public sealed record FilterPlan(string Id, string Name, double? AreaSquareMetres)
{
    /// <summary>Rise in kPa at which a wash is due where the plant file says nothing. Common practice: 8 to 10 psi (55 to 69 kPa) over clean, taken a little early; the maker's figure comes first.</summary>
    public const double UsualRise = 50;

    /// <summary>A bed, or the strainer before the pump.</summary>
    public FilterKind Kind { get; init; }

    /// <summary>Water that one wash usually drains, rinse included, in m3; null when not stated. Whoever notes a wash may say what it was.</summary>
    public double? WashCubicMetres { get; init; }

    /// <summary>Pressure across the clean filter in kPa as commissioned; null when not stated.</summary>
    public double? CleanKilopascals { get; init; }

    /// <summary>Rise over clean in kPa at which a wash is due.</summary>
    public double BackwashRise { get; init; } = UsualRise;

    /// <summary>Longest time between two washes; null when the plant has set none.</summary>
    public TimeSpan? BackwashEvery { get; init; }
}
