namespace PlantWatch.Core.Statistics;

/// <summary>Why a statistic has no figures. The default was never worked out.</summary>
public enum Lack
{
    /// <summary>Nothing was worked out.</summary>
    NeverAsked = 0,
    /// <summary>Nothing lacks: there are figures.</summary>
    Nothing,
    /// <summary>Fewer values than the method needs.</summary>
    TooFew,
    /// <summary>A value is no finite number.</summary>
    NotFinite,
    /// <summary>The values do not spread: nothing can be said of a slope or of a limit.</summary>
    NoSpread,
    /// <summary>The two do not rise together beyond their scatter: no line can be told.</summary>
    NoTrend,
}
