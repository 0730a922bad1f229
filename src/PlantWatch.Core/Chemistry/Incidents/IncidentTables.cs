using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What authorities ask for after an incident, a row each, as they say it. They differ; one is chosen and none are merged.</summary>
public static class IncidentTables
{
    /// <summary>Contact time in mg·min/L for three logs of Cryptosporidium at pH 7.5, 25 degC, without cyanurate (Shields et al. 2008, J. Water Health 6:513, the hardier isolate; published).</summary>
    public const double CryptosporidiumThreeLog = 15_300;

    /// <summary>The same for the less hardy isolate (ibid.; published).</summary>
    public const double CryptosporidiumOtherIsolate = 10_400;

    /// <summary>The older figure, which one code still stands on (CDC 2001; published, superseded).</summary>
    public const double CryptosporidiumOld = 9_600;

    /// <summary>Giardia at 1 mg/L, pH 7.5, 25 degC, in mg·min/L (CDC; published).</summary>
    public const double Giardia = 45;

    /// <summary>Hepatitis A likewise (CDC; published).</summary>
    public const double HepatitisA = 16;

    /// <summary>E. coli O157:H7 likewise: under this (CDC; published).</summary>
    public const double EscherichiaColi = 1;

    /// <summary>Highest pH of the contact times (CDC; MAHC s. 6.5.2.3; published).</summary>
    public const double HighestPh = 7.5;

    /// <summary>Lowest water temperature of the contact times, degC: 77 degF (CDC; MAHC s. 6.5.2.3; published).</summary>
    public const double LowestCelsius = 25;

    /// <summary>Cyanurate in mg/L above which the water is to be diluted before anything is counted (CDC advice of 2016 on; published, second hand).</summary>
    public const double MostCyanurate = 15;

    /// <summary>Lowest residual that a contact time is added up for, mg/L: the one that it is published at.</summary>
    public const double LowestCounted = 1;

    private const double Hour = 60;
    private const string Cdc2008 = "CDC, MMWR 57(06), 2008, notice to readers";
    private const string CdcSheet = "CDC fecal incident response recommendations";
    private const string Vessels = "CDC Vessel Sanitation Program, 2018 Operations Manual, annex 13.9.1";
    private const string Quebec = "Quebec, Q-2, r. 39, s. 18";
    private const string County = "Cherokee County Environmental Health procedure (state not shown)";

    private static readonly ValueRange NoCyanurate = new(0, Math.BitDecrement(1.0));
    private static readonly ValueRange SomeCyanurate = new(1, MostCyanurate);
    private static readonly ValueRange UpToMost = new(0, MostCyanurate);
    private static readonly ImmutableArray<IncidentKind> Formed = [IncidentKind.FormedStool];
    private static readonly ImmutableArray<IncidentKind> Loose = [IncidentKind.DiarrhoealStool];
    private static readonly ImmutableArray<IncidentKind> FormedOrVomit = [IncidentKind.FormedStool, IncidentKind.Vomit];

