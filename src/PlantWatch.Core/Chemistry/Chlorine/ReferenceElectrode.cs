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
    /// <summary>The electrode meant by a name such as <c>Ag/AgCl 3 M</c>, <c>Ag/AgCl sat.</c>, <c>calomel</c> or <c>SHE</c>; unknown for what is none of them, or leaves its filling out.</summary>
    public static ReferenceElectrode Read(string? name)
    {
        var text = (name ?? "").ToLowerInvariant().Replace(" ", "", StringComparison.Ordinal);
        if (text.Contains("calomel", StringComparison.Ordinal) || text is "sce") return ReferenceElectrode.Calomel;
        if (text is "she" or "nhe" || text.Contains("hydrogen", StringComparison.Ordinal)) return ReferenceElectrode.StandardHydrogen;
        if (!text.StartsWith("ag/agcl", StringComparison.Ordinal) && !text.StartsWith("silver/silverchloride", StringComparison.Ordinal)) return ReferenceElectrode.Unknown;
        return text.Contains("sat", StringComparison.Ordinal) ? ReferenceElectrode.SilverChlorideSaturated : Filled(text);
    }

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
