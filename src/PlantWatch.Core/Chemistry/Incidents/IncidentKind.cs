namespace PlantWatch.Core.Chemistry;

/// <summary>What came into the water.</summary>
public enum IncidentKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>A formed stool.</summary>
    FormedStool,
    /// <summary>A loose or diarrhoeal stool: it may carry Cryptosporidium, which chlorine kills slowly.</summary>
    DiarrhoealStool,
    /// <summary>Vomit.</summary>
    Vomit,
    /// <summary>Blood.</summary>
    Blood,
    /// <summary>A body fluid spilt beside the pool, not in it.</summary>
    DeckSpill,
}

/// <summary>How far a figure can be relied on.</summary>
public enum Provenance
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Seen in the named source, or in a page that quotes it.</summary>
    Published,
    /// <summary>Recalled; the source was not seen.</summary>
    FromMemory,
    /// <summary>A habit of the trade.</summary>
    CommonPractice,
    /// <summary>Arithmetic on published figures.</summary>
    Computed,
}

/// <summary>Who gives a figure. Authorities differ and are never merged.</summary>
public enum IncidentAuthority
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>US Centers for Disease Control and Prevention, advice in force.</summary>
    UsCdc,
    /// <summary>US Model Aquatic Health Code.</summary>
    UsMahc,
    /// <summary>CDC's Vessel Sanitation Program, for ships.</summary>
    UsCdcVessels,
    /// <summary>Arkansas Department of Health.</summary>
    UsArkansas,
    /// <summary>A county procedure of the United States.</summary>
    UsCherokeeCounty,
    /// <summary>Quebec, regulation Q-2, r. 39.</summary>
    CaQuebec,
    /// <summary>CDC's advice of 2001, which later advice took the place of.</summary>
    UsCdc2001,
}