    /// <summary>All rows.</summary>
    public static ImmutableArray<HoldFigure> All { get; } =
    [
        new()
        {
            Authority = IncidentAuthority.UsCdc, Kinds = Formed, Basis = HoldBasis.Minutes, Cyanurate = UpToMost, StartAt = 2, Floor = 2, Required = 25,
            Levels = FormedStoolLevels(), LowestPh = 7.2, ConditionsNamed = true,
            Source = "CDC, MMWR 50(20), 2001, table that followed the notice, seen second hand", Provenance = Provenance.Published, Remark = "incident.remark_25_in_30",
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = NoCyanurate, CyanurateNamed = true, StartAt = 10, Floor = LowestCounted,
            Required = CryptosporidiumThreeLog, Levels = Equivalents(CryptosporidiumThreeLog, (10, Provenance.FromMemory), (20, Provenance.FromMemory), (40, Provenance.Computed)), ConditionsNamed = true,
            Source = Cdc2008, Provenance = Provenance.Published,
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc, Kinds = Loose, Basis = HoldBasis.Minutes, Cyanurate = SomeCyanurate, CyanurateNamed = true, StartAt = 20, Floor = 20, Required = 28 * Hour,
            Levels = [new(20, 28 * Hour, Provenance.FromMemory), new(30, 18 * Hour, Provenance.FromMemory), new(40, 8.5 * Hour, Provenance.FromMemory)], ConditionsNamed = true,
            Source = CdcSheet, Provenance = Provenance.FromMemory,
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc, Kinds = Loose, Basis = HoldBasis.DiluteFirst, Cyanurate = AboveMost(), CyanurateNamed = true,
            Source = "CDC advice of 2016 on, seen in a trade newspaper of May 2023", Provenance = Provenance.Published, Remark = "incident.remark_no_kill_above",
        },
        new()
        {
            Authority = IncidentAuthority.UsMahc, Kinds = Formed, Basis = HoldBasis.Minutes, Cyanurate = UpToMost, StartAt = 2, Floor = 2, Required = 25,
            Levels = [new(2, 25, Provenance.FromMemory)], ConditionsNamed = true, Source = "MAHC s. 6.5; pH and temperature: s. 6.5.2.3 (published)", Provenance = Provenance.FromMemory,
        },
        new()
        {
            Authority = IncidentAuthority.UsMahc, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = NoCyanurate, CyanurateNamed = true, StartAt = 10, Floor = LowestCounted,
            Required = CryptosporidiumThreeLog, Levels = Equivalents(CryptosporidiumThreeLog, (10, Provenance.FromMemory), (20, Provenance.FromMemory)), ConditionsNamed = true,
            Source = "MAHC s. 6.5; pH and temperature: s. 6.5.2.3 (published)", Provenance = Provenance.FromMemory,
        },
        new()
        {
            Authority = IncidentAuthority.UsMahc, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = new(1, 1000), CyanurateNamed = true, StartAt = 40, Floor = 40, Required = 40 * 30 * Hour,
            Levels = [new(40, 30 * Hour, Provenance.Published)], HighestPh = 6.5, ConditionsNamed = true, Source = "MAHC s. 6.5.3.2.1, edition not shown", Provenance = Provenance.Published,
            Superseded = true, Remark = "incident.remark_dilute_instead",
        },
        new()
        {
            Authority = IncidentAuthority.UsCdcVessels, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = NoCyanurate, StartAt = LowestCounted, Floor = LowestCounted,
            Required = CryptosporidiumThreeLog, Levels = Equivalents(CryptosporidiumThreeLog, (10, Provenance.Computed), (20, Provenance.Computed)), Source = Vessels, Provenance = Provenance.Published,
        },
        new()
        {
            Authority = IncidentAuthority.UsCdcVessels, Kinds = FormedOrVomit, Basis = HoldBasis.ContactTime, Cyanurate = UpToMost, StartAt = LowestCounted, Floor = LowestCounted, Required = 45,
            Levels = Equivalents(45, (1, Provenance.Computed), (2, Provenance.Computed)), Source = Vessels, Provenance = Provenance.Published,
        },
        new()
        {
            Authority = IncidentAuthority.UsArkansas, Kinds = Formed, Basis = HoldBasis.Minutes, Cyanurate = UpToMost, StartAt = 2, Floor = 2, Required = 25,
            Levels = [new(2, 25, Provenance.Published)], LowestPh = 7.2, ConditionsNamed = true,
            Source = "Arkansas Department of Health, Guidelines for Pool and Spa Operators, p. 15", Provenance = Provenance.Published, Remark = "incident.remark_25_in_30",
        },
        new()
        {
            Authority = IncidentAuthority.CaQuebec, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = NoCyanurate, StartAt = 10, Floor = LowestCounted, Required = CryptosporidiumOld,
            Levels = [new(10, 16 * Hour, Provenance.Published), new(20, 8 * Hour, Provenance.Published)], Source = Quebec, Provenance = Provenance.Published, Remark = "incident.remark_older_contact_time",
        },
        new()
        {
            Authority = IncidentAuthority.CaQuebec, Kinds = FormedOrVomit, Basis = HoldBasis.Minutes, Cyanurate = UpToMost, StartAt = 2, Floor = 2, Required = 30,
            Levels = [new(2, 30, Provenance.Published)], Source = Quebec, Provenance = Provenance.Published,
        },
        new()
        {
            Authority = IncidentAuthority.UsCherokeeCounty, Kinds = [IncidentKind.FormedStool, IncidentKind.Vomit, IncidentKind.Blood], Basis = HoldBasis.Minutes, Cyanurate = NoCyanurate, CyanurateNamed = true,
            StartAt = 3, Floor = 3, Required = 30, Levels = [new(3, 30, Provenance.Published)], Source = County, Provenance = Provenance.Published,
        },
        new()
        {
            Authority = IncidentAuthority.UsCherokeeCounty, Kinds = [IncidentKind.FormedStool, IncidentKind.Vomit, IncidentKind.Blood], Basis = HoldBasis.Minutes, Cyanurate = new(1, 50), CyanurateNamed = true,
            StartAt = 3, Floor = 3, Required = 60, Levels = [new(3, 60, Provenance.Published)], Source = County, Provenance = Provenance.Published, Remark = "incident.remark_stabilised_to_50",
        },
        new()
        {
            Authority = IncidentAuthority.UsCherokeeCounty, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = new(1, 50), CyanurateNamed = true, StartAt = 40, Floor = 40, Required = 72_000,
            Levels = [new(40, 30 * Hour, Provenance.Published)], HighestPh = 6.5, ConditionsNamed = true, Source = County, Provenance = Provenance.Published,
            Superseded = true, Remark = "incident.remark_dilute_instead",
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc2001, Kinds = Formed, Basis = HoldBasis.Minutes, Cyanurate = UpToMost, StartAt = 2, Floor = 2, Required = 30, Levels = [new(2, 30, Provenance.Published)],
            LowestPh = 7.2, ConditionsNamed = true, Source = "CDC, MMWR 50(20), 2001, notice to readers", Provenance = Provenance.Published, Superseded = true, Remark = "incident.remark_25_in_30",
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc2001, Kinds = Loose, Basis = HoldBasis.ContactTime, Cyanurate = NoCyanurate, CyanurateNamed = true, StartAt = 10, Floor = LowestCounted,
            Required = CryptosporidiumOld, Source = "CDC 2001, as stated in MMWR 57(06), 2008", Provenance = Provenance.Published, Superseded = true, Remark = "incident.remark_older_contact_time",
        },
        new()
        {
            Authority = IncidentAuthority.UsCdc, Kinds = [IncidentKind.DeckSpill], Basis = HoldBasis.None, Source = "CDC, body-fluid spill page, 2008, from a federal web archive",
            Provenance = Provenance.Published, Remark = "incident.remark_deck_20_minutes",
        },
    ];

