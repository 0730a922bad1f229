using System.Collections.Immutable;

namespace PlantWatch.Core.Plans.Telling;

/// <summary>How often a sheet is sent. The default is daily.</summary>
public enum SheetRhythm
{
    /// <summary>Every day, about the day before.</summary>
    Day = 0,
    /// <summary>On Mondays, about the seven days before.</summary>
    Week,
    /// <summary>On the first of the month, about the month before.</summary>
    Month,
}

/// <summary>A sheet that is sent by letter as planned.</summary>
/// <param name="Kind">Its kind, as it stands in addresses.</param>
/// <param name="Pools">Ids of the pools; all of the plant where none is named.</param>
/// <param name="At">When, on the site's clock.</param>
/// <param name="Every">How often.</param>
/// <param name="To">Ids of the persons it goes to.</param>
public sealed record SheetPlan(string Kind, ImmutableArray<string> Pools, TimeOnly At, SheetRhythm Every, ImmutableArray<string> To)
{
    /// <summary>What it is, so that the same line of the plant file is the same one after a restart; who it goes to is no part of it.</summary>
    public string Key => $"sheet/{Kind}/{Every}/{At:HH\\:mm}/{string.Join(',', Pools)}";
}
