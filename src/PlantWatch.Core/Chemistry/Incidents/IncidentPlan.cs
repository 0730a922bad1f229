using System.Collections.Immutable;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>Which row of an authority's table is to be counted by, or why none is.</summary>
/// <param name="Figure">The row; null when there is no countdown.</param>
/// <param name="Refusal">Why not; null when there is a row.</param>
public sealed record HoldChoice(HoldFigure? Figure, Reason? Refusal)
{
    /// <summary>The row for a water.</summary>
    /// <param name="authority">Whose table.</param>
    /// <param name="kind">What came into the water.</param>
    /// <param name="cyanurate">The most cyanurate in mg/L that the test allows for; null when it is not known.</param>
    public static HoldChoice Of(IncidentAuthority authority, IncidentKind kind, double? cyanurate)
    {
        var rows = IncidentTables.Of(authority, kind);
        if (rows.IsEmpty) return No(Reason.Of("incident.no_figure"));
        if (rows.All(row => row.Basis == HoldBasis.None)) return No(Reason.Of("incident.nothing_to_count"));
        if (rows.All(row => row.Superseded)) return No(Reason.Of("incident.superseded"));
        if (cyanurate is not { } level) return No(Reason.Of("incident.cyanurate_unknown"));
        if (rows.FirstOrDefault(row => row.Cyanurate.Contains(level)) is not { } row) return No(Above(level, rows));
        return row switch
        {
            { Basis: HoldBasis.DiluteFirst } => No(Reason.Of("incident.dilute_first", level, IncidentTables.MostCyanurate)),
            { Superseded: true } => No(Reason.Of("incident.dilute_first", level, IncidentTables.MostCyanurate)),
            _ => new(row, null),
        };
    }

    private static Reason Above(double level, ImmutableArray<HoldFigure> rows) => rows.Max(row => row.Cyanurate.High) is var highest && highest >= 1
        ? Reason.Of("incident.cyanurate_above", level, highest)
        : Reason.Of("incident.cyanurate_none", level);

    private static HoldChoice No(Reason why) => new(null, why);
}

/// <summary>What is to be done after an incident, in order, as codes with words at the edge. Advice, never a command; the local code comes first.</summary>
public static class IncidentSteps
{
    private const string Out = "incident.step_everybody_out";
    private const string Close = "incident.step_close_all_of_the_circuit";
    private const string Protect = "incident.step_protect_yourself";
    private const string Raise = "incident.step_raise_residual";
    private const string Circulate = "incident.step_keep_circulating";
    private const string Measure = "incident.step_measure_through";
    private const string Retest = "incident.step_retest";
    private const string Hands = "incident.step_clean_tools";
    private const string Reopen = "incident.step_who_reopens";

    /// <summary>The steps for a kind of incident.</summary>
    public static ImmutableArray<Reason> Of(IncidentKind kind) => [.. Codes(kind).Select(code => Reason.Of(code))];

    /// <summary>What a person looks at before opening again, whatever the clock says.</summary>
    public static ImmutableArray<Reason> BeforeOpening { get; } =
    [
        Reason.Of("incident.before_residual_and_ph_back"), Reason.Of("incident.before_bottom_visible"), Reason.Of("incident.before_filters_seen_to"),
        Reason.Of("incident.before_whole_circuit"), Reason.Of("incident.before_authority_asked"), Reason.Of("incident.before_written_down"),
    ];

    private static IEnumerable<string> Codes(IncidentKind kind) => kind switch
    {
        IncidentKind.FormedStool => [Out, Close, Protect, "incident.step_remove_formed", Raise, Circulate, Measure, Retest, Hands, Reopen],
        IncidentKind.DiarrhoealStool =>
            [Out, Close, Protect, "incident.step_remove_loose", "incident.step_cyanurate_first", Raise, Circulate, Measure, Retest, "incident.step_backwash_to_waste", Hands, Reopen],
        IncidentKind.Vomit => [Out, Close, Protect, "incident.step_remove_vomit", Raise, Circulate, Measure, Retest, Hands, Reopen],
        IncidentKind.Blood => [Out, Close, Protect, "incident.step_look_after_person", Raise, Circulate, Measure, Retest, Reopen],
        IncidentKind.DeckSpill => ["incident.step_cordon_deck", Protect, "incident.step_cover_deck", "incident.step_away_from_pool", Hands],
        _ => [],
    };
}