    /// <summary>The rows of an authority for a kind of incident, by rising cyanurate.</summary>
    public static ImmutableArray<HoldFigure> Of(IncidentAuthority authority, IncidentKind kind) =>
        [.. All.Where(row => row.Authority == authority && row.Kinds.Contains(kind)).OrderBy(row => row.Cyanurate.Low)];

    /// <summary>Authorities that have a row for a kind of incident, those in use first.</summary>
    public static ImmutableArray<IncidentAuthority> For(IncidentKind kind) =>
        [.. All.Where(row => row.Kinds.Contains(kind)).GroupBy(row => row.Authority).OrderBy(rows => rows.All(row => row.Superseded)).Select(rows => rows.Key)];

    // CDC, MMWR 50(20), 2001, the table that followed the notice: published, seen second hand. Its rows under 2 mg/L are left out: that notice has the residual raised to 2 first.
    private static ImmutableArray<HoldLevel> FormedStoolLevels() =>
        [.. new[] { (2.0, 25.0), (2.2, 24), (2.4, 22), (2.6, 21), (2.8, 20), (3.0, 19) }.Select(row => new HoldLevel(row.Item1, row.Item2, Provenance.Published))];

    private static ImmutableArray<HoldLevel> Equivalents(double contactTime, params (double MilligramsPerLitre, Provenance Provenance)[] levels) =>
        [.. levels.Select(level => new HoldLevel(level.MilligramsPerLitre, contactTime / level.MilligramsPerLitre, level.Provenance))];

    private static ValueRange AboveMost() => new(Math.BitIncrement(MostCyanurate), 1000);
}
