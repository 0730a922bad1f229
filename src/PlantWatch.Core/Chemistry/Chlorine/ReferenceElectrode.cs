using System.Collections.Immutable;

namespace PlantWatch.Core.Chemistry;

/// <summary>What an ORP is measured against. A reading or a limit without it is incomplete.</summary>
public enum ReferenceElectrode
{
    /// <summary>Not stated, or none of these.</summary>
    Unknown = 0,
    /// <summary>Standard hydrogen electrode: the zero of the scale.</summary>
    StandardHydrogen,
    /// <summary>Silver/silver chloride in 3 mol/L potassium chloride.</summary>
    SilverChloride3M,
    /// <summary>Silver/silver chloride in 3.5 mol/L potassium chloride.</summary>
    SilverChloride3M5,
    /// <summary>Silver/silver chloride in saturated potassium chloride.</summary>
    SilverChlorideSaturated,
    /// <summary>Saturated calomel.</summary>
    Calomel,
}

/// <summary>Reference electrodes by the names that plant files give them.</summary>
public static class ReferenceElectrodeNames
{
    /// <summary>The fillings of a silver/silver chloride electrode whose name leaves its filling out.</summary>
    private static readonly ImmutableArray<ReferenceElectrode> Fillings = [ReferenceElectrode.SilverChloride3M, ReferenceElectrode.SilverChloride3M5, ReferenceElectrode.SilverChlorideSaturated];

    /// <summary>The electrodes that probes in pool plant carry (common practice; hydrogen stands in laboratories only).</summary>
    public static ImmutableArray<ReferenceElectrode> OfProbes { get; } = [.. Fillings, ReferenceElectrode.Calomel];

    /// <summary>Every electrode that a name may mean: one where it is told apart, each filling where <c>Ag/AgCl</c> stands without one, none where the name says nothing that is known.</summary>
    public static ImmutableArray<ReferenceElectrode> Possible(string? name) =>
        Read(name) is not ReferenceElectrode.Unknown and var one ? [one] : Plain(name) is "ag/agcl" or "silver/silverchloride" ? Fillings : [];

    /// <summary>The electrode meant by a name such as <c>Ag/AgCl 3 M</c>, <c>Ag/AgCl sat.</c>, <c>calomel</c> or <c>SHE</c>; unknown for what is none of them, or leaves its filling out.</summary>
    public static ReferenceElectrode Read(string? name)
    {
        var text = Plain(name);
        if (text.Contains("calomel", StringComparison.Ordinal) || text is "sce") return ReferenceElectrode.Calomel;
        if (text is "she" or "nhe" || text.Contains("hydrogen", StringComparison.Ordinal)) return ReferenceElectrode.StandardHydrogen;
        if (!text.StartsWith("ag/agcl", StringComparison.Ordinal) && !text.StartsWith("silver/silverchloride", StringComparison.Ordinal)) return ReferenceElectrode.Unknown;
        return text.Contains("sat", StringComparison.Ordinal) ? ReferenceElectrode.SilverChlorideSaturated : Filled(text);
    }

    private static string Plain(string? name) => (name ?? "").ToLowerInvariant().Replace(" ", "", StringComparison.Ordinal);

    // The figure before "M" or "mol": 3.33 is another electrode than 3, and without a table.
    private static ReferenceElectrode Filled(string text)
    {
        var end = text.IndexOf('m', StringComparison.Ordinal);
        var start = end;
        while (start > 0 && (char.IsAsciiDigit(text[start - 1]) || text[start - 1] == '.')) start--;
        return (end < 0 ? "" : text[start..end]) switch
        {
            "3" or "3.0" => ReferenceElectrode.SilverChloride3M,
            "3.5" => ReferenceElectrode.SilverChloride3M5,
            _ => ReferenceElectrode.Unknown,
        };
    }
}
