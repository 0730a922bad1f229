using PlantWatch.Core.Plans;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Tests.Rules.Packs;

/// <summary>Rows as authorities print them, each with its source; put together into packs that no authority has.</summary>
internal static class PrintedRows
{
    private const string NewSouthWales = "NSW Public Health Regulation 2012 Sch. 1, published";
    private const string France = "France, order of 26 May 2021, annex I, published";
    private const string SouthAustralia = "South Australian Public Health (General) Regulations 2013 r. 8, published";

    public static PackRow IndoorMinimum { get; } = Row("fc-indoor", PackQuantity.FreeChlorine, 2.0, null, NewSouthWales) with { When = new() { Setting = Setting.Indoor } };
    public static PackRow RaisedAbove76 { get; } = Row("fc-high-ph", PackQuantity.FreeChlorine, null, null, NewSouthWales) with { RaisesLowBy = 1.0, When = new() { PhAbove = 7.6 } };
    public static PackRow PhBand { get; } = Row("ph", PackQuantity.Ph, 7.0, 7.8, NewSouthWales);
    public static PackRow Orp720 { get; } = Row("orp", PackQuantity.Orp, 720, null, "WHO Guidelines vol. 2 (2006), from memory") with { When = new() { ReferenceElectrode = "calomel" } };
    public static PackRow ActiveBelow15 { get; } = Row("fc-no-cya", PackQuantity.FreeChlorine, 0.4, 1.4, France) with { When = new() { CyanurateBelow = 15 } };
    public static PackRow AvailableFrom15 { get; } = Row("fc-cya", PackQuantity.FreeChlorine, 2, 5, France) with { When = new() { CyanurateFrom = 15 } };
    public static PackRow WarmUnstabilised { get; } = Row("fc-warm", PackQuantity.FreeChlorine, 2, null, SouthAustralia) with { When = new() { CyanurateUsed = false, TemperatureAbove = 26 } };
    public static PackRow CoolUnstabilised { get; } = Row("fc-cool", PackQuantity.FreeChlorine, 1, null, SouthAustralia) with { When = new() { CyanurateUsed = false, TemperatureUpTo = 26 } };
    public static PackRow PhClosure { get; } = Row("ph-closure", PackQuantity.Ph, 6.5, 8.0, "MAHC s. 6.6.3.1, published") with { Grade = RowGrade.Closure };
    public static PackRow Ratio45 { get; } = Row("cya-fc", PackQuantity.CyanuratePerFree, null, 45, "MAHC 2023, published") with { Grade = RowGrade.Closure };
    public static PackRow HalfOfFree { get; } = Row("cc-half", PackQuantity.CombinedPerFree, null, 0.5, "WHO Guidelines vol. 2 (2006), from memory");
    public static PackRow SpaMinimum { get; } = Row("fc-spa", PackQuantity.FreeChlorine, 3.0, 10, "MAHC, from memory") with { When = new() { Kinds = [PoolKind.Spa, PoolKind.Therapy] } };

    public static PackRow Row(string id, PackQuantity quantity, double? low, double? high, string source) =>
        new() { Id = id, Quantity = quantity, Low = low, High = high, Says = id, Source = source, Provenance = RowProvenance.Published };

    public static LimitPack Pack(params PackRow[] rows) => new("made-up", "An authority", "2026", [.. rows]);
}
