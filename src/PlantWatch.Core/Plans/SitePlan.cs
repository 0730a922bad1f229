using System.Collections.Immutable;
using PlantWatch.Core.Plans.Telling;

namespace PlantWatch.Core.Plans;

/// <summary>The whole plant file, understood: the site and its circuits.</summary>
/// <param name="Site">Where the plant stands and which clock its people live by.</param>
/// <param name="Products">Chemical products in use, by id.</param>
/// <param name="Circuits">The circuits; each is one unit of state.</param>
public sealed record PlantPlan(SitePlan Site, ImmutableArray<ProductPlan> Products, ImmutableArray<CircuitPlan> Circuits)
{
    /// <summary>The people of the plant.</summary>
    public ImmutableArray<PersonPlan> People { get; init; } = [];

    /// <summary>How they are told of alarms outside the browser.</summary>
    public TellingPlan Telling { get; init; } = TellingPlan.None;
}

/// <summary>The site.</summary>
/// <param name="Name">Shown at the top of every screen and sheet.</param>
/// <param name="TimeZone">IANA zone such as Europe/London: it decides what "a day" and "07:30" mean.</param>
/// <param name="Units">The units its people measure out in; metric when the file says nothing.</param>
public sealed record SitePlan(string Name, string TimeZone, UnitSystem Units = UnitSystem.Metric)
{
    /// <summary>Language of what is sent to people and printed without being asked for, two letters; English when the file says nothing.</summary>
    public string Language { get; init; } = "en";
}
