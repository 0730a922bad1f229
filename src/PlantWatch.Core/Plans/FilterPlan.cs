namespace PlantWatch.Core.Plans;

/// <summary>A filter.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">What people call it.</param>
/// <param name="AreaSquareMetres">Filter area in m2.</param>
public sealed record FilterPlan(string Id, string Name, double? AreaSquareMetres)
{
    /// <summary>Rise in kPa at which a wash is due where the plant file says nothing. Common practice: 8 to 10 psi (55 to 69 kPa) over clean, taken a little early; the maker's figure comes first.</summary>
    public const double UsualRise = 50;

    /// <summary>Pressure across the clean filter in kPa as commissioned; null when not stated.</summary>
    public double? CleanKilopascals { get; init; }

    /// <summary>Rise over clean in kPa at which a wash is due.</summary>
    public double BackwashRise { get; init; } = UsualRise;

    /// <summary>Longest time between two washes; null when the plant has set none.</summary>
    public TimeSpan? BackwashEvery { get; init; }
}
