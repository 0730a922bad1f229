namespace PlantWatch.Core.Chemistry;

/// <summary>Whose incident plan goes with a limit pack: that of the authority that set the pack, where the pack has rows for incidents. No pack lends another's plan.</summary>
public static class PackAuthority
{
    /// <summary>The authority whose plan a pack carries; null when it carries none.</summary>
    /// <param name="pack">Key of the limit pack; null when none is picked.</param>
    public static IncidentAuthority? Of(string? pack) => pack switch
    {
        "us-cdc" => IncidentAuthority.UsCdc,
        "us-mahc" => IncidentAuthority.UsMahc,
        "us-cdc-vsp" => IncidentAuthority.UsCdcVessels,
        "us-ar" => IncidentAuthority.UsArkansas,
        "us-cherokeecounty" => IncidentAuthority.UsCherokeeCounty,
        "ca-qc" => IncidentAuthority.CaQuebec,
        "us-cdc-2001" => IncidentAuthority.UsCdc2001,
        _ => null,
    };

    /// <summary>The authority that is proposed for a kind of incident; null when a person has to choose: no pack, a pack without a plan for it, or one that newer evidence took the place of.</summary>
    public static IncidentAuthority? For(string? pack, IncidentKind kind) =>
        Of(pack) is { } authority && IncidentTables.Of(authority, kind).Any(row => !row.Superseded) ? authority : null;
}
